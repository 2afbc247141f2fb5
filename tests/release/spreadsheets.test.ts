import { existsSync } from "node:fs";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tableCsv } from "../../src/release/csv.ts";
import type { Table } from "../../src/release/table.ts";
import { workbookOf } from "../../src/release/xlsx.ts";
import { hasLibrary } from "../make/program.ts";
import { bytesIn, filesOf, libreOffice, python, releaseOf, sheets, textIn, trapLegends } from "./packed.ts";

const calc = "/usr/lib/libreoffice/program/libsclo.so";
const hasCalc = existsSync(calc);
if (!hasCalc) console.warn(`${calc} is not installed: spreadsheets are not opened by LibreOffice here`);

/** The legends of station S-110 in the schedule, row by row. */
function legendsIn(cells: readonly (readonly string[])[]): string[][] {
  const [titles = []] = cells;
  const [station, first, second] = ["Station", "Row 1", "Row 2"].map((title) =>
    titles.indexOf(JSON.stringify(title)),
  );
  return cells
    .filter((row) => row[station ?? -1] === '"S-110"')
    .map((row) => [row[first ?? -1] ?? "", row[second ?? -1] ?? ""]);
}

const typed = [["'QUOTED'", 'A,B "C"'], ...trapLegends.map((text) => [text, ""]), ["MAR 3", "TRUE"]];

test.skipIf(!hasCalc)(
  "LibreOffice reads every legend of the workbook as the text that was typed",
  async () => {
    const files = await filesOf(releaseOf(sheets));
    const book = libreOffice("schedule.xlsx", bytesIn(files, "schedule.xlsx"));
    const texts = typed.map((row) => row.map((text) => (text === "" ? "" : JSON.stringify(text))));
    expect(legendsIn(book.get("Schedule") ?? [])).toEqual(texts);
    expect(book.get("Cutting list")?.slice(1)).toEqual([
      ['"device"', '"Oat"', '"OAT"', '"Four buttons"', '"D4"', "4"],
      ['"device"', '"Oat"', '"OAT"', '"Six buttons"', '"D6"', "1"],
      ['"plate"', '"Oat"', '"OAT"', expect.stringContaining("1 gang"), expect.any(String), "1"],
      ['"plate"', '"Oat"', '"OAT"', expect.stringContaining("4 gangs"), expect.any(String), "1"],
    ]);
  },
);

/** LibreOffice's token 8 has it look for days and other special numbers, token 12 reckon formulas. */
const readers = {
  "as LibreOffice does unasked": "Text - txt - csv (StarCalc):44,34,76,1",
  "looking for numbers and formulas in everything":
    "Text - txt - csv (StarCalc):44,34,76,1,,1033,false,true,false,false,false,0,true",
};

describe.skipIf(!hasCalc).each(Object.entries(readers))("CSV read %s", (_, reader) => {
  test("every legend stays text", async () => {
    const files = await filesOf(releaseOf(sheets));
    const cells =
      libreOffice("schedule.csv", bytesIn(files, "schedule.csv"), reader).values().next().value ?? [];
    const marked = typed.map((row) =>
      row.map((text) => (text === "" ? "" : JSON.stringify(/^[A-Z],/.test(text) ? text : `'${text}`))),
    );
    expect(legendsIn(cells)).toEqual(marked);
  });

  test("without the apostrophe they would not", () => {
    const plain = new TextEncoder().encode(`a,b\r\n${trapLegends.join(",")}\r\n`);
    const [, row] = libreOffice("plain.csv", plain, reader).values().next().value ?? [];
    expect(row).not.toEqual(trapLegends.map((text) => JSON.stringify(text)));
  });
});

test("the schedule for programs has every legend as it was typed", async () => {
  const files = await filesOf(releaseOf(sheets));
  const { parts } = JSON.parse(textIn(files, "schedule.json")) as {
    parts: { station: string; faces: { typed: string[] }[] }[];
  };
  const faces = parts.filter(({ station }) => station === "S-110").flatMap((part) => part.faces);
  expect(faces.map((face) => face.typed)).toEqual(typed);
});

