import { isSqueezed, plainWord, slips } from "../slips.ts";
import { english } from "./english.ts";
import { french } from "./french.ts";
import { spanish } from "./spanish.ts";
import type { Tongue } from "./tongue.ts";

/** Letters of a word so long that one slip of the hand leaves no doubt which is meant. */
const unmistakable = 8;

/** What a tongue looks for in words that are written out. */
interface Search {
  readonly write: (text: string) => string;
  readonly anywhere: RegExp;
  /** The whole of what is said, and nothing else. */
  readonly whole: RegExp;
  readonly harmless: RegExp;
  /** The same, as all that is said. */
  readonly wholly: RegExp;
}

/** The languages that have a list, by the beginning of their names; English may stand on every plate. */
const searches = Object.entries({ fr: french, es: spanish }).map(([name, tongue]) => ({
  name,
  search: searchOf(tongue),
}));
const always = searchOf(english);

/** Whether a legend speaks of safety, in English or in another language that is named. */
export function speaksOfSafety(rows: readonly string[], languages: readonly string[]): boolean {
  return readings(rows).some((text) =>
    inLanguages(languages).some(({ write, anywhere, whole, harmless }) => {
      const rest = write(text).replaceAll(harmless, "-");
      return whole.test(rest) || rest.search(anywhere) >= 0;
    }),
  );
}

/**
 * What two legends say as one expression, where they are one and nothing else: KILL above SWITCH is about safety, FIRE
 * above PIT is harmless.
 */
export function saysTogether(
  one: readonly string[],
  other: readonly string[],
  languages: readonly string[],
): "safety" | "harmless" | undefined {
  const texts = readings(one).flatMap((first) => readings(other).map((second) => `${first} ${second}`));
  const all = texts.flatMap((text) =>
    inLanguages(languages).map(({ write, whole, wholly }) => {
      const written = write(text);
      return wholly.test(written) ? "harmless" : whole.test(written) ? "safety" : undefined;
    }),
  );
  return all.includes("safety") ? "safety" : all.find((says) => says !== undefined);
}

function inLanguages(languages: readonly string[]): Search[] {
  const named = searches.filter(({ name }) => languages.includes(name));
  return [always, ...named.map(({ search }) => search)];
}

/** What a legend may say: its rows as words, and its rows as one word, as DIS above CONNECT is. */
function readings(rows: readonly string[]): string[] {
  const filled = rows.map(wordsIn).filter(Boolean);
  const isBroken = rows.some((row) => row.trimEnd().endsWith("-"));
  const mayBeOne = isBroken || (filled.length > 1 && filled.every((row) => !row.includes(" ")));
  return [...(isBroken ? [] : [filled.join(" ")]), ...(mayBeOne ? [filled.join("")] : [])];
}

/** Words in capitals: E.STOP is two, S.O.S. is one, and so is DISC'T. */
function wordsIn(row: string): string {
  const words = plainWord(row)
    .replace(/\b([DL])['’](?=\p{L})/gu, " ")
    .replace(/['’]/g, "")
    .replace(/[^\p{L}\p{N}]+/gu, " ");
  return words.replace(/(?<!\S)\p{L}(?: \p{L}(?!\S)){2,}/gu, (letters) => letters.replaceAll(" ", "")).trim();
}

function searchOf({ families, shorts, fillers }: Tongue): Search {
  const all = (part: "anywhere" | "alone" | "harmless"): string =>
    families.flatMap((family) => family[part] ?? []).join("|");
  const long = new Map(
    Object.entries(shorts).flatMap(([word, others]) =>
      [word, ...others.split(" ")].map((short) => [short, word]),
    ),
  );
  const dropped = new Set(fillers.split(" "));
  const near = [...long].filter(([short]) => short.length >= unmistakable);
  const writeOut = (word: string): string =>
    long.get(word) ??
    near.find(([short]) => isSqueezed(word, short) || slips(word, short) === 1)?.[1] ??
    word;
  return {
    write: (text) =>
      text
        .split(" ")
        .filter((word) => !dropped.has(word))
        .map(writeOut)
        .join(" "),
    anywhere: new RegExp(`(?<!\\S)(?:${all("anywhere")})(?!\\S)`),
    whole: new RegExp(`^(?:${all("anywhere")}|${all("alone")})$`),
    harmless: new RegExp(`(?<!\\S)(?:${all("harmless")})(?!\\S)`, "g"),
    wholly: new RegExp(`^(?:${all("harmless")})$`),
  };
}
