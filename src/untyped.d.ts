declare module "damerau-levenshtein" {
  /** Optimal string alignment distance: insertions, deletions, substitutions, swaps of neighbours. */
  export default function distance(
    one: string,
    other: string,
  ): { steps: number; relative: number; similarity: number };
}
