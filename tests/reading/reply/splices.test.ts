import { expect, test } from "vitest";
import { splices, stillYes, unheardWishes } from "../../bench/splices.ts";

test("whatever binds or asks in a sentence that says yes leaves it to a person", () => {
  const all = [...splices(7, 0.02)];
  expect(all.length).toBeGreaterThan(1000);
  const wrong = all.filter((one) => stillYes(one).length > 0).map(({ words, line }) => ({ words, line }));
  expect(wrong).toEqual([]);
});

test("a wish below, behind or before a yes leaves it to a person", () => {
  expect(unheardWishes()).toEqual([]);
});
