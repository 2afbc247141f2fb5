import type { Problem, Verdict } from "./problem.ts";

/** A letter of some days, as the record stood when they ended. */
export interface AuditedLetter {
  readonly letter: number;
  readonly receivedAt: Date;
  readonly from: string;
  readonly subject: string;
  readonly sheets: number;
  /** Absent while it is not judged. */
  readonly verdict?: Verdict;
  /** When its answer went out first. */
  readonly answeredAt?: Date;
}

/** An order that changed in some days, with its revisions up to their end, oldest first. */
export interface AuditedOrder {
  readonly order: number;
  readonly number: string;
  readonly buyer: string;
  readonly revisions: readonly {
    readonly at: Date;
    /** Absent when nothing is left of the order. */
    readonly verdict?: Verdict;
    /** A letter of its sender made it, not one of our own people. */
    readonly isLetter: boolean;
  }[];
}

/** How a question has ended: its sender said yes, we decided, its sheet was mended, or nobody has answered. */
export const endings = ["yes", "decided", "corrected", "open"] as const;
export type Ending = (typeof endings)[number];

/** What an order was asked or told to mend. It is one slip however many letters repeat it. */
export interface AuditedSlip {
  readonly order: number;
  readonly number: string;
  readonly buyer: string;
  readonly problem: Problem;
  /** The edition of the first sheet that it is about. */
  readonly edition?: string;
  readonly openedAt: Date;
  readonly ending: Ending;
  /** Its order was erased before the days ended: it waits for nobody any more. */
  readonly isErased?: true;
}

/** What the record knows of some days, as it stood when they ended. */
export interface Audited {
  readonly letters: readonly AuditedLetter[];
  readonly orders: readonly AuditedOrder[];
  /** Those that were opened in these days, and those of earlier days that were open when they ended. */
  readonly slips: readonly AuditedSlip[];
  /** Letters that were held, and that nobody had dealt with when the days ended. */
  readonly held: readonly { readonly letter: number; readonly since: Date }[];
}
