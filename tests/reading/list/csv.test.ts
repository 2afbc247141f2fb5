import { expect, test } from "vitest";
import { listInText } from "../../../src/reading/list/csv.ts";
import { openFile } from "../../../src/reading/open-file.ts";
import { alone, csvOf, rowsOf, usualHead } from "../../make/list.ts";

const rows = rowsOf({
  head: { ...usualHead, "Bill to: company": "Société d’Électricité, Inc; Nord" },
  devices: [{ ...alone, "Button 1, row 1": '5" UP, DOWN', "Button 2, row 1": "00123", Notes: "one\ntwo" }],
});

const separators = [",", ";", "\t"] as const;
const encodings: Readonly<Record<string, (text: string) => Buffer>> = {
  "UTF-8": (text) => Buffer.from(text),
  "UTF-8 with a mark": (text) => Buffer.from(`\uFEFF${text}`),
  "UTF-16, little end first": (text) => Buffer.from(`\uFEFF${text}`, "utf16le"),
  "UTF-16, big end first": (text) => Buffer.from(`\uFEFF${text}`, "utf16le").swap16(),
  "Windows-1252": (text) => Buffer.from(text.replaceAll("’", "\x92"), "latin1"),
};

test.each(
  Object.entries(encodings).flatMap(([name, encode]) =>
    separators.map((separator) => ({ name, separator, encode })),
  ),
)(
  "a list in $name, its cells parted by “$separator”, is read cell by cell",
  async ({ separator, encode }) => {
    const facts = await openFile(encode(csvOf(rows, separator)));
    if (facts.kind !== "list") throw new Error(`read as ${facts.kind}`);
    const read = facts.tables[0]?.rows ?? [];
    // A line end within a cell counts no line.
    const filled = rows.map((row) => row.filter((cell) => cell !== "")).filter((row) => row.length > 0);
    expect(read.map((row) => row.map(({ text }) => text))).toEqual(filled);
    expect(facts.more).toEqual([]);
  },
);

test.each([";", ",", "\t", "|"])(
  "a first line that tells the separator “%s” is none of the list",
  async (sign) => {
    const facts = await openFile(Buffer.from(`sep=${sign}\r\nStation list\r\nNotes${sign}a; b, c\r\n`));
    const cells = facts.kind === "list" ? facts.tables.flatMap((table) => table.rows.flat()) : [];
    const told = sign === ";" ? ["2 a", "2  b, c"] : sign === "," ? ["2 a; b", "2  c"] : ["2 a; b, c"];
    expect(cells.map(({ row, text }) => `${row} ${text}`)).toEqual(["1 Station list", "2 Notes", ...told]);
  },
);

test("a quotation mark that is not closed keeps a list from being taken", () => {
  const list = listInText('Station list\nOrder number,FM-80\nNotes,"48 high\nFinish,Pumice\n');
  expect(list?.more).toEqual([{ what: "unclosed", where: "B3", text: "48 high Finish,Pumice" }]);
});

test.each(["2-Jan", "02-Jan-26", "Jan-02", "1/2/2026", "1.00E+05", "12:30:00 PM"])(
  "%s may be what a spreadsheet has made of something else",
  (text) => {
    const cell = listInText(`Station list\nNotes,${text}`)?.tables[0]?.rows[1]?.[1];
    expect(cell).toMatchObject({ text, odd: "remade" });
  },
);

test.each(["2-JAN", "JAN-02", "1/2", "1E5", "MARCH", "6:30 AM", "1/2/26 A"])(
  "%s is what was typed",
  (text) => {
    const cell = listInText(`Station list\nNotes,${text}`)?.tables[0]?.rows[1]?.[1];
    expect(cell).toEqual({ column: 1, row: 2, text });
  },
);

test("another table stays a text, whatever it speaks of", async () => {
  const facts = await openFile(Buffer.from("Station,Qty\nStation list,4\n"));
  expect(facts.kind).toBe("text");
});

test("a line ends in a return, in a line feed or in both, and counts as one", async () => {
  const facts = await openFile(Buffer.from("Station list\r\nFinish,Pumice\rLettering,Sepia\n\nNotes,x\r\n"));
  const cells = facts.kind === "list" ? facts.tables.flatMap((table) => table.rows.flat()) : [];
  expect(cells.map(({ row, text }) => `${row} ${text}`)).toEqual([
    "1 Station list",
    "2 Finish",
    "2 Pumice",
    "3 Lettering",
    "3 Sepia",
    "5 Notes",
    "5 x",
  ]);
});

test("a list of four hundred thousand characters is read, a longer one is not", async () => {
  const text = csvOf(rows);
  const padded = (length: number) => openFile(Buffer.from(text + "\n".repeat(length - text.length)));
  expect(await padded(400_000)).toMatchObject({ kind: "list", more: [] });
  expect(await padded(400_001)).toMatchObject({ kind: "list", tables: [], more: [{ what: "too-long" }] });
});

test("a list of many thousand rows is not read", async () => {
  const long = csvOf([...rows, ...Array.from({ length: 40_000 }, () => ["S-1", "", "", "Three buttons"])]);
  const facts = await openFile(Buffer.from(long));
  expect(facts).toMatchObject({ kind: "list", tables: [], more: [{ what: "too-long" }] });
});

test("a list of two thousand rows is read, one of more is not; empty rows do not count", () => {
  const long = (rows: number) => listInText(`Station list\n\n\n${"x\n".repeat(rows - 1)}`);
  expect(long(2_000)).toMatchObject({ tables: [{ rows: { length: 2_000 } }], more: [] });
  expect(long(2_001)).toMatchObject({ tables: [], more: [{ what: "too-long", where: "the list" }] });
});

test.each(['"Station list"\nx,y', "\uFEFFSTATION LIST\nx,y", " \n station list ,\nx,y"])(
  "%j begins with the title",
  (text) => {
    expect(listInText(text)?.tables[0]?.rows.at(-1)).toMatchObject([{ text: "x" }, { text: "y" }]);
  },
);

test.each(["Station lists\nx,y", "A station list\nx,y", "x\nStation list"])("%j does not", (text) => {
  expect(listInText(text)).toBeUndefined();
});

// RFC 4180 §2
test.each([
  ['Station list\n"a""b",c', ['a"b', "c"]],
  ['Station list\na "b", c"d', ['a "b"', ' c"d']],
  ['Station list\n"a,\nb",""', ["a,\nb"]],
  ["Station list,,\na;b;c,d,e,f", ["a;b;c", "d", "e", "f"]],
  ["Station list\na\tb;c", ["a", "b;c"]],
  ["Station list\na,\u00a0,b", ["a", "b"]],
])("%j ends in the cells %j", (text, cells) => {
  expect(
    listInText(text)
      ?.tables[0]?.rows.at(-1)
      ?.map((cell) => cell.text),
  ).toEqual(cells);
});
