import { slipsBetween } from "../orders/near.ts";

/** The candidate that a mistyped word was most likely meant for; undefined when none is near. */
export function nearest(word: string, candidates: readonly string[]): string | undefined {
  const [best] = candidates
    .map((candidate) => ({ candidate, slips: slipsBetween(word, candidate) }))
    .toSorted((a, b) => a.slips - b.slips);
  return best !== undefined && best.slips <= Math.max(1, word.length / 3) ? best.candidate : undefined;
}
