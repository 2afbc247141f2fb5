import * as fc from "fast-check";
import { expect, test } from "vitest";
import { describe, notCuttable, retyped } from "../../src/lettering/characters.ts";
import { catalogue } from "../make/config.ts";

const { characters } = catalogue;

test("what the catalogue has can be cut, blanks too", () => {
  expect(notCuttable(`${characters} ${characters}`, characters)).toEqual([]);
});

test("a letter and its accent are one character", () => {
  expect(notCuttable("CAFE\u0301", characters)).toEqual([]);
  expect(notCuttable("S\u0301WIT", characters)).toEqual(["\u015A"]);
  expect(notCuttable("S\u0301WIT", `${characters}S\u0301`)).toEqual([]);
});

test.each([
  ["CHEF\u2019S", "CHEF'S"],
  ["LOBBY\u2013EAST", "LOBBY-EAST"],
  ["\u201CON\u201D", '"ON"'],
  ["\u015AWIT", "SWIT"],
  ["C\u0152UR", "COEUR"],
  ["ALL\u00A0ON", "ALL ON"],
  ["ALL\u202FON", "ALL ON"],
  ["EN\u200BTRY", "ENTRY"],
  ["\uFF21\uFF22", "AB"],
  ["O\uFB03CE", "OffiCE"],
  ["\u00BD LIT", "1/2 LIT"],
  ["S\u0421ENE", "SCENE"],
  ["\u0391\u0397", "AH"],
])("“%s” is typed anew as “%s”", (typed, instead) => {
  expect(retyped(typed, characters)).toBe(instead);
});

test.each(["\u2192", "\uD55C", "\u200B", "A\u{1F4A1}"])("“%s” has no obvious other", (typed) => {
  expect(retyped(typed, characters)).toBeUndefined();
});

test.each([
  ["\u2019", "“\u2019” (curly apostrophe, U+2019)"],
  ["\u00C9", "“\u00C9” (E with an accent, U+00C9)"],
  ["\u0429", "“\u0429” (Cyrillic letter, U+0429)"],
  ["\u200B", "“\u200B” (invisible character, U+200B)"],
  ["\uD55C", "“\uD55C” (letter, U+D55C)"],
  ["\u{1F4A1}", "“\u{1F4A1}” (picture, U+1F4A1)"],
  ["\u2192", "“\u2192” (symbol, U+2192)"],
])("%s is called %s", (character, words) => {
  expect(describe(character)).toBe(words);
});

test("what is typed anew can be cut", () => {
  const text = fc.string({
    unit: fc.oneof(fc.string({ unit: "binary", maxLength: 1 }), fc.constantFrom(..."É’–ﬁ А")),
  });
  fc.assert(
    fc.property(text, (typed) => {
      expect(notCuttable(retyped(typed, characters) ?? "", characters)).toEqual([]);
    }),
  );
});
