import { memoized } from "../../trade/memoized.ts";
import { tokensOf } from "./word-bag.ts";

/** Words by which people refuse, doubt, take back or set conditions. */
const doubts = new Set(
  tokensOf(
    `no not never nope nah none nothing neither nor cannot without wrong wrongly false untrue instead rather but
    however except unless until till only otherwise actually oops sorry undo undone forget forgot forgotten withdraw
    withdrawn should unsure maybe perhaps doubt doubts doubtful void redo held mistook mistaken edit edits edited err
    errs erred errata misspelt modify modified
    nein nicht kein keine falsch non pas jamais faux erreur nunca falso`,
  ),
);

/** The same with endings. */
const stems =
  "slipp? stopp? hold cancell? correct incorrect error typo misspell? wait delay dropp? scrapp? amend adjust alter swapp? omitt? reject disregard discard retract fault differ different fix";
const stemsWithE =
  "chang mistak mistyp paus postpon replac remov delet revis updat substitut exchang ignor refus declin revok";
const oneOf = (words: string): string => `(?:${words.split(" ").join("|")})`;
const ended = new RegExp(
  `^(?:${oneOf(stems)}(?:s|es|ed|ing|ion|ions|ation|ations|ly)?|${oneOf(stemsWithE)}(?:e|es|ed|ing|ion|ions|al))$`,
  "u",
);

/** "don't" and its kind, with any mark for the apostrophe or none. NFKC makes a blank and an accent of ´. */
const short =
  /n(?:['’‘ʼ`′]| \u0301)t(?![\p{L}\p{N}])|(?<![\p{L}\p{N}])(?:do|does|did|ca|wo|is|are|was|were|should|would|could|must|have|has|had|need|ai)n ?t(?![\p{L}\p{N}])/iu;

/**
 * Whether the writer may mean the opposite of what stands beside these words. It errs on the side of yes, as for
 * "Holding & Stop Ltd".
 */
export const speaksAgainst = memoized((text: string): boolean => {
  const plain = text.normalize("NFKC");
  return (
    /[❌❎✖✗✘👎🚫⛔🛑]/u.test(plain) ||
    short.test(plain) ||
    tokensOf(plain).some((token) => doubts.has(token) || ended.test(token))
  );
});
