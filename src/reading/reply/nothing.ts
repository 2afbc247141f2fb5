import { beginsOthersWords } from "./others-words.ts";
import type { OwnLine } from "./own-lines.ts";

/** What a reply takes back of words that wait for a person. */
export interface TakenBack {
  /** Numbers of the words that ask for nothing. */
  readonly nothing: ReadonlySet<number>;
  /** The lines that say so, with what is left of each. */
  readonly lines: ReadonlyMap<string, string>;
  /** All that the reply says besides. */
  readonly left: readonly OwnLine[];
}

/**
 * Reads "4 NOTHING", "4, 5: nothing", and "2 NOTHING" of "1 YES, 2 NOTHING". `words`: the numbers of words that wait. A
 * number of anything else is left for others to read, and so is all below somebody else's name.
 */
export function takenBack(
  lines: readonly OwnLine[],
  { words = [], ...known }: Parameters<typeof beginsOthersWords>[1] & { readonly words?: readonly number[] },
): TakenBack {
  const nothing = new Set<number>();
  const told = new Map<string, string>();
  const others = lines.findIndex(({ line }) => line.split("\n").some((one) => beginsOthersWords(one, known)));
  const left = lines.map((own, i) => {
    if (words.length === 0 || (others >= 0 && i >= others)) return own;
    const { line, under } = own;
    const numbered = under !== undefined && isBare.test(line) ? `${under} ${line}` : line;
    const rest = withoutNothing(numbered, (numbers) => {
      if (!numbers.every((number) => words.includes(number))) return false;
      for (const number of numbers) nothing.add(number);
      return true;
    });
    if (rest === numbered) return own;
    for (const one of line.split("\n")) told.set(one, rest);
    return { ...own, line: rest };
  });
  return { nothing, lines: told, left: left.filter(({ line }) => line !== "") };
}

function withoutNothing(line: string, isTaken: (numbers: readonly number[]) => boolean): string {
  const rest = line.replace(isNothing, (piece, said: string) =>
    isTaken([...said.matchAll(/\d+/gu)].map(Number)) ? "" : piece,
  );
  return rest === line ? line : rest.replace(/^and\s|(?:[,;]|\sand)?\s*$/gu, "");
}

const isBare = /^nothing[.!]*$/iu;
const isNothing =
  /(?<=^|[,;.!]\s?|\sand\s)#?(\d{1,4}(?:(?:, ?| and | & |, and )#?\d{1,4})*)\s?[:.)=–-]{0,2}\s?nothing(?:[.!,;]+(?=\s|$)|$|(?= and ))\s*/giu;
