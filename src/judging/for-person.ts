import { maySettle } from "../checks/asked.ts";
import type { Problem } from "../trade/problem.ts";
import { everyProblem, type Report } from "./report.ts";

/** Whether a problem needs a person: it says so, or its sender alone cannot settle what it asks. */
export function isForPerson(problem: Pick<Problem, "check" | "verdict">): boolean {
  return problem.verdict === "person" || (problem.verdict === "confirm" && !maySettle(problem));
}

/** Whether something in a letter needs a person. */
export function needsPerson(report: Report): boolean {
  return report.held || everyProblem(report).some(isForPerson);
}
