import type { Count } from "./count.ts";

/**
 * What a letter has left open in an order and no sheet shows: a file that could not be read as a sheet, words that a
 * person has to read, how many sheets there are to be, or sheets that it tells of and that have not come. It stays with
 * the order until somebody settles it.
 */
export type Carried = Open | CarriedCount | Promised;

interface Open {
  /** The number of the letter. */
  readonly letter: string;
  readonly what: "file" | "words";
  /** The file's name, or the words. */
  readonly text: string;
  /** The manager whose words they are, by name. Absent where they are the buyer's. */
  readonly by?: string;
}

/** Said in place of words that cannot be told. */
export const untold = {
  unsure: "(words that are struck out or hidden)",
  long: "(more than a program reads)",
  files: "(files that are no sheets)",
  letter: "(a letter without a sheet)",
  link: "(a link to files, which the program has not opened)",
} as const;

/** Said in place of what is in a file that only a person can open. */
export function untoldFile(file: string): string {
  return `(the file ${file})`;
}

/** Whether a text stands in place of words that it does not tell. Two letters of one such text say two things. */
export function isUntold(text: string): boolean {
  return Object.values<string>(untold).includes(text) || /^\(the file .*\)$/s.test(text);
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
  /** The manager who says it, by name. Absent where it is the buyer. */
  readonly by?: string;
}

/** Sheets that a letter tells of. */
export interface Announced {
  /** The sentence that tells of them. */
  readonly words: string;
  /**
   * "more": others come beside those that came. "later": one comes in the place of another. "mended": what came is said
   * to be mended. "attached": it is said to have come, and nothing has.
   */
  readonly tells: "more" | "later" | "mended" | "attached";
}

/**
 * What a letter says of the sheets that it brings. "named": those of the stations or the position that it names are
 * here. "whole": all of the order are here. "last": it is the last of so many letters.
 */
export type Claim =
  | { readonly words: string; readonly claims: "named" | "whole" }
  | { readonly words: string; readonly claims: "last"; readonly of: number };

/** Sheets that a letter tells of and that have not come. */
export interface Promised {
  readonly letter: string;
  readonly what: "promise";
  /** The words that tell of them. */
  readonly text: string;
  /** "numbered": it is the name of a file, or a note, that numbers a sheet among more than came. */
  readonly tells: Announced["tells"] | "named" | "whole" | "numbered";
}
