import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { businessDaysBetween, calendarOf } from "../../src/calendar/business-days.ts";
import { dateIn } from "../../src/calendar/dates.ts";
import { type Due, type Reminded, remindersDue, type WaitingOrder } from "../../src/judging/reminders.ts";
import type { Verdict } from "../../src/trade/problem.ts";

const timeZone = "America/Chicago";
const desk = {
  ...calendarOf({ timeZone, place: { country: "US" }, closed: [{ from: "2026-12-24", to: "2027-01-03" }] }),
  remindAfter: [2, 5],
};
const at = (date: string): Date => new Date(`${date}T16:00:00Z`);
const order = (changes: Partial<WaitingOrder> = {}): WaitingOrder => ({
  number: "BW-2207",
  buyer: "brightwire.example",
  verdict: "waiting",
  since: at("2026-11-02"),
  missing: [],
  questions: [],
  problems: [],
  sheets: [],
  ...changes,
});
const told = (due: readonly Due[]): string[] =>
  due.map((one) => (one.what === "remind" ? `${one.nth}, last on ${one.lastOn}` : one.what));

/** What the days of a story bring, day by day at ten in the morning. */
function play(
  orderOn: (date: string) => WaitingOrder,
  from: string,
  days: number,
  remindAfter = desk.remindAfter,
): Readonly<Record<string, string>> {
  const sent: Reminded[] = [];
  const story: Record<string, string> = {};
  for (let i = 0; i < days; i++) {
    const now = new Date(at(from).getTime() + i * 24 * 3_600_000);
    const date = dateIn(now, timeZone);
    // Asked twice a day, as a worker does.
    for (const moment of [now, new Date(now.getTime() + 3_600_000)]) {
      const due = remindersDue([orderOn(date)], sent, { ...desk, remindAfter }, moment);
      for (const { order: one, what } of due)
        sent.push({ number: one.number, buyer: one.buyer, at: moment, what });
      if (due.length > 0)
        story[date] = [...(story[date] === undefined ? [] : [story[date]]), ...told(due)].join(" + ");
    }
  }
  return story;
}

describe("an order that waits", () => {
  test("is reminded of on the second and fifth business day, and then a person looks", () => {
    expect(play(() => order(), "2026-11-02", 60)).toEqual({
      "2026-11-04": "1, last on 2026-11-09",
      "2026-11-09": "last",
      // Three business days later, since Wednesday is Veterans Day.
      "2026-11-13": "person",
    });
  });

  test("begins anew with any letter", () => {
    const since = (date: string): Date => at(date < "2026-11-06" ? "2026-11-02" : "2026-11-06");
    expect(play((date) => order({ since: since(date) }), "2026-11-02", 60)).toEqual({
      "2026-11-04": "1, last on 2026-11-09",
      "2026-11-10": "1, last on 2026-11-16",
      "2026-11-16": "last",
      "2026-11-19": "person",
    });
  });

  test("is not reminded of while the desk is closed", () => {
    expect(play(() => order({ since: at("2026-12-21") }), "2026-12-21", 30)).toEqual({
      "2026-12-23": "1, last on 2027-01-06",
      "2027-01-06": "last",
      "2027-01-11": "person",
    });
  });

  test("gets no two reminders at once from a desk that stood still", () => {
    // Ten business days after the letter.
    expect(play(() => order(), "2026-11-17", 20)).toEqual({
      "2026-11-17": "1, last on 2026-11-20",
      "2026-11-20": "last",
      "2026-11-25": "person",
    });
  });

  test("gets no first reminder more than five business days after its last was due, and a person looks, once", () => {
    expect(play(() => order(), "2026-11-18", 60)).toEqual({ "2026-11-18": "person" });
    expect(play(() => order({ since: at("2024-11-04") }), "2026-11-18", 60)).toEqual({
      "2026-11-18": "person",
    });
  });

  test("of which one reminder is sent is told at once that it is the last", () => {
    expect(play(() => order(), "2026-11-02", 30, [3])).toEqual({
      "2026-11-05": "last",
      "2026-11-10": "person",
    });
  });

  test.each<Partial<WaitingOrder>>([
    { verdict: "pass" },
    { verdict: "person" },
    { isClosed: true },
    { verdict: "fail", isClosed: true },
  ])("but not one that %j", (changes) => {
    expect(play(() => order(changes), "2026-11-02", 60)).toEqual({});
  });

  test("nor one of which nothing is left", () => {
    const { verdict: _, ...gone } = order();
    expect(play(() => gone, "2026-11-02", 60)).toEqual({});
  });
});

