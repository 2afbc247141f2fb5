import type { Around } from "../../../src/reading/reply/clause-acts.ts";
import { clausesIn } from "../../../src/reading/reply/clauses.ts";

const alone: Around = {
  open: [2, 3],
  inQuestion: [],
  questions: new Map(),
  others: [],
  named: new Set(),
  answered: new Set(),
  granted: new Set(),
  isDenied: false,
  promises: true,
  last: undefined,
  under: undefined,
  afterSeveral: false,
  isSilent: () => false,
};

/** Beside a point to mend, which the reply names. */
export const mending = { others: [1], named: new Set([1]) };

/** What a line answers of questions 2 and 3, clause by clause. Undefined if it is left to a person. */
export function said(line: string, around: Partial<Around> = {}): Record<number, boolean> | undefined {
  const all = clausesIn(line, { ...alone, ...around });
  return all && Object.fromEntries(all.map(({ number, is }) => [number, is]));
}

/** Questions from 2 on, below a point to mend. */
export const asking = (...questions: string[]): Partial<Around> => ({
  open: questions.map((_, at) => at + 2),
  questions: new Map(questions.map((one, at) => [at + 2, one])),
  ...mending,
});

export const misspelt = (word: string, meant: string): string =>
  `“${word}” in row 1 of button 1 looks misspelt. If you mean ${meant}, send the sheet again.`;
export const twice =
  "“LAMPS” stands on button 2 and button 4. Send the sheet again with the legends that tell them apart.";
export const several =
  "“Station mark” says “TYP OF 4”, which seems to ask for several. A sheet orders one. Send one sheet for each, with its own station mark.";
export const finish =
  "The finish is Chalk here and Slate on the other 3 devices of this order. If all are to be alike, send the sheet again.";
export const capitals =
  "Some rows are in capitals, such as “READING”, and some are not, such as “Stacks”. If all are to be alike, send the sheet again.";
