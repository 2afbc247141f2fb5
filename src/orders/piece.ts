import { createHash } from "node:crypto";
import type { Released } from "../trade/released.ts";
import type { Sheet } from "../trade/sheet.ts";
import { contentKey, plainText } from "./keys.ts";

/** Whether sheets order just what was released. */
export function isAsReleased(sheets: readonly Sheet[], { pieces }: Released): boolean {
  return new Set(pieces.map(({ key }) => key)).symmetricDifference(new Set(sheets.map(pieceKey))).size === 0;
}

/** Whether a sheet orders one of the pieces that were released, whichever sheet it was that they were released by. */
export function isReleasedPiece(sheet: Sheet, { pieces }: Released): boolean {
  const own = pieceKey(sheet);
  return pieces.some(({ key }) => key === own);
}

const pieces = new WeakMap<Sheet, string>();

/** What is made of a sheet and where it goes, as one short text. Sheets of the same text order the same piece. */
export function pieceKey(sheet: Sheet): string {
  const key = pieces.get(sheet) ?? newPieceKey(sheet);
  pieces.set(sheet, key);
  return key;
}

function newPieceKey(sheet: Sheet): string {
  const { kind, mark = "", gangs, finish, lettering, legends, shipTo, shipSame } = sheet;
  const own =
    sheet.kind === "device"
      ? { standing: sheet.standing, position: sheet.position, layouts: sheet.layouts, at: sheet.legendPlace }
      : {};
  const said = legends
    .map(({ face, plain, rows }) => ({ face, plain, rows: withoutEnd(rows) }))
    .filter(({ plain, rows }) => plain || rows.length > 0);
  const piece = contentKey({
    kind,
    mark: plainText(mark),
    gangs,
    finish,
    lettering,
    legends: said,
    ships: shipSame ? "to bill-to" : shipTo,
    ...own,
  });
  return createHash("sha256").update(piece).digest("hex").slice(0, 24);
}

/** Rows without the empty ones behind them; forms print more or fewer of them. */
function withoutEnd(rows: readonly string[]): readonly string[] {
  return rows.slice(0, rows.findLastIndex((row) => row.trim() !== "") + 1);
}
