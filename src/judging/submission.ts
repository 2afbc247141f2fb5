import type { ReadFile } from "../trade/attachment.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Came } from "../trade/letter.ts";
import type { QuestionOf } from "../trade/question.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Statement } from "../trade/statement.ts";

/** What came in together: one letter, or the files named on the command line. */
export interface Submission {
  readonly files: readonly ReadFile[];
  readonly sheets: readonly Sheet[];
  /** The number of the letter, as it stands in the ids of its files, and when it came. */
  readonly letter?: { readonly number: string; readonly came: Came };
  /** Something outside the sheets says that a person must look first. */
  readonly held?: boolean;
  /** The letter replies to an answer of ours. */
  readonly reply?: boolean;
  /** Words that we asked about and the letter says are right. */
  readonly kept?: readonly KeptWord[];
  /** Questions that the letter answers: it is meant so. */
  readonly settles?: readonly QuestionOf[];
  /** What it answered, by the numbers of questions. */
  readonly answers?: { readonly yes: readonly number[]; readonly no: readonly number[] };
  /** Numbers of orders that the letter is about although no sheet of them came. */
  readonly about?: readonly string[];
  /** Links in the letter's text that seem to lead to files. */
  readonly links?: readonly string[];
  /** What the letter says beside its sheets. */
  readonly statements?: readonly Statement[];
  /** Nothing but the letter's header was read: opening it does harm. */
  readonly unsafe?: boolean;
}
