import { maySettle } from "../checks/asked.ts";
import type { Problem } from "../trade/problem.ts";

/** What its sender replies to a question where it is meant as it stands. */
export const yesOf = (number: number): string => `${number} YES`;

/** How a question is answered in a reply. What its sender alone cannot settle is for a person to read. */
export function replyLine(number: number, problems: readonly Problem[]): string {
  return problems.every(maySettle)
    ? `Or reply “${yesOf(number)}” if it is meant as it stands.`
    : `Reply “${number}:” and your answer. A person reads it.`;
}
