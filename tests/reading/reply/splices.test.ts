import { expect, test } from "vitest";
import { splices, stillYes, unheardWishes, untoldWishes } from "../../bench/splices.ts";

test("whatever binds or asks in a sentence that says yes leaves it to a person", () => {
  const all = [...splices(7, 0.02)];
  expect(all.length).toBeGreaterThan(1000);
  const wrong = all.filter((one) => stillYes(one).length > 0).map(({ words, line }) => ({ words, line }));
  expect(wrong).toEqual([]);
});

test("a wish below, behind or before a yes leaves it to a person", () => {
  expect(unheardWishes()).toEqual([]);
});

test.each([
  ["behind a sheet for a point to fix", 16],
  ["behind a no with a sheet", 23],
  ["below both", 14],
  ["behind a yes beside a point to fix", 4],
] as const)("%s, at most %i wishes are told to nobody, all of the sheet or its slip", (frame, most) => {
  expect(untoldWishes(frame).length).toBeLessThanOrEqual(most);
});
