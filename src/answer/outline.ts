import type { Verdict } from "../trade/problem.ts";
import type { AnswerLetter } from "./answer-letter.ts";

/** Headings that every answer shares. */
export const headings = {
  sheets: "Sheets",
  proofs: "Please read once more: this is what will be cut",
  howToOrder: "How to order",
  next: "What happens next",
  changed: "What has changed",
} as const;

/**
 * All that an answer says, in reading order, as finished words. The text and the HTML are two renderings
 * of this one value, so that they cannot say different things.
 */
export interface Outline {
  readonly verdict: Verdict;
  /** The verdict in capitals: "FAIL". */
  readonly word: string;
  /** The rest of the first line: "3 to fix, 1 question before order BW-2207 can be engraved." */
  readonly headline: string;
  readonly subject: string;
  /** What the reader has to do first, in one line below that. */
  readonly todo?: string;
  /** What has become of each order, if a letter has several. */
  readonly lead: readonly string[];
  /** Sheets that the letter has withdrawn, or one of our own people has put elsewhere, and how to undo it. */
  readonly withdrawn: readonly Withdrawal[];
  readonly chapters: readonly Chapter[];
  /** For a letter without any sheet: how to order. */
  readonly howToOrder: readonly string[];
  /** The page on which questions can be answered. The step that names it ends with it. */
  readonly link?: string;
  readonly next: readonly string[];
  /** What will be cut, of each order that passes. */
  readonly proofs: readonly ProofsOfOrder[];
  readonly cautions: readonly string[];
  readonly signature: readonly string[];
}

/** What a letter has withdrawn from one order, or one of our own people has put elsewhere. */
export interface Withdrawal {
  readonly says: string;
  /** One line a sheet. */
  readonly sheets: readonly string[];
  readonly undo: string;
}

/** What concerns one order. If a letter brought several, one chapter is about the letter around them. */
export interface Chapter {
  readonly verdict: Verdict;
  /** "Order BW-2207, Larkspur Library". A letter without an order has none. */
  readonly title?: string;
  /** What has become of this chapter, if a letter has several. */
  readonly status?: string;
  /** "2 sheets came with this letter, 3 came earlier." */
  readonly received?: string;
  /** What has changed since our last letter about it. */
  readonly changed?: readonly string[];
  readonly sections: readonly Section[];
  readonly rows: readonly Row[];
  /** How many sheets are right and have no row of their own. */
  readonly alsoRight?: string;
}

/** What will be cut of one order. */
export interface ProofsOfOrder {
  /** The title of its chapter, if a letter has several. */
  readonly title?: string;
  readonly sheets: readonly Proof[];
  /** What is not shown of the order. */
  readonly rest?: string;
}

/** Problems that ask the same of the reader. */
export interface Section {
  readonly kind: Verdict;
  readonly title: string;
  readonly groups: readonly Group[];
}

/** Problems of one file, of the same few files, or of the order as a whole. */
export interface Group {
  readonly heading: string;
  readonly hint?: string;
  readonly items: readonly Item[];
}

export interface Item {
  /** Counted through the whole answer, so that a reply can say "4 YES". A question keeps it in every later answer. */
  readonly number: number;
  readonly says: string;
  readonly fix: string;
  /** What to reply to a question. */
  readonly reply?: string;
  /** The same answer as a letter of its own. */
  readonly letter?: AnswerLetter;
  /** The label of the field, or the files, if neither the words nor the heading name them. */
  readonly where?: string;
  /** What was seen on the page. */
  readonly pictures?: readonly ItemPicture[];
}

/** A picture that goes with an answer. */
export interface ItemPicture {
  /** As problems call it. */
  readonly name: string;
  readonly file: string;
}

/** One sheet, received or still missing. */
export interface Row {
  /** What its problems make of it; `waiting` if it is missing. */
  readonly kind: Verdict;
  /** "Fix: 1, 3", "OK", "Missing". */
  readonly state: string;
  /** "Device, S-104 position 2 of 4". */
  readonly what: string;
  readonly file: string;
}

/** The legends of one sheet as they will be cut, for proof-reading. */
export interface Proof {
  readonly heading: string;
  readonly hint: string;
  /** The names of the columns, then one line a face: its name and its rows. */
  readonly faces: readonly (readonly string[])[];
}

/** How questions can be answered other than by a reply: by the answer's reference, and on a page. */
export interface Ways {
  readonly reference: string;
  readonly link?: string;
}
