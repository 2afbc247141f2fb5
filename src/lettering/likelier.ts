import type { Around, Words } from "../catalogue/words.ts";
import { once } from "../trade/once.ts";
import type { Glossary } from "./glossary.ts";
import { oneSlipFrom } from "./near.ts";
import { makeNearby } from "./nearby.ts";
import { makePhrases, stemOf } from "./phrases.ts";
import { plainWord, slips } from "./slips.ts";

/** A word that makes names with so many before it says nothing of a word of legends, and stands behind any: ROOM, BAR. */
const manyHeads = 15;

/** What is asked about a word before it is judged by its neighbours. */
interface Asked {
  readonly isOfLegends: (text: string) => boolean;
  readonly isEnglish: (word: string) => boolean;
  readonly isWord: (text: string) => boolean;
  /** A word, and what it is short for. */
  readonly readings: (text: string) => readonly string[];
  readonly weigh: (typed: string, other: string) => number;
}

/** Finds right words that were typed for other ones: by what they are, by their neighbours, by the rest of the device. */
export function makeLikelier(glossary: Glossary, asked: Asked): Pick<Words, "likelier" | "isPhrase"> {
  const { words, never, confused, company } = glossary;
  const { isOfLegends, isEnglish, isWord, readings, weigh } = asked;
  const nearbyCommon = once(() =>
    makeNearby([...words].filter(([, isCommon]) => isCommon).map(([word]) => word)),
  );
  const phrases = makePhrases(glossary, readings);
  const lines = Map.groupBy(
    company.flatMap((line) => line.map((word) => ({ word, line }))),
    ({ word }) => word,
  );

  const isOne = (head: string, tail: string): boolean =>
    phrases.isOne(head, tail) || (head.length > 2 && tail.length > 2 && isWord(head + tail));
  const isRelated = (one: string, other: string): boolean =>
    stemOf(one) === stemOf(other) || `${other}D` === one;
  const nearest = (word: string, others: Iterable<string>): string | undefined =>
    [...new Set(others)].toSorted((one, other) => weigh(word, one) - weigh(word, other))[0];

  /** How many words of one series with this one stand on the device. */
  const companyOf = (word: string, beside: ReadonlySet<string>): number =>
    Math.max(
      0,
      ...(lines.get(word) ?? []).map(
        ({ line }) => line.filter((one) => one !== word && beside.has(one)).length,
      ),
    );

  /** Near words that would make a name with a neighbour. */
  const byNeighbours = (word: string, { before, after, beside }: Around): string | undefined => {
    const [head, tail] = [before.at(-1), after[0]];
    if (head !== undefined && isOne(head, word)) return undefined;
    if (tail !== undefined && isOne(word, tail)) return undefined;
    const ofLegends = isOfLegends(word);
    // BED RIGHT is right beside BED LEFT.
    const sisters = beside.filter((legend) => legend.includes(head ?? tail ?? ""));
    if (ofLegends && companyOf(word, new Set(sisters.flat())) > 0) return undefined;
    const reach = word.length < 6 || ofLegends ? 1 : 2;
    const isMeant = (other: string): boolean =>
      !isRelated(word, other) &&
      (slips(word, other) <= reach || (confused.get(word)?.includes(other) ?? false));
    const ofHead = head === undefined ? [] : phrases.behind(head);
    const ofTail = tail === undefined ? [] : phrases.before(tail);
    const isGeneral = (one: string): boolean => phrases.before(one).length > manyHeads;
    const telling = [
      ...(isGeneral(word) ? [] : ofHead),
      ...(ofLegends && ofTail.length > manyHeads ? [] : ofTail),
    ];
    return nearest(word, telling.filter(isMeant)) ?? (ofLegends ? undefined : byCompound(word, head, tail));
  };

  /** Near words that a neighbour makes one word with: BREAK, FIST. */
  const byCompound = (word: string, head = "", tail = ""): string | undefined => {
    if (word.length < 4) return undefined;
    const makesOne = (other: string): boolean =>
      (head.length > 2 && isWord(head + other)) || (tail.length > 2 && isWord(other + tail));
    const others = [...oneSlipFrom(word)].filter((other) => other.length > 2 && !isRelated(word, other));
    return nearest(
      word,
      others.filter((other) => isOfLegends(other) && makesOne(other)),
    );
  };

  const byDevice = (word: string, { beside }: Around): string | undefined => {
    if (word.length < 4) return undefined;
    const others = new Set(beside.flat().flatMap(readings));
    if (others.size === 0 || companyOf(word, others) > 0) return undefined;
    const least = isOfLegends(word) ? 2 : 1;
    const candidates = [...oneSlipFrom(word), ...(confused.get(word) ?? [])].filter(
      (other) => isOfLegends(other) && !isRelated(word, other),
    );
    return nearest(
      word,
      candidates.filter((other) => companyOf(other, others) >= least),
    );
  };

  const bySound = (word: string): string | undefined =>
    isOfLegends(word) ? undefined : never.get(word)?.find(isOfLegends);

  const byItself = (word: string): string | undefined => {
    if (word.length < 4 || isOfLegends(word)) return undefined;
    // BALCON is a French word, and no slip from BALCONY.
    if (!isEnglish(word)) return undefined;
    return nearest(
      word,
      // ROOMS and RAISED are forms of common words, and no slips.
      nearbyCommon()(word, 1).filter((other) => other.length > 3 && !isRelated(word, other)),
    );
  };

  return {
    isPhrase: isOne,
    likelier: (text, around = { before: [], after: [], beside: [] }) => {
      const word = plainWord(text);
      if (word.length < 3) return undefined;
      return bySound(word) ?? byNeighbours(word, around) ?? byDevice(word, around) ?? byItself(word);
    },
  };
}
