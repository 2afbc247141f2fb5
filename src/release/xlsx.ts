import { unzipSync, zipSync } from "fflate";
import writeWorkbook from "write-excel-file/universal";
import type { Cell, Table } from "./table.ts";

/** The earliest time that an archive can hold. */
const noTime = "1980-01-01T00:00:00";

/** Tables as an Excel workbook, a sheet each. The same tables always make the same bytes. */
export async function workbookOf(tables: readonly Table[]): Promise<Uint8Array> {
  const sheets = tables.map(({ name, columns, rows }) => ({
    sheet: name,
    orientation: "landscape" as const,
    stickyRowsCount: 1,
    columns: columns.map(({ width }) => ({ width })),
    data: [
      columns.map(({ title }) => ({ ...cellOf(title), fontWeight: "bold" as const })),
      ...rows.map((row) => row.map(cellOf)),
    ],
  }));
  const bytes = new Uint8Array(await (await writeWorkbook(sheets).toBlob()).arrayBuffer());
  // The library puts the time of the clock on every file within.
  return zipSync(unzipSync(bytes), { mtime: noTime });
}

/** A number, or a text of format "@", which stays text when somebody edits it. */
function cellOf(cell: Cell) {
  if (typeof cell === "number") return { type: Number, value: cell };
  return { type: String, value: escaped(cell), format: "@" };
}

/**
 * ECMA-376 part 1, §22.9.2.19 (ST_Xstring), from memory: what XML cannot hold is written _xHHHH_. So a text that looks
 * like that has to be escaped itself.
 */
function escaped(text: string): string {
  return text.replaceAll(/_(?=x[\dA-F]{4}_)/gi, "_x005F_").replaceAll(
    // oxlint-disable-next-line no-control-regex
    /[\0-\x08\x0B-\x1F\uFFFE\uFFFF]|\p{Surrogate}/gu,
    (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`,
  );
}
