import { wordsOf } from "../checks/run.ts";
import { inOneLine } from "../drawing/proof/shapes.ts";
import type { Confirmation } from "../trade/confirmation.ts";
import { stampOf } from "./stamp.ts";

/** Who confirmed what, and when, for programs. */
export function confirmationsJson(confirmations: readonly Confirmation[]): object[] {
  return confirmations.map(({ number, problem, at, ...rest }) => ({
    question: number,
    check: problem.check,
    says: wordsOf(problem).says,
    ...rest,
    at: at.toISOString(),
  }));
}

/** The same to read. */
export function confirmationsText(confirmations: readonly Confirmation[]): string {
  if (confirmations.length === 0) return "Nothing of this order had to be confirmed.\n";
  return confirmations
    .map(({ number, problem, station, position, by, at, letter, why }) => {
      const place = [station, position === undefined ? undefined : `position ${position}`]
        .filter((part) => part !== undefined)
        .join(", ");
      const where = place === "" ? "" : ` (${place})`;
      const told = letter === undefined ? "" : `, in letter ${letter}`;
      return [
        inOneLine(`${number}. ${wordsOf(problem).says}${where}`),
        inOneLine(`   Meant so: ${by}, ${stampOf(at)}${told}`),
        ...(why === undefined ? [] : [inOneLine(`   Reason: ${why}`)]),
        "",
      ].join("\n");
    })
    .join("\n");
}
