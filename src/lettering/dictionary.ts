import { type Affix, readAffixes, taken } from "./affixes.ts";
import { plainWord } from "./slips.ts";

/** A Hunspell dictionary as text. */
export interface Hunspell {
  readonly aff: string;
  readonly dic: string;
}

/** The words of a language, given and asked in capitals without accents. */
export interface Dictionary {
  readonly has: (word: string) => boolean;
  /** Whether it has the word and the word may be offered. */
  readonly offers: (word: string) => boolean;
  /** The words that it lists and offers, without names. Some kinds of words are listed in one form only. */
  readonly listed: readonly string[];
}

/**
 * Reads a dictionary. Its list is kept as it is written. The affixes are taken off each word that is asked about.
 * With all forms written out, French would have three million words in half a gigabyte.
 */
export function readDictionary({ aff, dic }: Hunspell): Dictionary {
  const affixes = readAffixes(aff);
  const { flagsOf, unoffered = "" } = affixes;
  // The first line is the number of entries.
  const lines = dic.split(/\r?\n/).slice(1).filter(Boolean);
  const entries = Map.groupBy(lines, (line) => plainWord(line.replace(/[/\t].*/, "")));

  /** Whether an entry for `stem` may bear these affixes, the inner ones first. */
  const bears = (stem: string, chain: readonly Affix[], barred: string): boolean =>
    (entries.get(stem) ?? []).some((line) => {
      const [written = "", flags = ""] = (line.split("\t")[0] ?? "").split("/");
      const borne = [...flagsOf(flags)];
      let form: string | undefined = written;
      for (const affix of chain) {
        form = borne.includes(affix.flag) && form !== undefined ? affix.apply(form) : undefined;
        borne.push(...affix.further);
      }
      return form !== undefined && !borne.includes(barred);
    });

  const allowing = new Set([...affixes.suffixes.values()].flat().flatMap(({ further }) => further));
  /** Hunspell's own limits: at most one prefix and two suffixes. The inner suffix has to allow the outer. */
  const stands = (word: string, barred = ""): boolean => {
    if (bears(word, [], barred)) return true;
    for (const [rest, ...prefix] of [[word] as const, ...taken(word, affixes, "prefixes")]) {
      if (bears(rest, prefix, barred)) return true;
      for (const [stem, suffix] of taken(rest, affixes, "suffixes")) {
        if (prefix.some(({ mixes }) => !mixes || !suffix.mixes)) continue;
        if (bears(stem, [suffix, ...prefix], barred)) return true;
        for (const [root, inner] of allowing.has(suffix.flag) ? taken(stem, affixes, "suffixes") : [])
          if (inner.further.includes(suffix.flag) && bears(root, [inner, suffix, ...prefix], barred))
            return true;
      }
    }
    return false;
  };

  const listed = lines
    .map((line) => (line.split("\t")[0] ?? "").split("/"))
    .filter(([written = "", flags = ""]) => /^\p{Ll}+$/u.test(written) && !flagsOf(flags).includes(unoffered))
    .map(([written = ""]) => plainWord(written))
    .filter((word) => /^[A-Z]+$/.test(word));
  return {
    has: (word) => stands(word),
    offers: (word) => stands(word, unoffered),
    listed: [...new Set(listed)],
  };
}
