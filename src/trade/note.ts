import type { FileId } from "./sheet.ts";

/** What one of our own people does about one point of an order. The point has the number that answers gave it. */
export type Act =
  /** It is meant as it stands. A question is settled by this. */
  | { readonly kind: "yes"; readonly number: number }
  /** It is not meant so: a corrected sheet has to come. */
  | { readonly kind: "no"; readonly number: number }
  /** What stops the order is let stand. */
  | { readonly kind: "waive"; readonly number: number }
  /** Words for the sender about it; it stays open. */
  | { readonly kind: "say"; readonly number: number; readonly words: string }
  /** Words for the sender about the order as a whole. */
  | { readonly kind: "write"; readonly words: string }
  /** What a letter said or left open beside its sheets is dealt with. */
  | { readonly kind: "read"; readonly letter: number }
  /** A sheet belongs elsewhere: at this station, at this position of its plate, in this order of the same buyer. */
  | {
      readonly kind: "place";
      readonly sheet: FileId;
      readonly mark?: string;
      readonly position?: number;
      readonly order?: string;
    }
  /** The order goes to engraving, on a day where the desk stands. */
  | { readonly kind: "release"; readonly on: string }
  /** Its buyer is reminded, or somebody has to call since reminders came to nothing. */
  | {
      readonly kind: "remind";
      readonly what: "remind" | "last" | "person";
      /** When the order changed last, as ISO 8601 in UTC. If it has changed since, nobody is reminded. */
      readonly since: string;
      /** When the last reminder comes, as "2026-11-09". */
      readonly lastOn?: string;
    }
  /** A manager is told of a week. It is about no order. */
  | {
      readonly kind: "summary";
      /** Whose, and of which orders, as one text. */
      readonly of: string;
      /** The week, as ISO 8601 in UTC. */
      readonly from: string;
      readonly until: string;
    }
  /** Somebody is told of some days. It is about no order. */
  | {
      readonly kind: "day";
      /** Whom, by address. */
      readonly to: string;
      /** The days, as "2026-11-09", both inclusive. */
      readonly first: string;
      readonly last: string;
    }
  /** What was released of some stations is engraved; all, if none is named. */
  | {
      readonly kind: "cut";
      readonly stations: readonly string[];
      /** Only these pieces of them, by their keys (`pieceKey`). */
      readonly pieces?: readonly string[];
      /** The day where the desk stands, as "2026-11-09", if it is known. */
      readonly on?: string;
    };

/** An act on one point of an answer. */
export type PointAct = Extract<Act, { readonly number: number }>;

/**
 * What one of our own people puts into the record about one order. It goes the way of a letter: it is judged in its
 * turn, stored whole or not at all, and answered once.
 */
export interface Note {
  /** Makes two notes of the same words two. */
  readonly id: string;
  /** Whose order it is, and its number as first typed. */
  readonly buyer: string;
  readonly order: string;
  /** Who does it, and the reason. */
  readonly by: string;
  readonly why: string;
  readonly acts: readonly Act[];
  /** It is its buyer's own answer to questions, given on the page that our letter leads to. */
  readonly isSenders?: true;
  /** The number of the letter whose answer led there. */
  readonly repliesTo?: number;
}
