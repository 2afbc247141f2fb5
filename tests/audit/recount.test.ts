import { expect, test } from "vitest";
import { readPeriod } from "../../src/audit/period.ts";
import { calendarOf } from "../../src/calendar/business-days.ts";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const calendar = calendarOf({ timeZone: "America/Chicago" });
const monday = { first: "2026-11-09", last: "2026-11-09" };
const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;

test("a slip that two letters repeat counts once, and a day recounted after later letters is the same", async () => {
  let now = new Date("2026-11-09T15:00:00Z");
  const desk = { ...(await temporaryDesk()), clock: { now: () => now } };
  await post(desk, { sheets: [unknownWord] });
  now = new Date("2026-11-09T17:00:00Z");
  await post(desk, { subject: "Once more", sheets: [unknownWord] });
  const day = await readPeriod(desk.store.audited, monday, calendar);
  // By hand: one order, asked about one word, in two letters.
  expect(day.figures).toMatchObject({ letters: 2, opened: 1, rightAtFirst: 0, passed: 0, slips: 1 });
  expect(day.figures.questions).toMatchObject([{ asked: 1, yes: 0, corrected: 0, open: 1 }]);
  now = new Date("2026-11-10T17:00:00Z");
  await post(desk, { subject: "Mended", sheets: [{ ...unknownWord, legend: ["POOL"] }] });
  expect(await readPeriod(desk.store.audited, monday, calendar)).toEqual(day);
  const both = await readPeriod(desk.store.audited, { first: "2026-11-09", last: "2026-11-10" }, calendar);
  expect(both.figures.questions).toMatchObject([{ asked: 1, corrected: 1, open: 0 }]);
});
