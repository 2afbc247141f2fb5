import { expect, test } from "vitest";
import { remember } from "../../src/trade/remember.ts";

test("an answer is made once, and the one asked for longest ago is forgotten", () => {
  const answers = new Map<string, string>();
  const made: string[] = [];
  const ask = (key: string): string =>
    remember(answers, key, 2, () => {
      made.push(key);
      return key.toUpperCase();
    });
  expect(["a", "b", "a", "c", "a", "b"].map(ask)).toEqual(["A", "B", "A", "C", "A", "B"]);
  expect(made).toEqual(["a", "b", "c", "b"]);
});
