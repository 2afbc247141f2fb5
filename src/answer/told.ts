import { wordsOutside } from "../checks/run.ts";
import type { Problem, Verdict } from "../trade/problem.ts";
import type { FileId } from "../trade/sheet.ts";
import { type Files, nameOf } from "./named-files.ts";
import { oneLine } from "./one-line.ts";

/** A problem, and the heading over it if it is about more than one file of this letter. */
export interface Filed {
  readonly problem: Problem;
  readonly under: string;
}

/** Problems that read the same, told once. */
export interface Told {
  readonly kind: Verdict;
  readonly says: string;
  readonly fix: string;
  /** Absent if each of its problems is about one file of this letter. */
  readonly under?: string;
  readonly problems: readonly Problem[];
  readonly files: readonly FileId[];
}

/** Enough for a sentence with a full field in it. A longer text that was typed loses its middle. */
const mostWords = 600;

/** Folds problems that say and ask the same into one. */
export function foldSame(filed: readonly Filed[], files: Files): Told[] {
  const worded = filed.map(({ problem, under }) => {
    const { says, fix } = wordsOutside(problem);
    const ids = filesOf(problem);
    const lone = ids.length === 1 && ids.every((id) => !nameOf(files, id).earlier);
    return {
      problem,
      words: { kind: problem.verdict, says: oneLine(says, mostWords), fix: oneLine(fix, mostWords) },
      ...(lone ? {} : { under }),
    };
  });
  const same = Map.groupBy(worded, ({ words, under }) => JSON.stringify([words, under]));
  return [...same.values()].flatMap(([first, ...more]) => {
    if (first === undefined) return [];
    const problems = [first, ...more].map(({ problem }) => problem);
    const under = first.under === undefined ? {} : { under: first.under };
    return [{ ...first.words, ...under, problems, files: [...new Set(problems.flatMap(filesOf))] }];
  });
}

function filesOf(problem: Problem): FileId[] {
  return [...new Set(problem.spots.map((spot) => spot.file))];
}
