import type { Dictionary } from "./dictionary.ts";
import { slips } from "./slips.ts";

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/**
 * Words of a dictionary that are at most `reach` slips from a wrong one. One slip away they are all words. Further
 * away they are only those that the dictionary lists, not all their forms.
 */
export function nearWords(word: string, reach: number, dictionary: Dictionary): string[] {
  const listed = reach < 2 ? [] : dictionary.listed.filter((other) => mayBeNear(word, other, reach));
  return [
    ...[...oneSlipFrom(word)].filter((other) => dictionary.offers(other)),
    ...listed.filter((other) => slips(word, other) <= reach),
  ];
}

/** Every text one slip from this: a letter left out, added, mistaken, or two swapped. */
export function oneSlipFrom(word: string): Set<string> {
  const all = new Set<string>();
  for (let n = 0; n <= word.length; n++) {
    const [head, tail] = [word.slice(0, n), word.slice(n)];
    for (const letter of letters) {
      all.add(head + letter + tail);
      if (tail !== "") all.add(head + letter + tail.slice(1));
    }
    if (tail !== "") all.add(head + tail.slice(1));
    if (tail.length > 1) all.add(head + tail.charAt(1) + tail.charAt(0) + tail.slice(2));
  }
  all.delete(word);
  return all;
}

/** A quick test before slips are counted: a slip changes the number of at most two letters, each by one. */
function mayBeNear(word: string, other: string, reach: number): boolean {
  if (Math.abs(word.length - other.length) > reach) return false;
  let left = word;
  for (const letter of other) left = left.replace(letter, "");
  return left.length <= reach;
}
