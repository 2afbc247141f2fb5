import type { Problem } from "./problem.ts";

/**
 * Something that somebody must confirm or mend, with an identity that outlives a letter. It is the same question if
 * order, check, wording, places on the wall and facts are the same, whichever file raises it.
 */
export interface Question {
  /** What makes it the same question, within its order. */
  readonly key: string;
  /** Counted within its order, and the same in every letter about it. */
  readonly number: number;
  readonly problem: Problem;
  /** The station mark and the position, if it is about one station or position. */
  readonly station?: string;
  readonly position?: number;
}

/** A question that an order was asked, as the record has it. */
export interface KnownQuestion extends Pick<Question, "key" | "number" | "problem"> {
  /** The number of the letter whose answer asked it first. */
  readonly letter: number;
  /** Letters that answered it with NO, and who sent them. */
  readonly denied?: readonly { readonly letter: number; readonly by?: string }[];
  readonly state: /** Nobody has answered it. */
    | "open"
    /** Its sender says that it is meant so. */
    | "settled"
    /** One of our own people says so, or lets stand what stops. */
    | "decided"
    /** The sheet that it was about was replaced. */
    | "gone"
    /** All sheets that it was about were withdrawn. */
    | "withdrawn";
}

/** A question of one order, by the order's number and the question's key. */
export interface QuestionOf {
  readonly order: string;
  readonly key: string;
}
