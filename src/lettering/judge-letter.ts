import type { Words } from "../catalogue/words.ts";
import { plainWord } from "./slips.ts";

/** A single letter at the end of a row that is full. */
interface LetterInPlace {
  readonly text: string;
  /** The words of the legend before it. */
  readonly before: readonly string[];
  /** The legend goes on in another row. */
  readonly goesOn: boolean;
}

/** Letters that are told in series, points of the compass, numerals: LIGHTS A, SHADES N, PHASE V. */
const ownRight = /^[ABCNSEWIVX]$/;
/** Words of one letter, of English, French or Spanish: TAKING A / BREAK. */
const shortWord = /^[AIY]$/;

/**
 * The words that a form may have cut to this letter, the likeliest first, maybe none known; undefined where the
 * letter is right as it is. What is common practice, no source.
 */
export function cutToLetter(
  { text, before, goesOn }: LetterInPlace,
  words: Words,
): readonly string[] | undefined {
  const letter = plainWord(text);
  if (goesOn && shortWord.test(letter)) return undefined;
  // Of SCREEN 2 D, the screen says what D is.
  const head = before.findLast((word) => !/^\d/.test(word));
  const likely = head === undefined ? [] : words.followers(head, letter);
  if (likely.length > 0) return likely;
  const numbered = /^\d/.test(before.at(-1) ?? "");
  // Series leave the letter O out, since it looks like a zero; most often it is of ON or OFF.
  const isOwn = numbered || ownRight.test(letter) || (head !== undefined && words.isLettered(head));
  return isOwn && letter !== "O" ? undefined : words.followers(undefined, letter);
}
