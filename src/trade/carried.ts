import type { Count } from "./count.ts";

/**
 * What a letter has left open in an order and no sheet shows: a file that could not be read as a sheet, words that a
 * person has to read, or how many sheets there are to be. It stays with the order until somebody settles it.
 */
export type Carried = Open | CarriedCount;

interface Open {
  /** The number of the letter. */
  readonly letter: string;
  readonly what: "file" | "words";
  /** The file's name, or the words. */
  readonly text: string;
}

/** A number of sheets that the order has not come to yet. */
export interface CarriedCount {
  readonly letter: string;
  readonly what: "count";
  /** The count in words. */
  readonly text: string;
  readonly count: Count;
  /** The attached file that says it; absent for the letter itself. */
  readonly file?: string;
}
