import type { Around, Words } from "../catalogue/words.ts";
import { once } from "../trade/once.ts";
import type { Glossary } from "./glossary.ts";
import { oneSlipFrom } from "./near.ts";
import { makeNearby } from "./nearby.ts";
import { makePhrases, stemOf } from "./phrases.ts";
import { plainWord, slips } from "./slips.ts";
import { areUsual } from "./usual.ts";

/** A word that makes names with so many before it says nothing of a word of legends, and stands behind any: ROOM, BAR. */
const manyHeads = 15;

const isNumber = (text = ""): boolean => /^\d{1,3}$/.test(text);

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
  const { words, never, confused, company, odd } = glossary;
  const { isOfLegends, isEnglish, isWord, readings, weigh } = asked;
  const nearbyCommon = once(() =>
    makeNearby([...words].filter(([, isCommon]) => isCommon).map(([word]) => word)),
  );
  const nearbyKnown = once(() => makeNearby(words.keys()));
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

  /** Whether it makes a name with the word before or behind it. */
  const isNamed = (word: string, { before, after }: Around): boolean => {
    const [head, tail] = [before.at(-1), after[0]];
    return (head !== undefined && isOne(head, word)) || (tail !== undefined && isOne(word, tail));
  };

  /** Other legends of the device that share a neighbour with the word. */
  const sistersOf = ({ before, after, beside }: Around): Around["beside"] =>
    beside.filter((legend) => legend.includes(before.at(-1) ?? after[0] ?? ""));

  /** Near words that would make a name with a neighbour. */
  const byNeighbours = (word: string, around: Around): string | undefined => {
    const [head, tail] = [around.before.at(-1), around.after[0]];
    const ofLegends = isOfLegends(word);
    // BED RIGHT is right beside BED LEFT.
    const sisters = sistersOf(around);
    if (ofLegends && companyOf(word, new Set(sisters.flat())) > 0) return undefined;
    const reachTo = (other: string): number =>
      !ofLegends && (word.length > 5 || word.slice(0, 3) === other.slice(0, 3)) ? 2 : 1;
    const isMeant = (other: string): boolean =>
      !isRelated(word, other) &&
      (slips(word, other) <= reachTo(other) || (confused.get(word)?.includes(other) ?? false));
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

  /** A near word that stands at the same place of other legends and makes a name here: FORE DESK beside AFT DECK. */
  const byTheSame = (word: string, { before, after, beside }: Around): string | undefined => {
    const [head, tail] = [before.at(-1), after[0]];
    const longer = beside.filter(({ length }) => length > 1);
    const others = [
      ...(head === undefined
        ? []
        : longer.map((legend) => legend.at(-1) ?? "").filter((one) => isOne(head, one))),
      ...(tail === undefined ? [] : longer.map(([first = ""]) => first).filter((one) => isOne(one, tail))),
    ].map(plainWord);
    return others.find((other) => slips(word, other) === 1 && !isRelated(word, other) && isOfLegends(other));
  };

  /** BIRTH 2 beside BERTH 1 is another of the same, if legends know more of the other word. */
  const byNumbers = (word: string, { before, after, beside }: Around): string | undefined => {
    if (word.length < 4 || before.length > 0 || after.length !== 1 || !isNumber(after[0])) return undefined;
    const others = beside.flatMap(([other = "", number, ...more]) =>
      more.length === 0 && isNumber(number) && number !== after[0] ? [plainWord(other)] : [],
    );
    if (others.includes(word)) return undefined;
    return others.find(
      (other) =>
        other.length > 3 &&
        slips(word, other) === 1 &&
        !isRelated(word, other) &&
        isOfLegends(other) &&
        usesOf(other) >= usesOf(word),
    );
  };

  /** Of how many names a word is a part. */
  const usesOf = (word: string): number => phrases.behind(word).length + phrases.before(word).length;

  /** A word that ends no name, one slip from one that ends many, behind one that begins some: CANDLE NODE. */
  const byPlace = (word: string, { before, after }: Around): string | undefined => {
    const head = before.at(-1);
    if (word.length < 4 || head === undefined || after.length > 0 || isOfLegends(word)) return undefined;
    if (phrases.before(word).length > 0 || phrases.behind(head).length < 2) return undefined;
    const ends = [...oneSlipFrom(word)].filter((other) => phrases.before(other).length > manyHeads);
    return nearest(
      word,
      ends.filter((other) => isOfLegends(other) && !isRelated(word, other)),
    );
  };

  /** A near word that English has beside a neighbour: YOUTH GROUP, where nobody says YOUTH GROUT. */
  const byUse = (word: string, { before, after }: Around): string | undefined => {
    const [head, tail] = [plainWord(before.at(-1) ?? ""), plainWord(after[0] ?? "")];
    const isUsed = (one: string, much = false): boolean =>
      areUsual(head, one, much) || areUsual(one, tail, much);
    if (isUsed(word)) return undefined;
    // PEW PEWS stands in no legend.
    const isMeant = (other: string): boolean =>
      other.length > 2 &&
      isUsed(other, isOfLegends(word)) &&
      isOfLegends(other) &&
      ![word, head, tail].some((one) => isRelated(one, other));
    return nearest(word, [...oneSlipFrom(word)].filter(isMeant));
  };

  const bySound = (word: string): string | undefined =>
    isOfLegends(word) ? undefined : never.get(word)?.find(isOfLegends);

  const byItself = (word: string): string | undefined => {
    if ((word.length < 4 && !odd.has(word)) || isOfLegends(word)) return undefined;
    // BALCON is a French word, and no slip from BALCONY.
    if (!isEnglish(word)) return undefined;
    const nearby = odd.has(word) ? nearbyKnown() : nearbyCommon();
    // ROOMS and RAISED are forms of common words, and no slips.
    const near = nearby(word, 1).filter((other) => other.length > 2 && !isRelated(word, other));
    return nearest(word, near);
  };

  return {
    isPhrase: isOne,
    likelier: (text, around = { before: [], after: [], beside: [] }) => {
      const word = plainWord(text);
      if (word.length < 3) return undefined;
      const heard = bySound(word);
      if (heard !== undefined) return heard;
      // STAGE LIFT is a name, and a slip all the same beside STAGE RIGHT.
      if (isNamed(word, around)) return byDevice(word, { ...around, beside: sistersOf(around) });
      return (
        byNeighbours(word, around) ??
        byTheSame(word, around) ??
        byDevice(word, around) ??
        byNumbers(word, around) ??
        byPlace(word, around) ??
        byUse(word, around) ??
        byItself(word)
      );
    },
  };
}
