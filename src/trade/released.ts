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
  /** The release that this one takes the place of, as it stood then. */
  readonly before?: Pick<Released, "revision" | "on" | "pieces">;
}

/** What is made of one sheet that was released. */
export interface Piece {
  readonly sheet: FileId;
  /** The same for every sheet that orders the same piece (`pieceKey`). */
  readonly key: string;
  /** The mark of its station, where the sheet has one. */
  readonly mark?: string;
  readonly engraved: boolean;
  /** The day, as "2026-11-09", if somebody has said it. */
  readonly engravedOn?: string;
}
