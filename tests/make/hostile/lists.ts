import { rawBomb } from "./deflate.ts";
import { rawZip, zipped } from "./raw-zip.ts";

const GB = 2 ** 30;
const relations = (...all: readonly (readonly [type: string, target: string])[]): string =>
  `<Relationships>${all.map(([type, target], i) => `<Relationship Id="r${i + 1}" Type="x/${type}" Target="${target}"/>`).join("")}</Relationships>`;
const title = '<row r="1"><c r="A1" t="inlineStr"><is><t>Station list</t></is></c></row>';
const cell = '<c t="inlineStr"><is><t>x</t></is></c>';

/** A workbook with these sheets, of which the first has the title of a list. */
function book(...sheets: readonly string[]): Buffer {
  return rawZip([
    ...parts(sheets.length),
    ...sheets.map((xml, i) => zipped(`xl/s${i + 1}.xml`, Buffer.from(xml))),
  ]);
}

function parts(count: number) {
  const all = Array.from({ length: count }, (_, i) => i + 1);
  return [
    zipped("[Content_Types].xml", Buffer.from("<Types/>")),
    zipped(
      "xl/workbook.xml",
      Buffer.from(
        `<workbook><sheets>${all.map((i) => `<sheet name="s${i}" r:id="r${i}"/>`).join("")}</sheets></workbook>`,
      ),
    ),
    zipped(
      "xl/_rels/workbook.xml.rels",
      Buffer.from(relations(...all.map((i) => ["worksheet", `s${i}.xml`] as const))),
    ),
  ];
}

const sheetOf = (rows: string, before = ""): string =>
  `<worksheet>${before}<sheetData>${title}${rows}</sheetData></worksheet>`;

/** Station lists that are not what they say. */
export const hostileLists: Readonly<Record<string, () => Uint8Array>> = {
  "list whose sheet unpacks to 1 GB": () =>
    rawZip([...parts(1), { name: "xl/s1.xml", packed: rawBomb(GB, " "), size: GB }]),
  "list of ninety thousand rows": () => book(sheetOf(`<row>${cell}</row>`.repeat(90_000))),
  "list of one row of a hundred thousand cells": () => book(sheetOf(`<row>${cell.repeat(100_000)}</row>`)),
  "list with a hundred thousand hidden columns": () =>
    book(
      sheetOf(
        `<row>${cell}</row>`.repeat(1_000),
        `<cols>${'<col min="1" max="16384" hidden="1"/>'.repeat(100_000)}</cols>`,
      ),
    ),
  "list with a hundred thousand merged cells": () =>
    book(sheetOf("").replace("</worksheet>", `${'<mergeCell ref="A1:B2"/>'.repeat(100_000)}</worksheet>`)),
  "list of a hundred sheets of 4 MB": () =>
    book(...Array.from({ length: 100 }, () => sheetOf(`<row>${cell}</row>`.repeat(80_000)))),
  "list with tags a hundred thousand deep": () => book(`<worksheet>${"<a>".repeat(100_000)}`),
  "list with entities that grow": () =>
    book(
      `<!DOCTYPE a [<!ENTITY a "${"a".repeat(1_000)}"><!ENTITY b "${"&a;".repeat(1_000)}">]>${sheetOf("<row>&b;</row>")}`,
    ),
  "text of a list of 20 MB of separators": () => Buffer.from(`Station list\n${",".repeat(20_000_000)}`),
  "text of a list that opens a quotation and never ends it": () =>
    Buffer.from(`Station list,"${"\n".repeat(900_000)}`),
};
