import { slips } from "./slips.ts";

/**
 * Finds which of these words, in their order, are at most `reach` slips from another. Slips are counted only for words
 * that may be so near: a slip changes the length by one letter at most, and takes or brings two kinds of letters at
 * most.
 */
export function makeNearby(words: Iterable<string>): (word: string, reach: number) => string[] {
  const all = [...words].map((word) => ({ word, kinds: kindsIn(word) }));
  return (word, reach) => {
    const kinds = kindsIn(word);
    const isPerhaps = (one: (typeof all)[number]): boolean =>
      Math.abs(one.word.length - word.length) <= reach && countOf(one.kinds ^ kinds) <= 2 * reach;
    return all.flatMap((one) => (isPerhaps(one) && slips(word, one.word) <= reach ? one.word : []));
  };
}

/** The letters of a word as bits. Two kinds of signs may share one, which hides a difference and makes none. */
function kindsIn(word: string): number {
  let kinds = 0;
  for (let n = 0; n < word.length; n++) kinds |= 1 << (word.charCodeAt(n) & 31);
  return kinds;
}

/** How many bits of 32 are set. */
function countOf(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count++;
  return count;
}
