import { unzipSync, zipSync } from "fflate";
import type { Feature } from "write-excel-file/universal";
import type { Cell } from "../audit/cells.ts";
import type { Table } from "./table.ts";

/** The earliest time that an archive can hold. */
const noTime = "1980-01-01T00:00:00";

/** The widest column, in characters, and how high the titles are, in points: three lines. */
const widest = 44;
const titleHeight = 40;

/** Tables as an Excel workbook, a sheet each. The same tables always make the same bytes. */
export async function workbookOf(tables: readonly Table[]): Promise<Uint8Array> {
  const sheets = tables.map(({ name, titles, rows }) => ({
    sheet: name,
    orientation: "landscape" as const,
    stickyRowsCount: 1,
    columns: titles.map((title, i) => ({
      width: widthOf(
        title,
        rows.map((row) => row[i] ?? ""),
      ),
    })),
    data: [
      titles.map((title) => ({
        ...cellOf(title),
        fontWeight: "bold" as const,
        wrap: true,
        height: titleHeight,
      })),
      ...rows.map((row) => row.map(cellOf)),
    ],
  }));
  const { default: writeWorkbook } = await import("write-excel-file/universal");
  const written = writeWorkbook(sheets, { fontFamily: "Arial", fontSize: 10, features: [fitToPaper] });
  const bytes = new Uint8Array(await (await written.toBlob()).arrayBuffer());
  // The library puts the time of the clock on every file within.
  return zipSync(unzipSync(bytes), { mtime: noTime });
}

/** ECMA-376 part 1, §18.3.1.63 and §18.3.1.65, from memory: Letter paper (1), as wide as one page and as long as need be. */
const fitToPaper: Feature<Blob> = {
  files: {
    transform: {
      "xl/worksheets/sheet{id}.xml": {
        transformElementAttributes: (tag, attributes) =>
          tag === "pageSetup" ? { ...attributes, paperSize: 1, fitToWidth: 1, fitToHeight: 0 } : attributes,
        transform: (xml) =>
          xml.replace(/<worksheet\b[^>]*>/, '$&<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>'),
      },
    },
  },
};

/** Room for the longest word of the title, and for every cell; capitals are wider than the digits that count. */
function widthOf(title: string, cells: readonly Cell[]): number {
  const texts = [...title.split(" "), ...cells.map(String)];
  return Math.min(widest, Math.ceil(1.2 * Math.max(...texts.map((text) => [...text].length))) + 1);
}

/** A number, or a text of format "@", which stays text when somebody edits it. */
function cellOf(cell: Cell) {
  const look = {
    align: "left",
    alignVertical: "top",
    bottomBorderStyle: "thin",
    bottomBorderColor: "#B0B0B0",
  } as const;
  if (typeof cell === "number") return { ...look, type: Number, value: cell };
  return { ...look, type: String, value: escaped(cell), format: "@" };
}

/**
 * ECMA-376 part 1, §22.9.2.19 (ST_Xstring), from memory: what XML cannot hold is written _xHHHH_. So a text that looks
 * like that has to be escaped itself.
 */
function escaped(text: string): string {
  const held = text
    .replaceAll(/_(?=x[\dA-F]{4}_)/gi, coded)
    // oxlint-disable-next-line no-control-regex
    .replaceAll(/[\0-\x08\x0B-\x1F\uFFFE\uFFFF]|\p{Surrogate}/gu, coded);
  // The library looks texts up in an object, which has some of its own, such as "constructor". Behind such a text stands
  // a character that no XML can hold, which the library takes out of what it writes.
  return held in {} ? `${held}\0` : held;
}

function coded(character: string): string {
  return `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;
}
