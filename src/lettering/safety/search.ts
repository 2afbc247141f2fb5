import type { Words } from "../../catalogue/words.ts";
import { plainWord, slips } from "../slips.ts";
import type { Tongue } from "./tongue.ts";

/** Right words and known abbreviations are taken as they are. */
export type Known = Pick<Words, "isWord" | "expansions">;

/** What is looked for in one language, in words that are written out. */
export interface Search {
  /** A text with abbreviations written out. */
  readonly write: (text: string, known: Known) => string;
  readonly anywhere: RegExp;
  /** All that is said. */
  readonly whole: RegExp;
  readonly harmless: RegExp;
  /** All that is said, and harmless. */
  readonly wholly: RegExp;
}

export function searchOf({ families, shorts, fillers }: Tongue): Search {
  const patterns = (part: "anywhere" | "alone" | "harmless"): string =>
    families.flatMap((family) => family[part] ?? []).join("|");
  const [anywhere, alone, harmless] = [patterns("anywhere"), patterns("alone"), patterns("harmless")];
  const long = new Map(
    Object.entries(shorts).flatMap(([word, others]) => others.split(" ").map((short) => [short, word])),
  );
  const vocabulary = new Set([...`${anywhere}|${alone}`.matchAll(/[A-Z]{2,}/g)].map(([word]) => word));
  const longWords = [...Object.keys(shorts).map((word) => [word, word] as const), ...long].filter(
    ([whole]) => whole.length >= atLeast,
  );
  const dropped = new Set(fillers.split(" "));

  const isKnown = (word: string): boolean => long.has(word) || vocabulary.has(word);
  const lengthen = (word: string): string => long.get(word) ?? word;
  /** What an unknown word may be: a longer one that was cut short or mistyped, or two written as one. */
  const guess = (word: string): string | undefined =>
    longWords.find(([whole]) => isShortOf(word, whole) || isSlipOf(word, whole))?.[1] ??
    [...vocabulary].find((whole) => isWithoutVowels(word, whole)) ??
    halves(word)
      .find((both) => both.every(isKnown))
      ?.map(lengthen)
      .join(" ");
  const writeOut = (word: string, { isWord, expansions }: Known): string => {
    if (isKnown(word)) return lengthen(word);
    const one = word.replace(/(?<=...)S$/, "");
    if (isKnown(one)) return lengthen(one);
    const meant = expansions(word);
    return meant.find(isKnown) ?? (meant.length > 0 || isWord(word) ? word : (guess(word) ?? word));
  };
  return {
    write: (text, known) => {
      const words = text.split(" ").filter((word) => !dropped.has(word));
      return words.map((word) => writeOut(word, known)).join(" ");
    },
    anywhere: new RegExp(`(?<!\\S)(?:${anywhere})(?!\\S)`),
    whole: new RegExp(`^(?:${anywhere}|${alone})$`),
    harmless: new RegExp(`(?<!\\S)(?:${harmless})(?!\\S)`, "g"),
    wholly: new RegExp(`^(?:${harmless})$`),
  };
}

/** A word of so many letters is still told when it was cut short. */
const atLeast = 6;

/** The beginning of a long word, and some of its further consonants: DSCNCT, DISCNT, ISOLT. */
function isShortOf(word: string, whole: string): boolean {
  if (word.length < 4 || word.length >= whole.length) return false;
  let begun = 0;
  while (word[begun] === whole[begun]) begun += 1;
  let next = begun;
  for (const letter of whole.slice(begun)) if (letter === word[next] && !/[AEIOU]/.test(letter)) next += 1;
  return begun > 0 && next === word.length;
}

/** PNL for PANEL, STP for STOP. */
function isWithoutVowels(word: string, whole: string): boolean {
  return word.length > 2 && whole.length > word.length && whole.replace(/(?!^)[AEIOU]/g, "") === word;
}

/** One slip of the hand in a longer word, or two in one of ten letters. */
function isSlipOf(word: string, whole: string): boolean {
  return whole.length > atLeast && slips(word, whole) <= (whole.length < 10 ? 1 : 2);
}

function halves(word: string): [string, string][] {
  return Array.from({ length: Math.max(0, word.length - 3) }, (_, i) => [
    word.slice(0, i + 2),
    word.slice(i + 2),
  ]);
}

/** What a row says, as words in capitals: E.STOP is two, S.O.S. is one, and so is DISC'T. */
export function wordsIn(row: string): string {
  const words = plainWord(row)
    .replace(/\b[DL]['’](?=\p{L})/gu, "")
    .replace(/['’]/g, "")
    .replace(/[^\p{L}\p{N}]+/gu, " ");
  return words.replace(/(?<!\S)\p{L}(?: \p{L}(?!\S))+/gu, (letters) => letters.replaceAll(" ", "")).trim();
}
