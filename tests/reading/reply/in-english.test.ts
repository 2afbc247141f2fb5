import { expect, test } from "vitest";
import { inEnglish } from "../../../src/reading/reply/in-english.ts";

test.each([
  ["2 es correcto", "2 is correct"],
  [" 2 es correcto", "2 is correct"],
  ["2 ES CORRECTO", "2 is correct"],
  ["1234 es correcto", "1234 is correct"],
  ["yes es correcto", "yes is correct"],
  ["the word es correcto", "the word is correct"],
  ["es correcto", "it is correct"],
  ["son correctos", "they are correct"],
  ["2 oui -> merci", "2 yes -> thanks"],
  ["2 es correcto (gracias)", "2 is correct (thanks)"],
  ["2 correcto, 3 correcto, gracias", "2 correct, 3 correct, thanks"],
  ["2 es correcto. 3 es correcto. 4 es correcto", "2 is correct. 3 is correct. 4 is correct"],
])("“%s” is in English “%s”", (line, english) => {
  expect(inEnglish(line)).toBe(english);
});

test.each([
  ["2 es correcto, thanks", "2 is correct, thanks"],
  ["2 es correcto, Thanks", "2 is correct, Thanks"],
  ["2 es correcto, 3 yes", "2 is correct, 3 yes"],
  ["2 es correcto,", "2 is correct,"],
])("“%s” is in English beside known words: “%s”", (line, english) => {
  expect(inEnglish(line)).toBe(english);
});

test.each([
  "2 YES",
  "OK",
  "La Villa",
  "Hotel",
  "2 es correcto eyes",
  "12345 es correcto",
  "yesterday es correcto",
  "the words es correcto",
  "2 es correcto, zonk",
  "2 es correcto, zonk 3",
])("“%s” stays as it is", (line) => {
  expect(inEnglish(line)).toBe(line);
});

test.each([
  ["2 es correcto por favor", "2 is correct please"],
  ["2 y 3 son correctos", "2 and 3 are correct"],
])("what stands at the beginning of a clause, and in its middle: “%s” is “%s”", (line, english) => {
  expect(inEnglish(line)).toBe(english);
});
