import { array, assert, constantFrom, nat, pre, property } from "fast-check";
import nspell from "nspell";
import { expect, test } from "vitest";
import { readDictionary } from "../../src/lettering/dictionary.ts";
import { nearWords, oneSlipFrom } from "../../src/lettering/near.ts";
import { plainWord, slips } from "../../src/lettering/slips.ts";
import { dictionary } from "../make/config.ts";

/** nspell writes out every form of every word; of French that takes half a gigabyte. */
function formsOf({ aff, dic }: ReturnType<typeof dictionary>): Set<string> {
  const all = Object.keys(nspell(aff, dic).data).map(plainWord);
  return new Set(all.filter((word) => /^[A-Z']+$/.test(word)));
}

test.each(["dictionary-en", "dictionary-es"])(
  "%s has the forms that nspell writes out, and no other",
  (name) => {
    const text = dictionary(name);
    const forms = formsOf(text);
    const some = [...forms];
    const { has } = readDictionary(text);
    assert(
      property(nat(some.length - 1), (n) => {
        const form = some[n] ?? "";
        expect(has(form)).toBe(true);
        for (const other of oneSlipFrom(form)) expect([other, has(other)]).toEqual([other, forms.has(other)]);
      }),
      { numRuns: 60 },
    );
  },
);

const french = dictionary("dictionary-fr");
const inFrench = readDictionary(french);

test("French has its words with accents and without", () => {
  const entries = french.dic.split("\n").slice(1);
  const written = entries
    .map((line) => line.replace(/\/.*/, ""))
    .filter((word) => /^[a-z]*[à-ÿœ][a-zà-ÿœ]*$/.test(word));
  assert(
    property(constantFrom(...written), (word) => {
      expect(inFrench.has(plainWord(word))).toBe(true);
      expect(plainWord(word)).toMatch(/^[A-Z]+$/);
    }),
  );
});

// Plural, feminine, verb and elision, from memory.
test.each("ESCALIERS FERMEES ALLUMONS ALLUMEZ ETEINTE D'EAU L'ESCALIER QU'IL CHEVAUX".split(" "))(
  "French has %s, which it lists in another form",
  (word) => expect(inFrench.has(word)).toBe(true),
);

test.each("ESCALIERES FERMEEZ ALLUMONT XENTREE ESCALIERSS".split(" "))("French has no %s", (word) =>
  expect(inFrench.has(word)).toBe(false),
);

const english = readDictionary(dictionary("dictionary-en"));
const words = english.listed.filter((word) => word.length > 5);

test("what is typed with a slip or two has the word that was meant among the near ones", () => {
  assert(
    property(constantFrom(...words), array(nat(), { minLength: 1, maxLength: 2 }), (meant, chosen) => {
      const typed = chosen.reduce((word, n) => {
        const all = [...oneSlipFrom(word)];
        return all[n % all.length] ?? word;
      }, meant);
      // A letter moved out of a swapped pair is more than two slips in this count.
      pre(typed !== meant && slips(typed, meant) <= 2);
      const near = nearWords(typed, 2, english);
      expect(near).toContain(meant);
      for (const word of near) expect(slips(word, typed)).toBeLessThanOrEqual(2);
    }),
  );
});

test("one slip is one slip", () => {
  assert(
    property(constantFrom(...words), (word) => {
      for (const other of oneSlipFrom(word)) expect(slips(word, other)).toBe(1);
    }),
    { numRuns: 30 },
  );
});

test("a word that nobody wants to be offered is right and not offered", () => {
  const own = readDictionary({ aff: "NOSUGGEST !\nSFX s Y 1\nSFX s 0 s .\n", dic: "2\ndrat/!s\nrat/s\n" });
  expect(["DRAT", "DRATS", "RATS"].map((word) => [own.has(word), own.offers(word)])).toEqual([
    [true, false],
    [true, false],
    [true, true],
  ]);
  expect(own.listed).toEqual(["RAT"]);
});
