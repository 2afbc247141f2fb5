import type { Verdict } from "../trade/problem.ts";
import { counted } from "./one-line.ts";

/** How many numbered items there are of each kind; for `waiting`, how many sheets are missing. */
export type Tally = Readonly<Record<Verdict, number>>;

/** All that stands between an order and its engraving: "2 to fix, 5 questions, 1 sheet to come". */
export function tallyWords(verdict: Verdict, { fail, confirm, person, waiting }: Tally): string {
  const told = [
    ...(fail === 0 ? [] : [`${fail} to fix`]),
    ...(confirm === 0 ? [] : [counted(confirm, "question")]),
    ...(person === 0 ? [] : [`${counted(person, "point")} for a person`]),
    ...(waiting === 0 ? [] : [`${counted(waiting, "sheet")} to come`]),
  ];
  if (told.length > 0) return told.join(", ");
  return verdict === "waiting" ? "more sheets to come" : "nothing to fix";
}
