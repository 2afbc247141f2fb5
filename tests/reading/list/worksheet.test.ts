import { expect, test } from "vitest";
import { readWorksheet } from "../../../src/reading/list/workbook/worksheet.ts";

const plain = { format: "General", struck: false, unseen: false };
const shared = {
  texts: [
    { text: "FIRST", struck: false },
    { text: "OFF", struck: true },
  ],
  looks: [plain, { ...plain, format: "0" }, { ...plain, format: "@" }, { ...plain, format: "d-mmm" }],
};
const text = (letters: string, words = "X"): string =>
  `<c r="${letters}" t="inlineStr"><is><t>${words}</t></is></c>`;
const read = (rows: string, around = { before: "", behind: "" }) =>
  readWorksheet(
    `<worksheet>${around.before}<sheetData>${rows}</sheetData>${around.behind}</worksheet>`,
    "S",
    shared,
  );
const cells = (rows: string) => read(rows).table.rows.flat();
const hidden = (before: string, rows: string) =>
  read(rows, { before, behind: "" }).more.map(({ what, where }) => `${what} ${where}`);

test("rows and cells without an address stand behind the one before", () => {
  const rows = `<row><c><v>1</v></c><c><v>2</v></c></row><row r="7">${text("C7")}<c><v>3</v></c></row><row><c><v>4</v></c></row>`;
  expect(cells(rows).map(({ column, row, text: held }) => `${column} ${row} ${held}`)).toEqual([
    "0 1 1",
    "1 1 2",
    "2 7 X",
    "3 7 3",
    "0 8 4",
  ]);
});

test("the letters of an address count as spreadsheets count them", () => {
  const addresses = ["A1", "Z1", "AA1", "az1", "BA1", "ZZ1"];
  expect(
    cells(`<row r="1">${addresses.map((at) => text(at)).join("")}</row>`).map(({ column }) => column),
  ).toEqual([0, 25, 26, 51, 52, 701]);
});

test.each([
  ["&amp;LPage &amp;P of &amp;N&amp;R&amp;D", []],
  ['&amp;C&amp;"Arial,Bold"&amp;12&amp;KFF0000Hold A-2', ["Hold A-2"]],
  ["&amp;A", []],
])("over its pages stands %s", (header, words) => {
  const behind = `<headerFooter><oddHeader>${header}</oddHeader></headerFooter>`;
  expect(read("", { before: "", behind }).more.map(({ what, text: told }) => [what, told])).toEqual(
    words.map((one) => ["header", one]),
  );
});

test("the cells of a row are kept together, and an empty one is none", () => {
  const { table } = read(
    `<row r="2">${text("A2")}${text("B2", " ")}<c r="C2"/>${text("D2")}</row><row r="4"/><row r="5">${text("A5")}</row>`,
  );
  expect(table.rows.map((row) => row.map(({ column }) => column))).toEqual([[0, 3], [0]]);
});

test.each([
  ['<c r="A1" t="s"><v>0</v></c>', { text: "FIRST" }],
  ['<c r="A1" t="s"><v>1</v></c>', { text: "OFF", odd: "struck" }],
  ['<c r="A1" t="s" s="3"><v>0</v></c>', { text: "FIRST" }],
  ['<c r="A1" t="s"><f>B1</f><v>9</v></c>', { text: "", odd: "formula" }],
  ['<c r="A1" t="str"><v>a_x0041_</v></c>', { text: "aA" }],
  ['<c r="A1" t="str"><v>007</v></c>', { text: "007" }],
  ['<c r="A1" t="inlineStr"><is><t>1.50</t></is></c>', { text: "1.50" }],
  ['<c r="A1" t="b"><v>0</v></c>', { text: "FALSE", odd: "shown-otherwise" }],
  ['<c r="A1"><v>1.50</v></c>', { text: "1.5" }],
  ['<c r="A1"><v>-4</v></c>', { text: "-4" }],
  ['<c r="A1"><v>1</v></c>', { text: "1" }],
  ['<c r="A1" s="9"><v>4</v></c>', { text: "4" }],
  ['<c r="A1"><v>12345678901</v></c>', { text: "12345678901" }],
  ['<c r="A1"><v>123456789012</v></c>', { text: "123456789012", odd: "shown-otherwise" }],
  ['<c r="A1"><v>1E-9</v></c>', { text: "1E-9", odd: "shown-otherwise" }],
  ['<c r="A1" s="1"><v>12</v></c>', { text: "12" }],
  ['<c r="A1" s="1"><v>-12</v></c>', { text: "-12" }],
  ['<c r="A1" s="1"><v>1.5</v></c>', { text: "1.5", odd: "shown-otherwise" }],
  ['<c r="A1" s="2"><v>1.5</v></c>', { text: "1.5" }],
  ['<c r="A1" s="3"><v>46085</v></c>', { text: "46085", odd: "shown-otherwise" }],
  ['<c r="A1"><f>B1</f></c>', { text: "", odd: "formula" }],
  ['<c r="A1"><f>B1</f><v> </v></c>', { text: " ", odd: "formula" }],
  ['<c r="A1"><note>so</note><v>7</v></c>', { text: "7" }],
] as const)("%s is read as it shows, or told", (cell, expected) => {
  expect(cells(`<row r="1">${cell}</row>`)).toEqual([{ column: 0, row: 1, ...expected }]);
});

