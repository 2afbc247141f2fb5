/**
 * What a letter has left open in an order and no sheet shows: a file that could not be read as a sheet, or words that
 * a person has to read. It stays with the order until somebody settles it.
 */
export interface Carried {
  /** The number of the letter. */
  readonly letter: string;
  readonly what: "file" | "words";
  /** The file's name, or the words. */
  readonly text: string;
}
