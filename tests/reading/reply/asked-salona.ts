import type { answersBeside } from "../../../src/reading/reply/answers-beside.ts";

/** A reply by Dana Whitlock is read against an answer of ours that asks about SALONA under number 3. */
export const askedSalona = {
  open: [3],
  others: 0,
  answer: "  3. “SALONA” in row 1 of button 2 looks misspelt.",
  subject: "CONFIRM: order EL-100",
  isFurniture: () => false,
  names: ["Dana Whitlock"],
  bringsSheets: false,
  isOnSheets: () => false,
  sheetsNamed: (words: string) => (/^S-10[45]$/.test(words) ? [`1/${words}`] : undefined),
} satisfies Parameters<typeof answersBeside>[1];
