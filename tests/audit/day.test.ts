import { expect, test } from "vitest";
import { changesOf } from "../../src/audit/changed.ts";
import { barChart } from "../../src/audit/chart.ts";
import { csvFiles } from "../../src/audit/csv.ts";
import { figuresOf, isRightAtFirst, spreadOf } from "../../src/audit/figures.ts";
import { periodPage } from "../../src/audit/page.ts";
import { businessDaysBack } from "../../src/audit/period.ts";
import { sectionsOf } from "../../src/audit/rows.ts";
import { periodText } from "../../src/audit/text.ts";
import { criesWolf, trendsOf } from "../../src/audit/trends.ts";
import { calendarOf } from "../../src/calendar/business-days.ts";
import { dayBounds } from "../../src/calendar/dates.ts";
import type { Audited, AuditedOrder } from "../../src/trade/audited.ts";
import type { Verdict } from "../../src/trade/problem.ts";
import { expectDarkColours } from "../make/dark-colours.ts";
import { slipDay } from "../make/slip-day.ts";

const zone = "America/Chicago";
const none: Audited = { letters: [], orders: [], pairs: [], slips: [], unread: [], held: [] };
const [from, to] = [new Date("2026-11-09T06:00:00Z"), new Date("2026-11-10T06:00:00Z")];
const at = (time: string): Date => new Date(`2026-11-09T${time}:00Z`);

test("a day begins at midnight where the desk is", () => {
  expect(dayBounds("2026-11-09", zone)).toEqual({ from, to });
});

function hours(date: string): number {
  const bounds = dayBounds(date, zone);
  return (bounds.to.getTime() - bounds.from.getTime()) / 3_600_000;
}

test("the days on which the clocks change have 23 and 25 hours", () => {
  // Energy Policy Act of 2005, §110: second Sunday of March, first Sunday of November.
  expect(hours("2026-03-08")).toBe(23);
  expect(hours("2026-11-01")).toBe(25);
});

test("an order that passes with its second letter took two rounds and the hours between", () => {
  const revisions = [
    { at: at("14:00"), verdict: "fail", checks: ["row-too-long"], isLetter: true },
    { at: at("15:00"), verdict: "fail", checks: ["row-too-long"], isLetter: false },
    { at: at("16:30"), verdict: "pass", checks: [], isLetter: true },
  ] as const;
  const figures = figuresOf(
    { ...none, orders: [{ order: 1, number: "BW-1", buyer: "b", revisions }] },
    from,
    to,
  );
  expect(figures).toMatchObject({ opened: 1, rightAtFirst: 0, passed: 1 });
  expect(figures.rounds).toEqual({ count: 1, median: 2, p90: 2 });
  expect(figures.hoursToPass.median).toBe(2.5);
});

/** An order with these verdicts one after the other, each of a letter. */
function orderOf(...verdicts: readonly (Verdict | "word")[]): AuditedOrder {
  const revisions = verdicts.map((verdict) =>
    verdict === "word"
      ? { at: at("14:00"), verdict: "person" as const, checks: ["manager-word"], isLetter: true }
      : { at: at("14:00"), verdict, checks: [], isLetter: true },
  );
  return { order: 1, number: "BW-1", buyer: "b", revisions };
}

test.each([
  ["passes at once", orderOf("pass"), true],
  ["waits, and what comes later is right", orderOf("waiting", "pass"), true],
  ["waits until the days end", orderOf("waiting"), true],
  ["waits, and what comes later is wrong", orderOf("waiting", "fail", "pass"), false],
  ["waits for its manager's word", orderOf("word"), true],
  ["needs a person for anything else", orderOf("person", "pass"), false],
  ["is changed after it passed", orderOf("pass", "confirm"), true],
])("an order that %s is right from the first letter, or not", (_, order, isRight) => {
  expect(isRightAtFirst(order)).toBe(isRight);
});

test("the ninth of ten is their ninth tenth, and of none there is no middle", () => {
  expect(spreadOf([1, 2, 3, 4, 5, 6, 7, 8, 9, 100])).toEqual({ count: 10, median: 5, p90: 9 });
  expect(spreadOf([])).toEqual({ count: 0 });
});

test("a check whose questions nearly all end with yes cries wolf, and one that found slips does not", () => {
  const tally = { check: "c", asked: 10, yes: 9, decided: 0, corrected: 1, withdrawn: 0, open: 0 };
  expect(criesWolf(tally)).toBe(true);
  expect(criesWolf({ ...tally, yes: 8, corrected: 2 })).toBe(false);
  expect(criesWolf({ ...tally, yes: 4, corrected: 0 })).toBe(false);
});

test("only a check that asks about words is told to lack some in the glossary", () => {
  const tally = { asked: 10, yes: 10, decided: 0, corrected: 0, withdrawn: 0, open: 0 };
  const questions = ["spelling", "safety-wording"].map((check) => ({ check, ...tally }));
  expect(trendsOf({ ...figuresOf(none, from, to), questions })).toEqual([
    "spelling is nearly always answered YES: 10 of 10. What it asks about may belong in the glossary.",
    "safety-wording is nearly always answered YES: 10 of 10.",
  ]);
});

