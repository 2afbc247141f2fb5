import nspell from "nspell";
import type { Words } from "../catalogue/words.ts";
import { type Glossary, projectKey } from "./glossary.ts";
import { isSqueezed, plainWord, slips } from "./slips.ts";

/** A Hunspell dictionary as text. */
export interface Dictionary {
  readonly aff: string;
  readonly dic: string;
}

/** Most words offered for one. */
const most = 3;

/** Words from a dictionary and the desk's own glossary. The dictionary is taken in when first asked, in 0.1 to 0.4 s. */
export function makeWords(glossary: Glossary, dictionary: Dictionary): Words {
  const { words, abbreviations, projects } = glossary;
  const ofLegends = new Set([...words.keys(), ...[...abbreviations.values()].flat()]);
  const common = [...words].filter(([, isCommon]) => isCommon).map(([word]) => word);
  const spelling = once(() => nspell(dictionary.aff, dictionary.dic));
  const stems = once(() => stemsOf(dictionary.dic));

  const isOfLegends = (text: string): boolean => ofLegends.has(plainWord(text));
  const isWord = (text: string): boolean => {
    if (isOfLegends(text)) return true;
    const word = plainWord(text).replace(/^'+|'+$/g, "");
    return isOfLegends(word) || [word, word.toLowerCase()].some((form) => spelling().correct(form));
  };
  /** Words of legends before the dictionary's; among them the common ones. */
  const rank = (word: string): number => (words.get(word) === true ? 0 : isOfLegends(word) ? 1 : 2);

  return {
    isWord,
    isOfLegends,
    expansions: (text) => abbreviations.get(plainWord(text)) ?? [],
    isConfirmed: (text, project) => projects.get(projectKey(project))?.has(plainWord(text)) ?? false,
    suggest: (text) => {
      const word = plainWord(text);
      const reach = word.length < 6 ? 1 : 2;
      const known = [...ofLegends].filter((other) => Math.abs(other.length - word.length) <= reach);
      const near = [...new Set([...known, ...spelling().suggest(word.toLowerCase()).map(plainWord)])]
        .map((other) => ({ other, slips: slips(word, other), rank: rank(other) }))
        .filter((one) => one.slips <= reach);
      const nearest = Math.min(...near.map((one) => one.slips));
      const likely = near.filter((one) => one.slips === nearest).toSorted((a, b) => a.rank - b.rank);
      // Where a word of legends is as near as any, the rest of the dictionary only distracts.
      const legends = likely.filter((one) => one.rank < 2);
      return (legends.length > 0 ? legends : likely).slice(0, most).map(({ other }) => other);
    },
    completions: (beginning) => {
      const start = plainWord(beginning);
      const longer = (all: Iterable<string>): string[] =>
        [...all].filter((word) => word.length > start.length && word.startsWith(start));
      const known = longer(ofLegends).toSorted((a, b) => rank(a) - rank(b) || a.length - b.length);
      // Of a few letters the dictionary has too many; what it has is no answer.
      const more = start.length < 4 ? [] : longer(stems()).toSorted((a, b) => a.length - b.length);
      return [...new Set([...known, ...more])].slice(0, most);
    },
    likelier: (text) => {
      const word = plainWord(text);
      if (word.length < 4 || isOfLegends(word)) return undefined;
      return common.find(
        // ROOMS and RAISED are forms of common words, no slips.
        (other) =>
          other.length > 3 && word !== `${other}S` && word !== `${other}D` && slips(word, other) === 1,
      );
    },
    squeezed: (text) => {
      const word = plainWord(text);
      return word.length < 3 ? undefined : [...ofLegends].find((whole) => isSqueezed(word, whole));
    },
  };
}

/** The words of a Hunspell .dic file that are of letters alone, without those that are names. */
function stemsOf(dic: string): string[] {
  return dic
    .split("\n")
    .map((line) => line.split("/")[0] ?? "")
    .filter((word) => /^[a-z]+$/.test(word))
    .map((word) => word.toUpperCase());
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