/** Anything that a person or a program could have typed, and what spreadsheets and XML trip over. */
const texts = fc.sample(
  fc.oneof(
    fc.string({ unit: "binary", maxLength: 12 }).map((text) => text.replaceAll("\0", "")),
    fc.stringMatching(/^[=+\-@'" ,;_x0-9A-F\r\n\t]{1,12}$/),
    fc.constantFrom(
      "valueOf",
      "__proto__",
      "_x0041_",
      "_x005F_x0041_",
      "  A  ",
      "A  B",
      "CAFE\u0301",
      "CAF\u00C9",
      "\r\n",
      "'",
      "''A",
      "&amp;",
      "]]>",
    ),
  ),
  { numRuns: 400, seed: 7 },
);
const table: Table = { name: "Texts", titles: ["text", "number"], rows: texts.map((text, i) => [text, i]) };

// RFC 4180, as Python's csv module reads it; its records end with CRLF (§2.1).
test("Python reads every text of a CSV as it was typed, once the apostrophe in front is off", () => {
  const csv = tableCsv(table);
  const program = `import csv, json
print(json.dumps(list(csv.reader(open("t.csv", encoding="utf-8-sig", newline=""), strict=True))))`;
  const read = python(program, { "t.csv": csv }) as string[][];
  expect(read.map(([text = "", number]) => [text.replace(/^'/, ""), number])).toEqual([
    ["text", "number"],
    ...texts.map((text, i) => [text.toWellFormed(), `${i}`]),
  ]);
  expect(csv.endsWith("\r\n")).toBe(true);
});

test("a text with an apostrophe in front got a second one, and words have none", () => {
  const lines = tableCsv({
    name: "",
    titles: ["a"],
    rows: [["'A"], ["ALL OFF"], ["S-104"], ["MAY"], ["MAY 5"], [5]],
  });
  expect(lines).toBe("\uFEFFa\r\n''A\r\nALL OFF\r\nS-104\r\nMAY\r\n'MAY 5\r\n5\r\n");
});

/** What openpyxl 3.0 takes from the XML as it should: it knows no code but that of the underscore. */
const forOpenpyxl = texts.filter(
  // oxlint-disable-next-line no-control-regex
  (text) => text !== "" && !/[\0-\x08\x0B-\x1F\uFFFE\uFFFF]|\p{Surrogate}|x005F/u.test(text) && !(text in {}),
);

test.skipIf(!hasLibrary("openpyxl"))("openpyxl reads every text of a workbook as it was typed", async () => {
  const program = `import json, openpyxl, warnings
warnings.simplefilter("ignore")
rows = openpyxl.load_workbook("t.xlsx").active.iter_rows(min_row=2)
print(json.dumps([[a.value, b.value, a.data_type, b.data_type, a.number_format] for a, b in rows]))`;
  const rows = forOpenpyxl.map((text, i) => [text, i]);
  const read = python(program, { "t.xlsx": await workbookOf([{ ...table, rows }]) });
  expect(rows.length).toBeGreaterThan(200);
  expect(read).toEqual(rows.map(([text, i]) => [text, i, "s", "n", "@"]));
});

// ECMA-376 part 1, §22.9.2.19, as LibreOffice reads it.
test.skipIf(!hasCalc)("LibreOffice reads what has to be escaped as it was typed", async () => {
  const hard = [
    "_x0041_",
    "_x005F_x0041_",
    "_X0041_",
    "valueOf",
    "constructor",
    "__proto__",
    "<&>\"'",
    "  A  B ",
    "]]>",
  ];
  const rows = hard.map((text) => [text]);
  const book = libreOffice("hard.xlsx", await workbookOf([{ name: "Hard", titles: ["text"], rows }]));
  expect(book.get("Hard")?.slice(1)).toEqual(hard.map((text) => [JSON.stringify(text)]));
});

test("the same tables make the same workbook", async () => {
  expect(await workbookOf([table])).toEqual(await workbookOf([table]));
});