test("a table that shows the first of many says of how many", () => {
  const names = (count: number) => Array.from({ length: count }, (_, i) => `letter ${i}`);
  const empty = figuresOf(none, from, to);
  const figures = {
    ...empty,
    byBuyer: names(12).map((name) => ({ name, slips: 1, orders: 1 })),
    forPerson: names(49).map((name) => ({ name, hours: 1 })),
  };
  const dates = { first: "2026-11-09", last: "2026-11-09", timeZone: zone, from, businessDays: 1 };
  const period = { ...dates, audited: none, figures, before: empty };
  const found = sectionsOf(period).filter(({ title }) => title !== "Figures");
  expect(found.map(({ title, lines, note }) => [title, lines.length - 1, note])).toEqual([
    ["Slips by buyer", 12, undefined],
    ["Waits for a person", 12, "The first 12 of 49."],
  ]);
  expect(periodText(period)).toContain("The first 12 of 49.");
  expect(periodPage(period, { charts: false })).toContain("The first 12 of 49.");
});

test("twenty business days before a Monday is a Monday four weeks earlier, and a holiday is none", () => {
  expect(businessDaysBack("2026-11-09", 20, calendarOf({ timeZone: zone }))).toBe("2026-10-12");
  expect(businessDaysBack("2026-11-09", 20, calendarOf({ timeZone: zone, place: { country: "US" } }))).toBe(
    "2026-10-09",
  );
});

test("CSV quotes as RFC 4180 says, starts no formula, and leaves an order's number text", () => {
  const letter = { letter: 1, receivedAt: at("14:02"), from: "", subject: '=HYPERLINK("x"), "y"', sheets: 0 };
  const revisions = [{ at: at("14:02"), checks: [], isLetter: true }];
  const order = { order: 1, number: "0012", buyer: "b", revisions };
  const audited = { ...none, letters: [letter], orders: [order] };
  const figures = figuresOf(audited, from, to);
  const dates = { first: "2026-11-09", last: "2026-11-09", timeZone: zone, from, businessDays: 1 };
  const day = { ...dates, audited, figures, before: figures };
  const files = csvFiles(day);
  expect(files.get("letters.csv")).toMatch(/^\u{feff}letter,/u);
  expect(files.get("letters.csv")).toContain(`"'=HYPERLINK(""x""), ""y"""`);
  expect(files.get("orders.csv")).toContain("\r\n'0012,b,1,1,2026-11-09 08:02:00,0.000,yes,,yes,yes\r\n");
});

test("a chart shows a stranger's words as words", () => {
  expect(barChart("Slips", [{ name: "<script>", value: 2 }])).not.toContain("<script>");
});

test("a page has charts with a table behind each, and loads nothing; a letter has the tables alone", () => {
  const page = periodPage(slipDay, { charts: true });
  const parts = page.split("<h2").filter((part) => part.includes("<svg"));
  expect(parts.map((part) => /<title>(.*?)<\/title>/.exec(part)?.[1])).toEqual([
    "Slips by check",
    "Slips by buyer",
    "Questions",
  ]);
  for (const part of parts) {
    const [, bar] = /<text[^>]*>(\d+)<\/text><\/svg>/.exec(part) ?? [];
    expect(part).toMatch(new RegExp(`<table[\\s\\S]*<td[^>]*>${bar}</td>`));
  }
  expectDarkColours(page);
  expect(page).not.toMatch(/<b@|<script|<link|<img|src=|url\(|https?:(?!\/\/www\.w3\.org\/2000\/svg")/);
  expect(periodPage(slipDay, { charts: false })).not.toContain("<svg");
});

test("what has changed is told against what is usual for as many business days", () => {
  const tally = (name: string, slips: number) => ({ name, slips, orders: 1 });
  const empty = figuresOf(none, from, to);
  const figures = { ...empty, byCheck: [tally("spelling", 4)], byBuyer: [tally("b@x.example", 2)] };
  // 40 in twenty days are 2 a day; 60 are 3.
  const before = { ...empty, letters: 9, byCheck: [tally("spelling", 40), tally("legend-empty", 60)] };
  const period = { first: "", last: "", timeZone: zone, from, audited: none, figures, before };
  expect(changesOf({ ...period, businessDays: 1 })).toEqual([
    "spelling: 4 slips, more than the usual 2.0.",
    "legend-empty: 0 slips, fewer than the usual 3.0.",
    "b@x.example had no slip before, and 2 now.",
  ]);
  expect(changesOf({ ...period, businessDays: 2 })[0]).toBe(
    "legend-empty: 0 slips, fewer than the usual 6.0.",
  );
  expect(changesOf({ ...period, before: empty, businessDays: 1 })).toEqual([]);
});
