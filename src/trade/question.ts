import type { Problem } from "./problem.ts";

/**
 * Something that somebody must confirm, with an identity that outlives a letter: the same check, wording, places on
 * the wall and facts in the same order are the same question, whichever file brings it up.
 */
export interface Question {
  /** What makes it the same question, within its order. */
  readonly key: string;
  /** Counted within its order, and the same in every letter about it. */
  readonly number: number;
  readonly problem: Problem;
  /** The station mark and the position that it is about, where it is about one. */
  readonly station?: string;
  readonly position?: number;
}

/** A question that an order was asked, as the record has it. */
export interface KnownQuestion extends Pick<Question, "key" | "number" | "problem"> {
  /** The number of the letter whose answer asked it first. */
  readonly letter: number;
  readonly state: /** Nobody has answered it. */
    | "open"
    /** It is meant so. */
    | "settled"
    /** Another sheet took the place of what it was about. */
    | "gone";
}

/** A question of one order, by the order's number and the question's key. */
export interface QuestionOf {
  readonly order: string;
  readonly key: string;
}
