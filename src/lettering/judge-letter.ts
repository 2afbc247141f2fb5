import type { Words } from "../catalogue/words.ts";
import { plainWord } from "./slips.ts";

/** A single letter at the end of a full row. */
interface LetterInPlace {
  readonly text: string;
  /** The words of the legend before it. */
  readonly before: readonly string[];
  /** The legend goes on in another row. */
  readonly goesOn: boolean;
}

/** Letters of a series, points of the compass, numerals: LIGHTS A, SHADES N, PHASE V. */
const ownRight = /^[ABCNSEWIVX]$/;
/** Words of one letter, of English, French or Spanish: TAKING A / BREAK. */
const shortWord = /^[AIY]$/;

/**
 * The words that a form may have cut to this letter, the likeliest first; perhaps none is known. Undefined if the
 * letter is right as it is. Common practice, no source.
 */
export function cutToLetter(
  { text, before, goesOn }: LetterInPlace,
  words: Words,
): readonly string[] | undefined {
  const letter = plainWord(text);
  if (goesOn && shortWord.test(letter)) return undefined;
  // In SCREEN 2 D the screen says what D is.
  const head = before.findLast((word) => !/^\d/.test(word));
  const likely = head === undefined ? [] : words.followers(head, letter);
  if (likely.length > 0) return likely;
  const numbered = /^\d/.test(before.at(-1) ?? "");
  // A series leaves out the letter O, since it looks like a zero. Most often an O is from ON or OFF.
  const isOwn = numbered || ownRight.test(letter) || (head !== undefined && words.isLettered(head));
  return isOwn && letter !== "O" ? undefined : words.followers(undefined, letter);
}
