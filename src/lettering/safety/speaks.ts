import { english } from "./english.ts";
import { french } from "./french.ts";
import { type Known, searchOf, wordsIn } from "./search.ts";
import { spanish } from "./spanish.ts";

/**
 * All languages are searched, whichever the settings name. No sheet says in which language its legends are, and a
 * word of safety in another language must not pass. English legends hardly ever have such a word with another
 * meaning.
 */
const searches = [english, french, spanish].map(searchOf);

/** Whether a legend speaks of safety. */
export function speaksOfSafety(rows: readonly string[], words: Known): boolean {
  return readings(rows).some((text) =>
    searches.some(({ write, anywhere, whole, harmless }) => {
      const rest = write(text, words).replaceAll(harmless, "-");
      return whole.test(rest) || anywhere.test(rest);
    }),
  );
}

/**
 * What two legends say together, if that is one expression and nothing else. KILL above SWITCH speaks of safety. FIRE
 * above PIT is harmless.
 */
export function sayTogether(
  one: readonly string[],
  other: readonly string[],
  words: Known,
): "safety" | "harmless" | undefined {
  const texts = readings(one).flatMap((first) => readings(other).map((second) => `${first} ${second}`));
  const written = texts.flatMap((text) =>
    searches.map(({ write, ...search }) => ({ ...search, text: write(text, words) })),
  );
  if (written.some(({ wholly, text }) => wholly.test(text))) return "harmless";
  return written.some(({ whole, text }) => whole.test(text)) ? "safety" : undefined;
}

/** Characters of a row that are looked at. No plate has longer rows, and a longer one is stopped anyway. */
const longest = 100;

/** What a legend may say: its rows as words, and its rows as one word, such as DIS above CONNECT. */
function readings(rows: readonly string[]): string[] {
  const filled = rows.map((row) => wordsIn(row.slice(0, longest))).filter(Boolean);
  const isBroken = rows.some((row) => row.trimEnd().endsWith("-"));
  const mayBeOne = isBroken || (filled.length > 1 && filled.every((row) => !row.includes(" ")));
  return [...(isBroken ? [] : [filled.join(" ")]), ...(mayBeOne ? [filled.join("")] : [])];
}
