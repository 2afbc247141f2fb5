import { areWords, maySettle } from "../checks/asked.ts";
import type { Problem } from "../trade/problem.ts";

/** What its sender replies to a question where it is meant as it stands. */
export const yesOf = (number: number): string => `${number} YES`;

/** What a sender replies whose words ask for nothing. */
export const nothingOf = (number: number): string => `${number} NOTHING`;

/** How a question is answered in a reply. What its sender alone cannot settle is for a person to read. */
export function replyLine(number: number, problems: readonly Problem[]): string {
  if (problems.every(areWords))
    return `If it asks for nothing, reply “${nothingOf(number)}”: no person need read it.`;
  return problems.every(maySettle)
    ? `Or reply “${yesOf(number)}” if it is meant as it stands.`
    : `Reply “${number}:” and your answer. A person reads it.`;
}
