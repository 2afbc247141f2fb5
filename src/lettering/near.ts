import type { Dictionary } from "./dictionary.ts";
import { slips } from "./slips.ts";

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/**
 * Words of a dictionary that are `reach` slips from a wrong one or fewer: of those one slip away all, of those
 * further away the ones that the dictionary lists itself, not all their forms.
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

/** A slip changes the number of each letter by one at most, and of two letters at most: cheap to count before slips are. */
function mayBeNear(word: string, other: string, reach: number): boolean {
  if (Math.abs(word.length - other.length) > reach) return false;
  let left = word;
  for (const letter of other) left = left.replace(letter, "");
  return left.length <= reach;
}
