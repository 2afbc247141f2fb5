import type { FileId } from "./sheet.ts";

/** What of an order was handed to engraving last, and how far that has come. */
export interface Released {
  /** The revision that was released, counted from 1. */
  readonly revision: number;
  /** The moment as ISO 8601 in UTC, and the day where the desk stands, as "2026-11-09". */
  readonly at: string;
  readonly on: string;
  readonly by: string;
  readonly pieces: readonly Piece[];
}

/** What is made of one sheet that was released. */
export interface Piece {
  readonly sheet: FileId;
  /** The same for every sheet that orders the same piece (`pieceKey`). */
  readonly key: string;
  readonly engraved: boolean;
}
