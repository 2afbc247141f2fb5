import type { Around, Words } from "../catalogue/words.ts";
import { cutToLetter } from "./judge-letter.ts";
import { plainWord, slips } from "./slips.ts";

/** A word of a legend where it stands. */
export interface WordInPlace extends Around {
  readonly text: string;
  /** It ends a row with as many characters as the form takes. */
  readonly atLimit: boolean;
  /** The word and its neighbour in the row before or after, written together. */
  readonly joined: readonly string[];
}

/** The judgement of a word, with the words that may have been meant, the likeliest first. */
export type Judgement =
  | { readonly is: "right" }
  | { readonly is: "cut" | "slipped" | "misspelt" | "mistaken"; readonly meant: readonly string[] }
  | { readonly is: "unknown" | "name"; readonly meant: readonly string[] };

const right: Judgement = { is: "right" };

/** Digits typed for letters and the other way round. */
const letterFor: Readonly<Record<string, string>> = { "0": "O", "1": "I", l: "I" };
const digitFor: Readonly<Record<string, string>> = { O: "0", I: "1", l: "1" };

/** Judges a word by the words that are known. `isKnown` tells names that the sheet itself vouches for. */
export function judgeWord(word: WordInPlace, words: Words, isKnown: (text: string) => boolean): Judgement {
  const { text, atLimit, joined } = word;
  if (isKnown(text) || words.expansions(text).length > 0) return right;
  const ordinal = rightOrdinal(text);
  if (ordinal !== undefined) return { is: "misspelt", meant: [ordinal] };
  const mistaken = mistakenDigits(text, words);
  if (mistaken !== undefined) return { is: "mistaken", meant: [mistaken] };
  if (atLimit && /^\p{Script=Latin}$/u.test(text) && !joined.some(words.isWord)) {
    const cut = cutToLetter({ text, before: word.before, goesOn: word.after.length > 0 }, words);
    return cut === undefined ? right : { is: "cut", meant: cut };
  }
  // Numbers are right, and letters of other alphabets are not judged as words.
  if (!/^[\p{Script=Latin}']{2,}$/u.test(text)) return right;
  const longer = atLimit ? words.completions(text) : [];
  if (words.isWord(text)) {
    const pair = pairSlip(word);
    if (pair !== undefined) return { is: "slipped", meant: [pair] };
    const whole = longer.filter((one) => words.isOfLegends(one));
    const head = word.before.at(-1);
    const isWhole = words.isOfLegends(text) || (head !== undefined && words.isPhrase(head, text));
    if (whole.length > 0 && !isWhole) return { is: "cut", meant: whole };
    const likelier = title.test(head ?? "") ? undefined : words.likelier(text, word);
    return likelier === undefined ? right : { is: "slipped", meant: [likelier] };
  }
  if (joined.some((both) => words.isWord(both))) return right;
  if (longer.length > 0) return { is: "cut", meant: longer };
  return judgeUnknown(word, words);
}

/** Judges a word that is in no list. */
function judgeUnknown({ text, before, after }: WordInPlace, words: Words): Judgement {
  const owner = /^(.+)'S?$/i.exec(text)?.[1];
  if (owner !== undefined) return judgeOwner(owner, words);
  if (isManyOrWhose(text, words)) return right;
  // Beside a word of another language stands another.
  if ([before.at(-1), after[0]].some((one) => one !== undefined && words.isForeign(one)))
    return { is: "unknown", meant: [] };
  const named = words.isName(text) || title.test(before.at(-1) ?? "");
  const meant = text.length < 4 ? [] : words.suggest(text, named);
  const [first = ""] = meant;
  const isOneSlip = slips(plainWord(text), first) === 1;
  const short = words.shortFor(text);
  // DELIB is the beginning of DELIBERATION rather than DELI with a letter more. KITCHENE is no such one: KITCHEN is common.
  const isCommon = meant.length > 0 && words.suggest(text, true).length > 0;
  const isBeginning =
    !isCommon && first.length < text.length && (short?.startsWith(plainWord(text)) ?? false);
  if (isOneSlip && words.isOfLegends(first) && !isBeginning) return { is: "misspelt", meant };
  if (named) return { is: "name", meant: [] };
  const whole = short ?? twoWords(text, words, isOneSlip);
  if (whole !== undefined) return { is: "unknown", meant: [whole] };
  return meant.length > 0 ? { is: "misspelt", meant } : { is: "unknown", meant: [] };
}

/** Several of what is known, or whose they are, without an apostrophe: MENS, SCONCS. Not LOBBYS. */
function isManyOrWhose(text: string, words: Words): boolean {
  const one = /^(.*(?:[^SY]|[AEIOU]Y))S$/i.exec(text)?.[1];
  return (
    one !== undefined && (words.isOfLegends(one) || (one.length > 3 && words.expansions(one).length > 0))
  );
}

/** What the second of two words written as one may be cut short to. */
const shortEnds = { RM: "ROOM", LT: "LIGHT", LTS: "LIGHTS", LTG: "LIGHTING", LITE: "LIGHT", LITES: "LIGHTS" };

/**
 * Two words that are written as one: HIGHBAY, WARMRM, STEPLTS, and BREWHOUSE if it is not `near` another word, as
 * KINDERGARDEN is.
 */
function twoWords(text: string, words: Words, near: boolean): string | undefined {
  const word = plainWord(text);
  for (const [short, end] of Object.entries(shortEnds)) {
    const first = word.slice(0, -short.length);
    if (!word.endsWith(short) || first.length < 2 || word.length < 5) continue;
    if (short === "RM" ? words.isWord(first) : words.isOfLegends(first)) return `${first} ${end}`;
  }
  const places = Array.from({ length: Math.max(0, text.length - 5) }, (_, i) => i + 3);
  const at = places.find((n) => {
    const parts = [text.slice(0, n), text.slice(n)];
    if (parts.every(words.isOfLegends)) return true;
    return !near && parts.every((part) => part.length > 3 && words.isWord(part));
  });
  return at === undefined ? undefined : plainWord(`${text.slice(0, at)} ${text.slice(at)}`);
}

/** What stands before the name of a person. */
const title =
  /^(DR|MR|MRS|MS|MISS|MX|PROF|REV|FR|RABBI|PASTOR|IMAM|JUDGE|HON|CHIEF|COACH|DEAN|CAPT|SGT|LT|SIR)$/i;

/** Whose something is: JUDGES and MAYORS are of legends, others are people. */
function judgeOwner(owner: string, words: Words): Judgement {
  if (words.isWord(owner)) return right;
  const meant = words.suggest(owner, words.isName(owner)).filter(words.isOfLegends);
  return meant.length > 0
    ? { is: "misspelt", meant: meant.map((one) => `${one}'S`) }
    : { is: "name", meant: [] };
}

/** Whether a common word stands where only another one makes sense. */
function pairSlip({ text, before, after }: WordInPlace): string | undefined {
  const typed = text.toUpperCase();
  if (typed === "OF" && after.length === 0) return "OFF";
  return typed === "FORM" && before.length > 0 && after.length > 0 ? "FROM" : undefined;
}

const ordinals = new Intl.PluralRules("en", { type: "ordinal" });
const endings: Partial<Record<Intl.LDMLPluralRule, string>> = { one: "ST", two: "ND", few: "RD" };

/** 2ND for 2TH, by the plural rules of the Unicode CLDR. Undefined if it is right, or no ordinal. */
function rightOrdinal(text: string): string | undefined {
  const [, number = "", typed = ""] = /^(\d{1,3})(ST|ND|RD|TH)$/i.exec(text) ?? [];
  if (number === "") return undefined;
  const ending = endings[ordinals.select(Number(number))] ?? "TH";
  return typed.toUpperCase() === ending ? undefined : `${number}${ending}`;
}

/** L0BBY for LOBBY, 2O4 for 204. Not STAIR1, MR1, LX1 or P1, where the digit is a number. */
function mistakenDigits(text: string, words: Words): string | undefined {
  if (/^(?=.*[OIl])(\d[\dOIl]*|[\dOIl]*\d[\dOIl]*\d[\dOIl]*)$/.test(text))
    return text.replace(/[OIl]/g, (letter) => digitFor[letter] ?? letter);
  const isKnown = (word: string): boolean => words.isWord(word) || words.expansions(word).length > 0;
  // A small L can be a slip only among capitals: FAMlLY, not All.
  const slip = /^(?=(.*\p{Lu}){2})[\p{Lu}l01']+$/u.test(text) ? /[01l]/g : /[01]/g;
  const letters = text.replace(slip, (one) => letterFor[one] ?? one);
  if (letters === text || !/^\p{L}{3,}$/u.test(letters) || !isKnown(letters)) return undefined;
  const name = /^(.+?)[01]+$/.exec(text)?.[1];
  // LXI and CXI are numbers of Rome in a dictionary, and no words of legends.
  const isCounted = /^[CDILMVX]+$/.test(letters) && !words.isOfLegends(letters);
  const numbered = name !== undefined && text.length < 5 && (name.length < 2 || isKnown(name) || isCounted);
  return numbered ? undefined : letters;
}
