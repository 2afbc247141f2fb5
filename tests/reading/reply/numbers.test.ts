import { expect, test } from "vitest";
import { isSet, isTie, numbersIn } from "../../../src/reading/reply/numbers.ts";
import { plain, tokensIn } from "../../../src/reading/reply/tokens.ts";

/** Questions that are open, and how many points stand beside them. */
const among = (open: readonly number[], others = 0) => ({ open, others, names: [] });
const numbers = (words: string, points = among([2, 3], 1)) =>
  numbersIn(tokensIn(plain(words), new Set()), points);
const set = (words: string, points = among([2, 3])) => isSet(tokensIn(plain(words), new Set()), points);

test.each<[string, number[] | undefined]>([
  ["2", [2]],
  ["2 and 3", [2, 3]],
  ["two and three", [2, 3]],
  ["twelve", [12]],
  ["1 to 3", [1, 2, 3]],
  ["1-3", [1, 2, 3]],
  ["one to three", [1, 2, 3]],
  ["1 through three", [1, 2, 3]],
  ["the first to 3", undefined],
  ["1 thru 3, 5", [1, 2, 3, 5]],
  ["1 and 3", [1, 3]],
  ["4 to 4", [4]],
  ["both 2 and 3", [2, 3]],
  ["both 2", undefined],
  ["both times yes 2", [2]],
  ["both 2, 3, 4", undefined],
  ["all 2 and 3", [2, 3]],
  ["all 2", undefined],
  ["2 is all", [2]],
  ["all good 2", [2]],
  ["all three 1, 2, 3", [1, 2, 3]],
  ["all of the three 1, 2", undefined],
  ["all three", undefined],
  ["the 3 are", undefined],
  ["the 3 is", [3]],
  ["the words are 2", [2]],
  ["3 are", [3]],
  ["the second", undefined],
  ["1 too 3", [1, 3]],
])("“%s” names the numbers %j", (words, named) => {
  expect(numbers(words)).toEqual(named);
});

test("a range that runs backwards, or over more than fifty numbers, names none that there is", () => {
  expect(numbers("3 to 1")).toEqual([-1]);
  expect(numbers("1 to 50")).toHaveLength(50);
  expect(numbers("1 to 51")).toEqual([-1]);
});

test("the first, the second and the last are those of the open questions, where nothing stands beside them", () => {
  const three = among([2, 4, 7]);
  expect(["the first", "the second", "the 3rd", "the last"].map((words) => numbers(words, three))).toEqual([
    [2],
    [4],
    [7],
    [7],
  ]);
  expect(numbers("the fourth", three)).toBeUndefined();
  expect(["the former", "the latter"].map((words) => numbers(words, three))).toEqual([undefined, undefined]);
  expect(["the former", "the latter"].map((words) => numbers(words, among([2, 3])))).toEqual([[2], [3]]);
  expect(numbers("the second one", three)).toEqual([4]);
});

test.each<[string, number[] | undefined, number?]>([
  ["the first two", [2, 4]],
  ["the first three", [2, 4, 7]],
  ["the first 3", [2, 4, 7]],
  ["the first 2", [2, 4]],
  ["the last 2", [7, 4]],
  ["the first four", undefined],
  ["the second two", undefined],
  ["the first two", undefined, 1],
])("“%s” are the open questions %j", (words, named, others = 0) => {
  expect(numbers(words, among([2, 4, 7], others))).toEqual(named);
});

test("“the first two questions” may be no open ones beside another point", () => {
  expect(numbers("the first two questions", among([1, 2]))).toEqual([1, 2]);
  expect(numbers("the first two questions", among([1, 2], 1))).toBeUndefined();
});

test.each([
  ["1 to 3", true],
  ["yes to 3", false],
  ["1 to all", false],
  ["1 as to 3", false],
])("“%s” is a range: %s", (words, is) => {
  const [first, tie, last] = tokensIn(plain(words), new Set());
  expect(isTie(first, tie, last)).toBe(is);
});

test("beside other points, or alone, a question is the second only by its own number", () => {
  expect(numbers("your second question", among([2], 1))).toEqual([2]);
  expect(numbers("your 2nd question", among([2]))).toEqual([2]);
  expect(numbers("the second", among([2], 1))).toBeUndefined();
  expect(numbers("your second question", among([3], 1))).toBeUndefined();
  // The second of the open ones is another.
  expect(numbers("your second question", among([2, 3], 1))).toBeUndefined();
  expect(numbers("your second question", among([1, 2], 1))).toEqual([2]);
});

const firstOf = (count: number) => Array.from({ length: count }, (_, i) => i + 1);
test.each<[string, number[], number, boolean]>([
  ["both", [2, 3], 0, true],
  ["both", [2, 3, 4], 0, false],
  ["both", [2, 3], 1, true],
  ["both", [2, 3], 2, false],
  ["yes both", [2, 3], 2, true],
  ["no both", [2, 3], 2, true],
  ["both 2", [2, 3], 0, false],
  ["all", [2, 3], 0, true],
  ["all", [2, 3], 1, false],
  ["all questions", [2, 3], 1, true],
  ["all three", [2, 3, 4], 0, true],
  ["all three", [2, 3], 0, false],
  ["all 3", [2, 3, 4], 0, true],
  ["all 3 questions", [2, 3], 1, false],
  ["12 x yes", firstOf(12), 0, true],
  ["yes x 20", firstOf(20), 0, true],
])("“%s” means the questions %j beside %i points: %s", (words, open, others, means) => {
  expect(set(words, among(open, others))).toBe(means);
});
