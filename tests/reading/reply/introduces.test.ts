import { expect, test } from "vitest";
import { isForeign } from "../../../src/reading/reply/foreign.ts";
import { introduces } from "../../../src/reading/reply/introduces.ts";
import { isFarewellElsewhere } from "../../../src/reading/reply/other-tongues.ts";

const inRed = "Please see my answers to your questions in the list below as marked here in red";

test.each([
  ["Per Mark:", true],
  ["As per Ann Bo:", true],
  ["From our customer:", true],
  ["Mark says:", true],
  ["he wrote this:", true],
  ["Answers below", true],
  [inRed, true],
  [`${inRed} caps`, false],
  ["Per Mark", false],
  ["from our big bad customer:", false],
  ["mark says:", false],
  ["he wrote this", false],
  ["Answerable below", false],
  ["Answers below?", false],
  ["Answers 2", false],
  ["Hello all", false],
  ["Per Mark: make it red", false],
  ["Mark says: make it red", false],
])("“%s” introduces answers: %s", (line, is) => {
  expect(introduces(line)).toBe(is);
});

test.each([
  ["Pozdrawiam", true],
  ["med vänlig hälsning", true],
  ["lg mfg vg bg dank danke vielen", true],
  ["lg mfg vg bg dank danke vielen liebe", false],
  ["mit", false],
  ["cordialement: x", false],
  ["vielleicht", false],
])("“%s” is a good-bye of another language: %s", (line, is) => {
  expect(isFarewellElsewhere(line)).toBe(is);
});

test.each([
  ["de la", true],
  ["bitte", false],
  // Every sixth word, and two of them at least.
  ["a b c d e f g h i j nicht bitte", true],
  ["a b c d e f g h i j k nicht bitte", false],
])("“%s” is in another language: %s", (words, is) => {
  expect(isForeign(words)).toBe(is);
});
