import type { Report } from "../report/report.ts";
import type { Letter } from "../trade/letter.ts";
import type { LetterRecord, LetterState, OpenOrder, OrderRecord } from "../trade/record.ts";
import type { Sheet } from "../trade/sheet.ts";

export interface Received {
  readonly letter: number;
  readonly state: LetterState;
  /** The same letter, by its content, was in the record already. */
  readonly again: boolean;
}

export interface StoredAnswer {
  readonly letter: number;
  readonly messageId: string;
  readonly recipient: string;
  readonly bytes: Uint8Array;
}

/** Everything that reading and checking a letter has led to; stored in one piece or not at all. */
export interface Outcome {
  readonly letter: Letter;
  readonly report: Report;
  /** Whom the letter's orders belong to. */
  readonly buyer: string;
  /** Absent when nothing is to be sent; `why` then says the reason. */
  readonly answer?: Omit<StoredAnswer, "letter"> & { readonly subject: string };
  readonly why?: string;
}

export interface Store {
  /** Keeps the bytes and opens a row under the content key, unless that letter is there already. */
  readonly receive: (key: string, bytes: Uint8Array, receivedAt: Date) => Promise<Received>;
  readonly settle: (letter: number, outcome: Outcome, now: Date) => Promise<void>;
  /** A letter that cannot be answered by the program: kept for a person. */
  readonly hold: (letter: number, why: string, now: Date) => Promise<void>;
  readonly answer: (letter: number) => Promise<StoredAnswer | undefined>;
  /** Whether one of these Message-IDs is that of an answer of ours. */
  readonly isAnswer: (messageIds: readonly string[]) => Promise<boolean>;
  readonly mark: (letter: number, state: LetterState, words: string, now: Date) => Promise<void>;
  /** Letters in a state, oldest first. */
  readonly inState: (...states: LetterState[]) => Promise<readonly number[]>;
  readonly bytesOf: (letter: number) => Promise<Uint8Array>;
  /** Sheets of this buyer that count: those of the orders named, and of the latest others to compare with. */
  readonly countingSheets: (buyer: string, numbers: readonly string[]) => Promise<readonly Sheet[]>;
  /** Whether somebody else had an order of this number before this buyer did. */
  readonly belongsToAnother: (number: string, buyer: string) => Promise<boolean>;
  readonly orders: (number: string) => Promise<readonly OrderRecord[]>;
  /** Orders that had not passed when that moment came, as they stood then. */
  readonly openOrdersAt: (moment: Date) => Promise<readonly OpenOrder[]>;
  /** Throws when there is no such letter. */
  readonly letter: (letter: number) => Promise<LetterRecord>;
  /** Letters received from `from` on and before `to`, oldest first. */
  readonly lettersBetween: (from: Date, to: Date) => Promise<readonly LetterRecord[]>;
  readonly close: () => Promise<void>;
}
