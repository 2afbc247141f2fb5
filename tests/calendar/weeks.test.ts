import { expect, test } from "vitest";
import { lastWeek } from "../../src/calendar/weeks.ts";

const monday = { weekday: 1, hour: 8 };
const zone = "America/Chicago";
const until = (now: string, when = monday): string => lastWeek(when, new Date(now), zone).until.toISOString();

test("a week ends at its hour, where the desk is", () => {
  expect(until("2026-11-16T13:59:59Z")).toBe("2026-11-09T14:00:00.000Z");
  expect(until("2026-11-16T14:00:00Z")).toBe("2026-11-16T14:00:00.000Z");
  expect(until("2026-11-22T23:00:00Z")).toBe("2026-11-16T14:00:00.000Z");
});

test("a week over a change of the clocks begins and ends at the same hour of the day", () => {
  // The clocks of Chicago go back on 2026-11-01.
  const { from, until: end } = lastWeek(monday, new Date("2026-11-03T00:00:00Z"), zone);
  expect([from, end].map((one) => one.toISOString())).toEqual([
    "2026-10-26T13:00:00.000Z",
    "2026-11-02T14:00:00.000Z",
  ]);
});

test("the day counts where the desk is, not in UTC", () => {
  expect(until("2026-11-16T03:00:00Z", { weekday: 0, hour: 20 })).toBe("2026-11-16T02:00:00.000Z");
});