test.each([
  ["@", undefined],
  ["General;General;General", undefined],
  ["0;0;0;@", "shown-otherwise"],
  [";;;", "shown-otherwise"],
  ['"No. "@', "shown-otherwise"],
  ["General;@;General", undefined],
])("a text in the format %s is odd as %s", (format, odd) => {
  const { table } = readWorksheet(`<x><row r="1">${text("A1").replace("<c", '<c s="0"')}</row></x>`, "S", {
    texts: [],
    looks: [{ ...plain, format }],
  });
  expect(table.rows[0]?.[0]?.odd).toBe(odd);
});

test("a formula, a line through it, and that it is unseen are told in this order", () => {
  const odd = (inside: string) => {
    const looks = [{ format: "@", struck: false, unseen: true }];
    const { table } = readWorksheet(`<x><row r="1"><c t="str">${inside}<v>X</v></c></row></x>`, "S", {
      texts: [],
      looks,
    });
    return table.rows[0]?.[0]?.odd;
  };
  expect(["<f>A1</f><strike/>", "<strike/>", '<strike val="0"/>'].map(odd)).toEqual([
    "formula",
    "struck",
    "unseen",
  ]);
});

test.each([
  ["", '<row r="3" hidden="1">'],
  ["", '<row r="3" ht="0">'],
  ['<sheetFormatPr zeroHeight="1"/>', '<row r="3">'],
  ['<cols><col min="2" max="2" hidden="1"/></cols>', '<row r="3">'],
  ['<cols><col min="2" max="2" width="0"/></cols>', '<row r="3">'],
  ['<cols><col min="1" max="16384" hidden="1"/></cols>', '<row r="3">'],
])("a cell is hidden by %s%s", (before, row) => {
  expect(hidden(before, `${row}${text("B3")}</row>`)).toEqual(["hidden S!B3"]);
});

test.each([
  ["", '<row r="3" hidden="0" ht="15">'],
  ['<sheetFormatPr zeroHeight="1"/>', '<row r="3" hidden="0">'],
  ['<cols><col min="1" max="1" hidden="1"/><col min="3" max="3" hidden="1"/></cols>', '<row r="3">'],
  ['<cols><col min="2" max="2" width="9"/><col min="2" max="2"/></cols>', '<row r="3">'],
])("a cell is not hidden by %s%s", (before, row) => {
  expect(hidden(before, `${row}${text("B3")}</row>`)).toEqual([]);
});

test("a hidden row hides none behind it", () => {
  const rows = `<row r="3" hidden="1">${text("A3")}</row><row r="4">${text("A4")}</row>`;
  expect(hidden("", rows)).toEqual(["hidden S!A3"]);
});

test("what a sheet holds besides its cells is told with its place", () => {
  const behind =
    '<mergeCells><mergeCell ref="A1:B1"/></mergeCells><conditionalFormatting sqref="C1:C9"/>' +
    "<oleObjects><oleObject/></oleObjects><controls><control/></controls>";
  expect(read("", { before: "", behind }).more.map(({ what, where }) => `${what} ${where}`)).toEqual([
    "merged S!A1:B1",
    "rule S!C1:C9",
    "picture S!an object",
    "picture S!an object",
  ]);
});

test("two thousand rows of two hundred cells are read, and no more; of a longer sheet the first row is", () => {
  const long = (rows: number, columns: number) => {
    const row = (of: number) => `<row>${"<c><v>1</v></c>".repeat(of)}</row>`;
    const { table, more } = read(row(columns) + row(1).repeat(rows - 1));
    return [table.rows.length, ...more.map(({ what, where }) => `${what} ${where}`)];
  };
  expect(long(2_000, 200)).toEqual([2_000]);
  expect(long(2_001, 1)).toEqual([1, "too-long S!A1:GS2000"]);
  expect(long(2, 201)).toEqual([1, "too-long S!A1:GS2000"]);
});
