import { expect, test } from "vitest";
import { splices, stillYes, unheardWishes, untoldWishes } from "../../bench/splices.ts";

/** What is still taken for a yes: words that say yes, except another point, or tell of a sheet that comes. */
const harmless = [
  "hi, boss says yes to both except 2 :)",
  "See attached revised S-101 and will be S-104. 3 YES per customer.",
  "Both correct make them as they stand thanks.",
];

test("whatever binds or asks in a sentence that says yes leaves it to a person", () => {
  const all = [...splices(7, 0.02)];
  expect(all.length).toBeGreaterThan(1000);
  const wrong = all.filter((one) => stillYes(one).length > 0).map(({ line }) => line);
  expect(wrong).toEqual(harmless);
});

test("a wish below, behind or before a yes leaves it to a person", () => {
  expect(unheardWishes()).toEqual([]);
});

test.each([
  ["behind a sheet for a point to fix", 16],
  ["behind a no with a sheet", 26],
  ["below both", 15],
  ["behind a yes beside a point to fix", 4],
] as const)("%s, at most %i wishes are told to nobody, all of the sheet or its slip", (frame, most) => {
  expect(untoldWishes(frame).length).toBeLessThanOrEqual(most);
});
