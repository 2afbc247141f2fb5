import { numberKey } from "../orders/keys.ts";
import { isNoNumber } from "../orders/no-number.ts";
import type { Carried } from "../trade/carried.ts";
import type { Arrivals } from "../trade/letter.ts";
import type { KnownQuestion } from "../trade/question.ts";
import type { Released } from "../trade/released.ts";
import type { Sheet } from "../trade/sheet.ts";

/** A sheet that an order has lost, and the number of the letter or the note by which it has. */
export interface GoneBefore {
  readonly sheet: Sheet;
  readonly letter: number;
  /** A note has put it elsewhere. */
  readonly isMoved?: true;
}

/** An order as it stands before a letter is judged. */
export interface OrderState {
  /** As first typed; "" for what the buyer has sent without a number. */
  readonly number: string;
  /** Sheets that stand. Stopped sheets and questioned ones are among them. */
  readonly sheets: readonly Sheet[];
  /** What earlier letters left open. */
  readonly carried: readonly Carried[];
  /** Sheets that letters have withdrawn from it, or notes have put elsewhere, and the numbers of those. */
  readonly withdrawn?: readonly GoneBefore[];
  /** All that it was ever asked. */
  readonly questions: readonly KnownQuestion[];
  /** How often it was changed. */
  readonly revision?: number;
  /** What of it was handed to engraving last. */
  readonly released?: Released;
}

/** What the record holds of one buyer and the judging of his letters depends on. */
export interface BuyerState {
  readonly buyer: string;
  /** Grows with each change. A report holds only for the version that it was made from. */
  readonly version: number;
  /** The orders that the letter names, and the latest others to compare with. */
  readonly orders: readonly OrderState[];
  /** When the letters came that brought their sheets, or withdrew some. */
  readonly arrivals: Arrivals;
}

/** A buyer of whom nothing is known. */
export function newBuyer(buyer = ""): BuyerState {
  return { buyer, version: 0, orders: [], arrivals: new Map() };
}

/** The key of an order: its number as a person compares it; "" for none and for a placeholder. */
export function orderKey(number: string): string {
  return isNoNumber(number) ? "" : numberKey(number);
}
