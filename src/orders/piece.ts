import { createHash } from "node:crypto";
import type { Released } from "../trade/released.ts";
import type { Sheet } from "../trade/sheet.ts";
import { contentKey, plainText } from "./keys.ts";

/** Whether sheets order just what was released. */
export function isAsReleased(sheets: readonly Sheet[], { pieces }: Released): boolean {
  return new Set(pieces.map(({ key }) => key)).symmetricDifference(new Set(sheets.map(pieceKey))).size === 0;
}

/** What is made of a sheet and where it goes, as one short text. Sheets of the same text order the same piece. */
export function pieceKey(sheet: Sheet): string {
  const { kind, mark = "", gangs, finish, lettering, legends } = sheet;
  const own =
    sheet.kind === "device"
      ? { standing: sheet.standing, position: sheet.position, layouts: sheet.layouts, at: sheet.legendPlace }
      : {};
  const said = legends.filter(({ plain, rows }) => plain || rows.some((row) => row.trim() !== ""));
  const piece = contentKey({ kind, mark: plainText(mark), gangs, finish, lettering, legends: said, ...own });
  return createHash("sha256").update(piece).digest("hex").slice(0, 24);
}
