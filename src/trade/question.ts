import type { Problem } from "./problem.ts";

/**
 * Something that somebody must confirm, with an identity that outlives a letter: the same check, wording, places on
 * the wall and facts in the same order are the same question, whichever file brings it up.
 */
export interface Question {
  /** What makes it the same question, within its order. */
  readonly key: string;
  readonly problem: Problem;
  /** The station mark and the position that it is about, where it is about one. */
  readonly station?: string;
  readonly position?: number;
}
