import type { Catalogue } from "../catalogue/catalogue.ts";
import { roomOn } from "../catalogue/faces.ts";
import { charactersOf } from "../lettering/glyph.ts";
import type { Sheet } from "../trade/sheet.ts";
import { judgedWords } from "./judged.ts";
import { type TypedRow, typedRows } from "./limits.ts";

/**
 * Rows that are full with one blank at their end: the form may have dropped the words behind it. Not where the legend
 * goes on below, where its last word or its other blanks are asked about anyway, or where the row is kept as it stands.
 */
export function rowsCutAtBlank(sheet: Sheet, catalogue: Catalogue): TypedRow[] {
  const rows = typedRows(sheet);
  const plain = new Set(sheet.legends.flatMap((legend) => (legend.plain ? legend.face : [])));
  const full = rows.filter(
    ({ face, text, row }) =>
      /^\S+(?: \S+)* $/.test(text) &&
      charactersOf(text).length === roomOn(sheet, face, catalogue).characters &&
      !plain.has(face) &&
      !rows.some((other) => other.face === face && other.row > row && other.text.trim() !== "") &&
      !catalogue.words.isConfirmed(text, sheet.project ?? ""),
  );
  // Most sheets have none, and need not be judged for it.
  if (full.length === 0) return [];
  const asked = (["misspelt", "slipped", "mistaken"] as const).flatMap((kind) =>
    judgedWords(sheet, catalogue, kind),
  );
  return full.filter(({ place }) => !asked.some((word) => word.place === place));
}
