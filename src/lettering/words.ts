import type { Words } from "../catalogue/words.ts";
import { once } from "../trade/once.ts";
import { type Hunspell, readDictionary } from "./dictionary.ts";
import { type Glossary, projectKey } from "./glossary.ts";
import { isUsualSlip } from "./keyboard.ts";
import type { Language } from "./languages.ts";
import { makeLikelier } from "./likelier.ts";
import { nearWords } from "./near.ts";
import { makeNearby } from "./nearby.ts";
import { makeNeighbours } from "./neighbours.ts";
import { isShortened, isSqueezed, plainWord, slips } from "./slips.ts";

/** Most words offered for one. */
const most = 3;

/**
 * How unlikely it is that `typed` was meant to be `other`. `rank` is 0 for words common in legends, 1 for words known
 * in legends, 2 for words of a dictionary.
 */
export type Weigh = (typed: string, other: string, rank: 0 | 1 | 2) => number;

/**
 * Fewer slips come first. Then come words of legends, since the rest of the dictionary only distracts. Then words of
 * the same letters, with two swapped or one doubled. Then words that begin alike.
 */
const bySlips: Weigh = (typed, other, rank) =>
  3 * slips(typed, other) +
  { 0: 0, 1: 0.1, 2: 1.7 }[rank] +
  (sorted(typed) === sorted(other) || single(typed) === single(other) ? 0 : 0.3) +
  (typed[0] === other[0] ? 0 : 0.3);

/**
 * Words from the desk's own glossary and from dictionaries. A dictionary is read when it is first asked, which takes
 * 0.1 to 0.8 s.
 */
export function makeWords(
  glossary: Glossary,
  languages: Partial<Readonly<Record<Language, Hunspell>>>,
  weigh: Weigh = bySlips,
): Words {
  const { words, abbreviations, names, foreign, projects } = glossary;
  const meanings = [...abbreviations.values()].flat().flatMap((phrase) => phrase.split(/[ -]/));
  const ofLegends = new Set([...words.keys(), ...meanings]);
  const dictionaries = once(() =>
    Object.entries(languages).map(([language, text]) => ({
      ...readDictionary(text),
      english: language.startsWith("en-"),
    })),
  );
  /** What the dictionaries list, by its first four letters. Of fewer too many words begin so. */
  const listed = once(() =>
    Map.groupBy(
      dictionaries().flatMap((one) => one.listed),
      (word) => word.slice(0, 4),
    ),
  );
  const nearby = once(() => makeNearby(ofLegends));
  /** By the first letter, the shortest first. */
  const byFirst = once(() =>
    Map.groupBy(
      [...ofLegends].toSorted((one, other) => one.length - other.length),
      (word) => word[0],
    ),
  );
  const languagesOf = (word: string) => dictionaries().filter(({ has }) => has(word));

  const isOfLegends = (text: string): boolean =>
    ofLegends.has(plainWord(text)) || ofLegends.has(plainWord(text).replaceAll("'", ""));
  const isWord = (text: string): boolean => {
    if (isOfLegends(text) || foreign.has(plainWord(text))) return true;
    const word = plainWord(text).replace(/^'+|'+$/g, "");
    return isOfLegends(word) || languagesOf(word).length > 0;
  };
  const isName = (text: string): boolean => names.has(plainWord(text));
  /** Words of legends come before those of a dictionary, and common ones first. */
  const rank = (word: string): 0 | 1 | 2 => (words.get(word) === true ? 0 : isOfLegends(word) ? 1 : 2);

  const shortFor = (text: string): string | undefined => {
    const word = plainWord(text);
    if (word.length < 3) return undefined;
    const wholes = (byFirst().get(word[0]) ?? []).filter((whole) => whole.length > word.length + 1);
    return (
      wholes.find((whole) => isSqueezed(word, whole)) ?? wholes.find((whole) => isShortened(word, whole))
    );
  };

  /** A word, and the last word of its full form: for RM that is ROOM, for BALLRM it is BALLROOM. */
  const readings = (text: string): string[] => {
    const long = abbreviations.get(plainWord(text)) ?? [isWord(text) ? "" : (shortFor(text) ?? "")];
    return [plainWord(text), ...long.map((phrase) => phrase.split(" ").at(-1) ?? "")];
  };

  return {
    isWord,
    isOfLegends,
    isForeign: (text) => {
      const word = plainWord(text);
      return foreign.has(word) && !isOfLegends(word) && languagesOf(word).length === 0;
    },
    expansions: (text) => abbreviations.get(plainWord(text)) ?? [],
    isConfirmed: (text, project) => projects.get(projectKey(project))?.has(plainWord(text)) ?? false,
    isName,
    // Many a short word is near a name or an abbreviation: only a slip that hands often make tells then.
    suggest: (text, named = isName(text)) => {
      const word = plainWord(text);
      const reach = word.length < 6 ? 1 : 2;
      const known = nearby()(word, reach);
      // Of names and short words the dictionaries have nothing to offer that legends have not.
      const others =
        named || word.length < 5
          ? []
          : dictionaries().flatMap((dictionary) => nearWords(word, 1, dictionary));
      const near = [...new Set([...known, ...others])]
        .filter((other) => {
          const away = slips(word, other);
          // THRUSTER is no slip from THRUST.
          if (away > 1 && word.startsWith(other)) return false;
          if (named) return away === 1 && rank(other) === 0;
          // Names and abbreviations of four letters are near some word of a dictionary more often than not.
          if (word.length < 5 && rank(other) === 2) return false;
          return away <= reach && (word.length > 5 || rank(other) === 0 || isUsualSlip(word, other));
        })
        .map((other) => ({ other, weight: weigh(word, other, rank(other)) }))
        .toSorted((one, other) => one.weight - other.weight);
      return near
        .filter(({ weight }) => weight - (near[0]?.weight ?? 0) < 1)
        .slice(0, most)
        .map(({ other }) => other);
    },
    completions: (beginning) => {
      const start = plainWord(beginning);
      const longer = (all: Iterable<string>): string[] =>
        [...all].filter((word) => word.length > start.length && word.startsWith(start));
      const known = longer(ofLegends).toSorted((a, b) => rank(a) - rank(b) || a.length - b.length);
      // A dictionary has too many words that begin with a few letters.
      const more =
        start.length < 4
          ? []
          : longer(listed().get(start.slice(0, 4)) ?? []).toSorted((a, b) => a.length - b.length);
      return [...new Set([...known, ...more])].slice(0, most);
    },
    ...makeLikelier(glossary, {
      isOfLegends,
      isEnglish: (word) => languagesOf(word).some(({ english }) => english),
      isWord,
      readings,
      weigh: (typed, other) => weigh(typed, other, 0),
    }),
    shortFor,
    ...makeNeighbours(glossary, readings),
  };
}

function sorted(word: string): string {
  return [...word].toSorted().join("");
}

/** The word without the second of every doubled letter. */
function single(word: string): string {
  return word.replace(/(.)\1+/g, "$1");
}