test("each order has its own reminders, whoever else has an order of its number", () => {
  const orders = [
    order(),
    order({ number: "bw 2207" }),
    order({ buyer: "oakmoor.example" }),
    order({ number: "BW-3110" }),
  ];
  const sent = [
    { number: "BW 2207", buyer: "brightwire.example", at: at("2026-11-04"), what: "remind" },
  ] as const;
  const due = remindersDue(orders, sent, desk, at("2026-11-04"));
  expect(due.map((one) => [one.order.buyer, one.order.number])).toEqual([
    ["oakmoor.example", "BW-2207"],
    ["brightwire.example", "BW-3110"],
  ]);
});

test("whatever happens in a month, no order is bothered more than it should be", () => {
  const event = fc.record({
    day: fc.integer({ min: 0, max: 40 }),
    verdict: fc.constantFrom<Verdict>("waiting", "confirm", "fail", "person", "pass"),
  });
  const months = fc.record({
    events: fc.array(event, { minLength: 1, maxLength: 6 }),
    /** Days on which the program did not run. */
    asleep: fc.array(fc.integer({ min: 0, max: 60 }), { maxLength: 20 }),
    after: fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { minLength: 1, maxLength: 4 }),
    start: fc.constantFrom("2026-11-02", "2026-12-07", "2027-06-10"),
  });
  fc.assert(
    fc.property(months, ({ events, asleep, after, start }) => {
      const remindAfter = after.toSorted((one, other) => one - other);
      const sent: Reminded[] = [];
      const dayOf = (i: number): Date => new Date(at(start).getTime() + i * 24 * 3_600_000);
      for (let i = 0; i < 60; i++) {
        const now = dayOf(i);
        const happened = events.filter(({ day }) => day <= i).toSorted((one, other) => one.day - other.day);
        const latest = happened.at(-1);
        if (latest === undefined || asleep.includes(i)) continue;
        const since = dayOf(latest.day);
        const own = order({ verdict: latest.verdict, since });
        const due = remindersDue([own], sent, { ...desk, remindAfter }, now);
        expect(due.length).toBeLessThanOrEqual(1);
        const before = sent.filter((one) => one.at >= since);
        for (const { what } of due) {
          expect(["waiting", "confirm", "fail"]).toContain(latest.verdict);
          expect(desk.isOpen(dateIn(now, timeZone))).toBe(true);
          // Never earlier than was set, never two in a day, the last one last, and nothing behind a person.
          expect(businessDaysBetween(since, now, desk)).toBeGreaterThanOrEqual(
            remindAfter[before.length] ?? remindAfter.at(-1) ?? 0,
          );
          expect(before.map((one) => dateIn(one.at, timeZone))).not.toContain(dateIn(now, timeZone));
          const isTooLate =
            before.length === 0 && businessDaysBetween(since, now, desk) > (remindAfter.at(-1) ?? 0) + 5;
          expect(what === "person").toBe(isTooLate || before.length === remindAfter.length);
          expect(what === "last").toBe(!isTooLate && before.length === remindAfter.length - 1);
          sent.push({ number: own.number, buyer: own.buyer, at: now, what });
        }
        // Who waits long enough is neither forgotten.
        if (due.length === 0 && ["waiting", "confirm", "fail"].includes(latest.verdict))
          expect(
            before.at(-1)?.what === "person" ||
              !desk.isOpen(dateIn(now, timeZone)) ||
              businessDaysBetween(before.at(-1)?.at ?? since, now, desk) < (remindAfter.at(-1) ?? 0),
          ).toBe(true);
      }
    }),
  );
});
