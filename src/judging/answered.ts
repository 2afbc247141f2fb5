import { maySettle, staysOpen } from "../checks/asked.ts";
import type { Problem } from "../trade/problem.ts";
import type { KnownQuestion, QuestionOf } from "../trade/question.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { carriedIn } from "./carried.ts";
import { isRestOf, questionOf } from "./questions.ts";
import { type BuyerState, orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";

/** A question among the problems of an order. */
export interface AskedQuestion {
  readonly problem: Problem;
  readonly key: string;
  /** The number that it was given when it was first asked. */
  readonly number?: number;
}

/** Which of an order's questions were answered, and which stay. */
export interface Questioning {
  /** Whether a problem is a question that was answered: it is meant so. */
  readonly isAnswered: (problem: Problem) => boolean;
  /** Open ones about what an earlier letter did, which what stands does not show. */
  readonly staying: readonly Problem[];
  readonly asked: (problems: readonly Problem[]) => AskedQuestion[];
  /** All that the order was ever asked. */
  readonly known: readonly KnownQuestion[];
}

/**
 * How an order's questions stand after a letter has settled some, or one of our own people has decided some. `sheets`
 * are all that problems point at.
 */
export function questioning(
  number: string,
  state: BuyerState,
  { settles = [], decides = [] }: Pick<Submission, "settles" | "decides">,
  sheets: ReadonlyMap<FileId, Sheet>,
): Questioning {
  const own = orderKey(number);
  const known = state.orders.find((order) => orderKey(order.number) === own)?.questions ?? [];
  const keysOf = (was: KnownQuestion["state"], now: readonly QuestionOf[]): ReadonlySet<string> =>
    new Set([
      ...known
        .filter(({ state: is, problem }) => is === was && carriedIn(problem) === undefined)
        .map(({ key }) => key),
      ...now.filter((one) => orderKey(one.order) === own).map(({ key }) => key),
    ]);
  const settled = keysOf("settled", settles);
  const decided = keysOf("decided", decides);
  const numbers = new Map(known.map((question) => [question.key, question.number]));
  return {
    known,
    staying: known.flatMap(({ state: is, problem }) => (is === "open" && staysOpen(problem) ? problem : [])),
    isAnswered: (problem) => {
      const isSettled = settled.size > 0 && maySettle(problem);
      if (!isSettled && decided.size === 0) return false;
      const { key } = questionOf(problem, sheets);
      return decided.has(key) || (isSettled && settled.has(key));
    },
    asked: (problems) => {
      const all = problems
        .filter(({ severity, verdict }) => severity !== "notes" && verdict !== "pass")
        .map((problem) => ({ problem, key: questionOf(problem, sheets).key }));
      const still = new Set(all.map(({ key }) => key));
      // What is asked of one place alone leaves no rest.
      const gone = known.filter(
        ({ state: is, key, problem: { spots } }) => is === "open" && !still.has(key) && spots.length > 1,
      );
      const ofRest = (problem: Problem): number | undefined => {
        const [whole, ...more] = gone.filter((one) => isRestOf(problem, one.problem, sheets));
        return more.length === 0 ? whole?.number : undefined;
      };
      return all.map(({ problem, key }) => {
        const before = numbers.get(key) ?? ofRest(problem);
        return { problem, key, ...(before === undefined ? {} : { number: before }) };
      });
    },
  };
}
