import type { FileKind } from "./attachment.ts";
import type { Carried } from "./carried.ts";
import type { CutLegend } from "./cut.ts";
import type { Missing } from "./order.ts";
import type { Problem, Verdict } from "./problem.ts";
import type { Question } from "./question.ts";
import type { Released } from "./released.ts";
import type { FileId, Sheet } from "./sheet.ts";

/**
 * Where a letter stands. received → ready → sending → sent | refused | later | unknown. Otherwise it is held for a
 * person, or silent since no answer is due; both have a reason.
 */
export type LetterState =
  | "received"
  | "ready"
  | "sending"
  | "sent"
  | "refused"
  | "later"
  | "unknown"
  | "held"
  | "silent";

/** What an order has come to, and what it lacks. */
export interface OpenOrder {
  readonly number: string;
  readonly buyer: string;
  readonly project?: string;
  readonly verdict: Verdict;
  readonly missing: readonly Missing[];
}

/** That the buyer of an order was reminded; "person": that somebody has to call. */
export interface ReminderRecord {
  /** The note that says so, by its number among letters. */
  readonly letter: number;
  readonly at: Date;
  readonly what: "remind" | "last" | "person";
  /** One of our own people has put it aside. */
  readonly isDealtWith: boolean;
}

/** An order as the record has it. */
export interface OrderRecord extends Omit<OpenOrder, "verdict"> {
  /** Absent when nothing is left of it. */
  readonly verdict?: Verdict;
  readonly openedAt: Date;
  readonly changedAt: Date;
  /** Sheets that stand. Stopped sheets and questioned ones are among them. */
  readonly sheets: readonly Sheet[];
  /** The legends of each of them as they were fitted when it came, by the sheet's id. */
  readonly cut: Readonly<Record<FileId, readonly CutLegend[]>>;
  /** What stands in its way: the reasons for the verdict. */
  readonly problems: readonly Problem[];
  /** The problems that somebody has to confirm, and since when. */
  readonly questions: readonly (Question & { readonly openedAt: Date })[];
  /** What letters left open and no sheet shows. */
  readonly carried: readonly Carried[];
  /** Sheets that letters have withdrawn or our own people have put elsewhere, and which letter or note did. */
  readonly withdrawn: readonly Gone[];
  /** What of it was handed to engraving last. */
  readonly released?: Released;
  /** Counted from 1: how often it was changed. */
  readonly revision: number;
  /** When its buyer was reminded, and when it was found that somebody has to call. */
  readonly reminders: readonly ReminderRecord[];
  /** Its revisions from the first on. */
  readonly revisions: readonly RevisionRecord[];
  /** Letters that changed it, and those that are about it and leave it as it is. */
  readonly letters: readonly LetterRecord[];
  readonly replies: readonly LetterRecord[];
}

/** A sheet that its order has lost. */
export interface Gone {
  readonly sheet: Sheet;
  readonly letter: number;
  /** Its copy at the place where one of our own people has put it. */
  readonly movedTo?: Sheet;
}

/** What an order was after one thing had happened to it. */
export interface RevisionRecord {
  readonly number: number;
  readonly at: Date;
  /** "letter", or who of our own people did it. */
  readonly cause: string;
  readonly letter?: number;
  readonly verdict?: Verdict;
  readonly sheets: readonly { readonly id: FileId; readonly file: string }[];
  /** Numbers of the questions that were opened, and of those that were closed by it. */
  readonly opened: readonly number[];
  readonly closed: readonly number[];
}

/** A letter as the record has it, with what became of it. */
export interface LetterRecord {
  readonly letter: number;
  readonly receivedAt: Date;
  readonly from?: string;
  readonly subject: string;
  readonly state: LetterState;
  readonly verdict?: Verdict;
  readonly why?: string;
  /** Of what it said nothing is left; its problems have no facts. */
  readonly isErased?: true;
  /** It is a note of one of our own people, or of the program itself. */
  readonly isNote?: true;
  readonly answer?: {
    readonly messageId: string;
    readonly sentAt?: Date;
    /** Who was not reached with a copy of it, and why. */
    readonly unreached?: string;
  };
  readonly orders: readonly string[];
  readonly sheets: number;
  readonly problems: readonly Problem[];
  readonly attachments: readonly {
    readonly id: FileId;
    readonly file: string;
    readonly kind: FileKind;
  }[];
}
