import { expect, test } from "vitest";
import { dayCsv } from "../../src/audit/csv.ts";
import { makeDay } from "../../src/audit/day.ts";
import { dayBounds } from "../../src/calendar/dates.ts";
import type { LetterRecord } from "../../src/trade/record.ts";

const zone = "America/Chicago";

function letter(changes: Partial<LetterRecord> = {}): LetterRecord {
  return {
    letter: 1,
    receivedAt: new Date("2026-11-09T14:02:00Z"),
    from: "ines@brightwire.example",
    subject: "Stations",
    state: "sent",
    verdict: "fail",
    answer: { messageId: "<a@b.example>", sentAt: new Date("2026-11-09T14:02:01.500Z") },
    orders: ["BW-2207"],
    sheets: 2,
    problems: [],
    attachments: [],
    ...changes,
  };
}

test("a day begins at midnight where the desk is", () => {
  expect(dayBounds("2026-11-09", zone)).toEqual({
    from: new Date("2026-11-09T06:00:00Z"),
    to: new Date("2026-11-10T06:00:00Z"),
  });
});

function hours(date: string): number {
  const { from, to } = dayBounds(date, zone);
  return (to.getTime() - from.getTime()) / 3_600_000;
}

test("the days on which the clocks change have 23 and 25 hours", () => {
  // Energy Policy Act of 2005, §110: second Sunday of March, first Sunday of November.
  expect(hours("2026-03-08")).toBe(23);
  expect(hours("2026-11-01")).toBe(25);
});

test("verdicts, checks and times are counted", () => {
  const problem = {
    check: "row-too-long",
    wording: "over",
    severity: "stops",
    verdict: "fail",
    facts: {},
    spots: [],
  } as const;
  const day = makeDay(
    "2026-11-09",
    zone,
    [letter({ problems: [problem, problem] }), letter({ letter: 2, verdict: "pass" })],
    [],
  );
  expect(day.byVerdict).toEqual({ fail: 1, pass: 1, confirm: 0, waiting: 0, person: 0 });
  expect(day.byCheck).toEqual([{ check: "row-too-long", problems: 2, letters: 1 }]);
  expect(day.letters[0]).toMatchObject({ time: "08:02", stops: 2, secondsToAnswer: 1.5 });
});

test("CSV quotes as RFC 4180 says, and no cell starts a formula", () => {
  const day = makeDay("2026-11-09", zone, [letter({ subject: '=HYPERLINK("x"), "y"' })], []);
  const [head, line, end] = dayCsv(day).split("\r\n");
  expect(head?.split(",")).toContain("seconds_to_answer");
  expect(line).toContain(`"'=HYPERLINK(""x""), ""y"""`);
  expect(end).toBe("");
});
