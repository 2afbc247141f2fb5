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
  ["New sheet for 5 to follow, along with 1 and 2.", [5, 1, 2]],
  ["New sheet for 5 attached, cheers with 1", undefined],
  ["New sheet for 5 attached, with 1 cheers", undefined],
  ["New sheet for 2 attached, that was on me", [2]],
  ["New sheet for 2 attached, that was mine alone", undefined],
  ["New sheet for 2 attached, nice weather", undefined],
  ["SALA-104 attached", []],
  ["SALAS-104 attached", undefined],
  ["S-1210 attached", []],
  ["S-12104 attached", undefined],
  ["S-104 rev 12 attached", []],
  ["S-104 rev 123 attached", [123]],
  ["as soon as I am back, new sheet coming", undefined],
  ["Fresh sheet will be sent by tomorrow positively.", []],
  ["Please replace the sheet for 2", undefined],
  ["Sheets for 2 of them attached", undefined],
  ["New sheet of each attached", undefined],
  ["New sheet attached, same as 3", undefined],
  ["All on the attached pdf.", []],
  ["New sheet attached unless he calls", undefined],
  ["SALON sheet attached", undefined],
  ["EC to resubmit the sheet.", undefined],
  ["1, 2 done", undefined],
  ["The new sheet S-101", undefined],
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
  [" 1 is fixed ", [1]],
  ["1, 123 done", [1, 123]],
  ["1, 1234 done", undefined],
])("“%s” tells that %j are mended", (sentence, numbers) => {
  expect(pointsDoneIn(sentence)).toEqual(numbers);
});

test.each([
  ["sorry, my mistake", true],
  ["sorry", true],
  ["new sheet attached", true],
  ["Sorry about 2", false],
  ["it is red", false],
  ["that is wrong", true],
  ["as submitted.", true],
  ["it is corrected", true],
  ["Please correct it for me.", false],
  ["all on the attached pdf", true],
  ["--", false],
])("“%s” stands beside a no and names nothing: %s", (words, is) => {
  expect(isAmends(words)).toBe(is);
});

test.each<[string, number[] | undefined]>([
  ["New sheet for 2 attached, the pdf looks nice", [2]],
  ["New sheet for 5 attached, cheers, with 1234", undefined],
  ["New sheets for 123 of them attached", [123]],
  ["New sheets for 12 of them attached", undefined],
  ["New sheet for 12345 attached", []],
  ["Same assorted sheet attached", []],
  ["Sheet attached, same as before", undefined],
])("“%s” tells of sheets for %j", (words, numbers) => {
  expect(sheetsPromisedIn(words)).toEqual(numbers);
});

test.each([
  ["wrong version", true],
  ["that file", true],
  ["all versions", true],
])("of a file alone “%s” tells no more: %s", (words, is) => {
  expect(isAmends(words)).toBe(is);
});
