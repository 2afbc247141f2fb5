import type { ReadFile } from "../trade/attachment.ts";
import type { Announced, Claim } from "../trade/carried.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Came } from "../trade/letter.ts";
import type { Managing } from "../trade/manager.ts";
import type { Note } from "../trade/note.ts";
import type { Move } from "../trade/order.ts";
import type { QuestionOf } from "../trade/question.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
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
  /** Questions that one of our own people has decided: it is meant so, or what stops is let stand. */
  readonly decides?: readonly QuestionOf[];
  /** Who decided that, where it is no note: the manager of the orders. */
  readonly decidedBy?: string;
  /** Who manages which orders. */
  readonly managing?: readonly Managing[];
  /** What one of our own people does, where it is no letter. */
  readonly note?: Note;
  /** Letters of which one of our own people has dealt with all that they said and left open. */
  readonly dealtWith?: readonly string[];
  /** What it answered, by the numbers of questions. NOTHING: of words that a person would have to read. */
  readonly answers?: {
    readonly yes: readonly number[];
    readonly no: readonly number[];
    readonly nothing?: readonly number[];
  };
  /** Earlier sheets that the letter withdraws. */
  readonly withdraws?: readonly FileId[];
  /** Earlier sheets that one of our own people puts elsewhere. */
  readonly moves?: readonly Move[];
  /** Numbers of questions that it answers too late, since their sheets are withdrawn. */
  readonly answersLate?: readonly number[];
  /** Numbers of questions to which it says YES and somebody else, or a newer letter, has said NO. They stay open. */
  readonly answersDenied?: readonly number[];
  /** Numbers of orders that the letter is about although no sheet of them came. */
  readonly about?: readonly string[];
  /** Numbers of orders that were answered for by what it replies to. */
  readonly repliesTo?: readonly string[];
  /** Links in the letter's text that seem to lead to files. */
  readonly links?: readonly string[];
  /** What the letter says beside its sheets. */
  readonly statements?: readonly Statement[];
  /** Where it tells of sheets that may not be here. */
  readonly announced?: Announced;
  /** What it says of the sheets that it brings. */
  readonly claims?: readonly Claim[];
  /** Nothing but the letter's header was read: opening it does harm. */
  readonly unsafe?: boolean;
}
