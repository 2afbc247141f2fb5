import { expect, test } from "vitest";
import { isAmends, pointsDoneIn, sheetsPromisedIn } from "../../../src/reading/reply/promises.ts";

test.each<[string, number[] | undefined]>([
  ["New sheet for 2 attached", [2]],
  ["I will fix 2 and 3", [2, 3]],
  ["2 was my typo, sheet attached", [2]],
  ["The new sheet is attached", []],
  ["sorry, new sheet comes when I am back", []],
  ["2.5 sheets attached", []],
  ["S-104 attached", []],
  ["Nice weather", undefined],
  ["sheet attached, make it red", undefined],
  ["New sheet for “2” attached", undefined],
  ["New sheet for 2 attached?", undefined],
  ["The sheet for 2 can't be sent", undefined],
])("“%s” promises sheets for %j", (words, numbers) => {
  expect(sheetsPromisedIn(words)).toEqual(numbers);
});

test.each<[string, number[] | undefined]>([
  ["1 is fixed", [1]],
  ["1 and 2 will follow", [1, 2]],
  ["1, 2 done", [1, 2]],
  ["for 1: done!", [1]],
  ["#3 has been corrected.", [3]],
  ["1 will follow later", [1]],
  ["1 is fixed and red", undefined],
  ["so 1 is fixed", undefined],
  ["1234 is fixed", undefined],
  ["1 isfixed", undefined],
])("“%s” tells that %j are mended", (sentence, numbers) => {
  expect(pointsDoneIn(sentence)).toEqual(numbers);
});

test.each([
  ["sorry, my mistake", true],
  ["sorry", true],
  ["new sheet attached", true],
  ["Sorry about 2", false],
  ["it is red", false],
])("“%s” stands beside a no and names nothing: %s", (words, is) => {
  expect(isAmends(words)).toBe(is);
});
