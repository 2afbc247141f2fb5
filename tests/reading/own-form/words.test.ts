import { expect, test } from "vitest";
import { standsFor } from "../../../src/reading/own-form/stands.ts";
import { commonHead, headOf, numberIn, wordsOf } from "../../../src/reading/own-form/words.ts";
import { trade } from "../../make/config.ts";

test.each([
  ["K1_lineTwo", "k 1 line two"],
  ["PONumber", "po number"],
  ["2ndRow", "2 nd row"],
  [" E-mail: ", "email"],
  ["e mail", "email"],
  ["the mail", "the mail"],
  ["E-mails", "e mails"],
  ["Button #1 (text)", "button #1 text"],
  ["Größe", "größe"],
])("“%s” is the words “%s”", (text, words) => {
  expect(wordsOf(text)).toBe(words);
});

test.each([
  ["Project name; as on the drawings", "Project name"],
  ["Finish (of the body)", "Finish"],
  ["Mark \nas on the plan", "Mark"],
  ["", ""],
])("the head of the tip %j is “%s”", (tip, head) => {
  expect(headOf(tip)).toBe(head);
});

test.each([
  [["Layout: two", "Layout: four"], "Layout"],
  [["Button 1", "Button 12"], "Button 1"],
  [["Button 12", "Button 1"], "Button"],
  [["Finish Oat", "Finish Olive"], "Finish"],
  [["one ", "one "], "one"],
  [["alone"], "alone"],
  [["A", "B"], ""],
  [[], ""],
])("%j begin with “%s”", (texts, head) => {
  expect(commonHead(texts)).toBe(head);
});

test.each([
  ["4 buttons", 4],
  ["buttons 12", 12],
  ["two keys", 2],
  ["ten", 10],
  ["999", 999],
  ["1000", undefined],
  ["4x", undefined],
  ["twofold", undefined],
  ["often", undefined],
  ["", undefined],
])("the number in “%s” is %s", (words, number) => {
  expect(numberIn(words)).toBe(number);
});

test.each([
  ["layout", "D4", "D4"],
  ["layout", "Four buttons", "D4"],
  ["layout", "4 keys", "D4"],
  ["layout", "#2", "D2"],
  ["layout", "2", "D2"],
  ["layout", "a device of 4 buttons", undefined],
  ["layout", "4 buttons, 2 rows", undefined],
  ["layout", "5 buttons", undefined],
  ["layout", "buttons", undefined],
  ["standing", "Alone", "alone"],
  ["standing", "by itself", "alone"],
  ["standing", "single gang", "alone"],
  ["standing", "in a plate", "in-plate"],
  ["standing", "multi-gang", "in-plate"],
  ["standing", "in plates", undefined],
  ["standing", "abalone", undefined],
  ["standing", "singles", undefined],
  ["standing", "gangster", undefined],
  ["finish", "oat", "OAT"],
  ["finish", "Color: Oat", "OAT"],
  ["finish", "Oats", undefined],
  ["finish", "Oat or Chalk", undefined],
  ["finish", "the CHK one", "CHK"],
  ["finish", "", undefined],
] as const)("as %s “%s” stands for %s", (place, words, code) => {
  expect(standsFor(words, place, trade.catalogue)).toBe(code);
});
