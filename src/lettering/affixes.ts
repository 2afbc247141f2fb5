import { plainWord } from "./slips.ts";

/** A line of a Hunspell .aff file: an ending or a beginning that a word with its flag may have. */
export interface Affix {
  readonly flag: string;
  /** What it adds, and what it takes away for that, in capitals without accents. */
  readonly add: string;
  readonly strip: string;
  /** Flags that the new word has. */
  readonly further: readonly string[];
  /** Whether it may stand together with an affix at the other end. */
  readonly mixes: boolean;
  /** The word with it, as written; undefined if it does not fit the word. */
  readonly apply: (word: string) => string | undefined;
}

/**
 * What a Hunspell .aff file says of endings and beginnings. The dictionaries here have no compounds but of digits.
 */
export interface Affixes {
  /** By what they add. */
  readonly prefixes: ReadonlyMap<string, readonly Affix[]>;
  readonly suffixes: ReadonlyMap<string, readonly Affix[]>;
  readonly flagsOf: (flags: string) => readonly string[];
  /** The flag of words that nobody wants to be offered. */
  readonly unoffered: string | undefined;
}

/** The text of an .aff file → its rules, as hunspell(5) describes them. */
export function readAffixes(aff: string): Affixes {
  const long = /^FLAG long/m.test(aff);
  const flagsOf = (flags: string): readonly string[] => (long ? (flags.match(/../gsu) ?? []) : [...flags]);
  const mixing = new Set<string>();
  const all: Record<"PFX" | "SFX", Affix[]> = { PFX: [], SFX: [] };
  for (const line of aff.split(/\r?\n/)) {
    const [kind, flag = "", second = "", third = "", condition] = line.split(/\s+/);
    if (kind !== "SFX" && kind !== "PFX") continue;
    if (condition === undefined) {
      // The first line of a flag says how many lines follow, and whether the affixes mix.
      if (second === "Y") mixing.add(kind + flag);
      continue;
    }
    const [put = "", further = ""] = third.split("/");
    const [strip, add] = [second, put].map((some) => (some === "0" ? "" : some)) as [string, string];
    all[kind].push({
      flag,
      add: plainWord(add),
      strip: plainWord(strip),
      further: flagsOf(further),
      mixes: mixing.has(kind + flag),
      apply: (kind === "SFX" ? suffixed : prefixed)(strip, add, condition),
    });
  }
  return {
    prefixes: Map.groupBy(all.PFX, ({ add }) => add),
    suffixes: Map.groupBy(all.SFX, ({ add }) => add),
    flagsOf,
    unoffered: /^NOSUGGEST (\S+)/m.exec(aff)?.[1],
  };
}

function suffixed(strip: string, add: string, condition: string): Affix["apply"] {
  const fits = pattern(`${condition}$`);
  return (word) =>
    word.endsWith(strip) && fits().test(word) ? word.slice(0, word.length - strip.length) + add : undefined;
}

function prefixed(strip: string, add: string, condition: string): Affix["apply"] {
  const fits = pattern(`^${condition}`);
  return (word) => (word.startsWith(strip) && fits().test(word) ? add + word.slice(strip.length) : undefined);
}

/**
 * A condition consists of letters, dots and sets of letters, as in a regular expression. Few of the thousands are
 * ever tried.
 */
function pattern(source: string): () => RegExp {
  let made: RegExp | undefined;
  return () => (made ??= new RegExp(source, "u"));
}

/** Every way to take one affix off a word. */
export function* taken(
  word: string,
  affixes: Affixes,
  from: "prefixes" | "suffixes",
): Generator<readonly [rest: string, affix: Affix]> {
  for (let n = 0; n <= word.length; n++) {
    const add = from === "prefixes" ? word.slice(0, n) : word.slice(n);
    for (const affix of affixes[from].get(add) ?? [])
      yield [from === "prefixes" ? affix.strip + word.slice(n) : word.slice(0, n) + affix.strip, affix];
  }
}
