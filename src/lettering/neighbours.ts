import type { Words } from "../catalogue/words.ts";
import type { Glossary } from "./glossary.ts";
import { plainWord } from "./slips.ts";

/** Most words offered for one. */
const most = 3;

/** What the desk's glossary says of words that stand side by side. `readings` are what a short form stands for. */
export function makeNeighbours(
  { lettered, followers }: Glossary,
  readings: (text: string) => readonly string[],
): Pick<Words, "followers" | "isLettered"> {
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
