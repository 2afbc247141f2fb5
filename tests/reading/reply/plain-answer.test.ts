import { expect, test } from "vitest";
import { plainAnswerIn } from "../../../src/reading/reply/plain-answer.ts";
import { plain, tokensIn } from "../../../src/reading/reply/tokens.ts";

const answer = (line: string) => plainAnswerIn(tokensIn(plain(line), new Set()));

test.each([
  ["yes to 3", "named", true],
  ["yes for 2 and 3", "named", true],
  ["3 is no", "named", false],
  ["yes to all", "set", true],
  ["no to all of it", "set", false],
  ["yes, 3", "named", true],
  ["3 yes, confirmed", "named", true],
  ["yes, the word in 3", "named", true],
  ["also 2 is correct", "named", true],
  ["the wordings in 2 and 4 are both correct", "named", true],
  ["all is correct as it stands, 1, 2 and 3", "named", true],
])("“%s” is a plain answer", (line, what, is) => {
  expect(answer(line)).toEqual({ what, is });
});

test.each([
  "3",
  "yes",
  "3 yes and 2 no",
  "3 yes, 2",
  "no 4",
  "no words",
  "3 yes as in the list",
  "is it 3, yes",
  "two of them yes",
  "3 of them yes",
  "two and 3 yes",
  "3 yes is it",
  "good it 3 yes",
  "good names are 3 yes",
  "3 yes, the name",
  "3 yes for the owner",
  "3 words yes",
  "thanks for 3, yes",
  "good questions: 3 yes",
  "is 3 a yes",
  "yes 3 so they say",
  "3 is the question, yes",
  "3 hammers yes",
  "3 yes as all",
  "3 yes, it says it",
  "is it sure 2 is correct",
  "2 is correct as follows",
  "is it sure all is correct, 2 and 3",
  "all is correct, 2 and 3 as follows",
])("“%s” is none", (line) => {
  expect(answer(line)).toBeUndefined();
});

test.each([
  ["he said 2 and 3 are both yes", { what: "named", is: true }],
  ["yes for the 2, yes for the 3", { what: "named", is: true }],
  ["2 is right and 3", undefined],
])("in “%s” no number is left open", (line, is) => {
  expect(answer(line)).toEqual(is);
});
