import type { Words } from "../catalogue/words.ts";
import type { Glossary } from "./glossary.ts";
import { plainWord } from "./slips.ts";

/** Most words offered for one. */
const most = 3;

/**
 * What the desk's glossary says of words that stand side by side. `squeezed` finds the word whose vowels were left
 * out.
 */
export function makeNeighbours(
  { abbreviations, lettered, followers }: Glossary,
  squeezed: Words["squeezed"],
): Pick<Words, "followers" | "isLettered"> {
  /** A word, and the last word of its full form: for RM that is ROOM, for BALLRM it is BALLROOM. */
  const readings = (text: string): string[] => {
    const long = abbreviations.get(plainWord(text)) ?? [squeezed(text) ?? ""];
    return [plainWord(text), ...long.map((phrase) => phrase.split(" ").at(-1) ?? "")];
  };
  return {
    followers: (before, beginning) => {
      const start = plainWord(beginning);
      const heads = before === undefined ? ["*"] : readings(before);
      const all = new Set(heads.flatMap((head) => followers.get(head) ?? []));
      return [...all].filter((word) => word.length > start.length && word.startsWith(start)).slice(0, most);
    },
    isLettered: (text) => readings(text).some((one) => lettered.has(one)),
  };
}
