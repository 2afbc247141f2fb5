import type { Catalogue } from "../catalogue/catalogue.ts";
import { roomOn } from "../catalogue/faces.ts";
import type { FaceName } from "../trade/legend.ts";
import type { Place } from "../trade/place.ts";
import type { Sheet } from "../trade/sheet.ts";
import { labelOf } from "./check.ts";

/** One engraved row as typed: its place, and the same words a person would use for it. */
export interface TypedRow {
  readonly place: Place;
  readonly face: FaceName;
  /** Counted from 1. */
  readonly row: number;
  readonly text: string;
}

/** Every row of the sheet that has something typed in it, blanks included. */
export function typedRows(sheet: Sheet): TypedRow[] {
  return sheet.legends.flatMap(({ face, rows }) =>
    rows.flatMap((text, i) =>
      text === "" ? [] : [{ place: `row.${face}.${i + 1}` as const, face, row: i + 1, text }],
    ),
  );
}

/** Rows with more characters than can be cut, with how many they have and how many can be. */
export function tooLongRows(
  sheet: Sheet,
  catalogue: Catalogue,
): (TypedRow & { readonly length: number; readonly limit: number })[] {
  return typedRows(sheet).flatMap((typed) => {
    const { characters: limit } = roomOn(sheet, typed.face, catalogue);
    // A letter and its accent typed as two code points are one character to cut.
    const length = [...typed.text.normalize("NFC")].length;
    return length > limit ? [{ ...typed, length, limit }] : [];
  });
}

/** "button 3", "gang 2", "the plate legend". */
export function faceWords(sheet: Sheet, face: FaceName): string {
  if (face === "plate") return "the plate legend";
  return sheet.kind === "plate" ? `gang ${face}` : `button ${face}`;
}

/** The places of the rows that a face of this sheet can have. */
export function rowPlaces(sheet: Sheet, face: FaceName, catalogue: Catalogue): Place[] {
  const { rows } = roomOn(sheet, face, catalogue);
  return Array.from({ length: rows }, (_, i): Place => `row.${face}.${i + 1}`);
}

/** The label of a face's "leave plain" mark in quotation marks; undefined if the form has none. */
export function plainMark(sheet: Sheet, face: FaceName): string | undefined {
  const place = `plain.${face}` as const;
  return sheet.prints[place] === undefined ? undefined : `“${labelOf(sheet, place)}”`;
}
