import type { Question } from "./question.ts";

/** Something of an order that had to be confirmed, and who said that it is meant so. */
export interface Confirmation extends Pick<Question, "number" | "problem" | "station" | "position"> {
  readonly by: string;
  readonly at: Date;
  /** The number of the letter that says so, if it was a letter. */
  readonly letter?: number;
  /** The reason that was given, if one was. */
  readonly why?: string;
}
