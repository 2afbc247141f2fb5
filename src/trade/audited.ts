import type { Problem, Verdict } from "./problem.ts";

/** A letter of some days, as the record stood when they ended. */
export interface AuditedLetter {
  readonly letter: number;
  readonly receivedAt: Date;
  readonly from: string;
  readonly subject: string;
  readonly sheets: number;
  /** It was taken and answered, held for a person, or filed in silence. Absent while it is not judged. */
  readonly became?: "answered" | "held" | "silent";
  /** What its answer says. */
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
    /** The checks that stand in its way. */
    readonly checks: readonly string[];
    /** A letter made it, not one of our own people. */
    readonly isLetter: boolean;
  }[];
}

/** A letter of some days and an order that it is about, whether or not it changed it. */
export interface AuditedPair {
  /** A letter that was let in goes by its own number, not by that of its copy. */
  readonly letter: number;
  readonly order: number;
  readonly number: string;
  readonly buyer: string;
  /** What it left the order as: its revision, counted from 1. Absent if it did not change it. */
  readonly revision?: number;
  readonly verdict?: Verdict;
}

/**
 * How a question has ended: its sender said yes, we settled or waived it, its sheet was mended, its sheet was withdrawn,
 * or nobody has answered.
 */
export const endings = ["yes", "decided", "corrected", "withdrawn", "open"] as const;
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
  readonly pairs: readonly AuditedPair[];
  /** Those that were opened in these days, and those of earlier days that were open when they ended. */
  readonly slips: readonly AuditedSlip[];
  /** Words of letters, about an order or about none, that nobody had read when the days ended. */
  readonly unread: readonly { readonly letter: number; readonly number?: string; readonly since: Date }[];
  /** Letters that were held, and that nobody had dealt with when the days ended. */
  readonly held: readonly { readonly letter: number; readonly since: Date }[];
}
