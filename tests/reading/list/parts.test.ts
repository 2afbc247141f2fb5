import { expect, test } from "vitest";
import { listInWorkbook } from "../../../src/reading/list/workbook/workbook.ts";

const relation = (id: string, type: string, target: string): string =>
  `<Relationship Id="${id}" Type="http://schemas.example/relationships/${type}" Target="${target}"/>`;
const cells = (text: string): string =>
  `<worksheet><sheetData><row><c t="inlineStr"><is><t>${text}</t></is></c></row></sheetData></worksheet>`;

/** The parts of a list in one sheet, as ECMA-376 has them. */
const usual: Readonly<Record<string, string>> = {
  "xl/workbook.xml": '<workbook><sheets><sheet name="List" r:id="r1"/></sheets></workbook>',
  "xl/_rels/workbook.xml.rels": `<Relationships>${relation("r1", "worksheet", "worksheets/sheet1.xml")}</Relationships>`,
  "xl/worksheets/sheet1.xml": cells("Station list"),
};

/** What a workbook says that has these parts too, or in the place of the usual; without text there is none to read. */
function read(changes: Readonly<Record<string, string | undefined>> = {}) {
  const parts = { ...usual, ...changes };
  return listInWorkbook({ names: Object.keys(parts), textOf: (name) => parts[name] });
}
const faults = (changes: Readonly<Record<string, string | undefined>>) =>
  read(changes)?.more.map(({ what, where }) => `${what} ${where}`);
const textsIn = (list: ReturnType<typeof read>) =>
  list?.tables.map(({ name, rows }) => [name, ...rows.flat().map(({ text }) => text)]);

/** The parts of a list with a second sheet. */
const withSecond = (sheet: string, relations: string): Record<string, string> => ({
  "xl/workbook.xml": `<workbook><sheets><sheet name="List" r:id="r1"/>${sheet}</sheets></workbook>`,
  "xl/_rels/workbook.xml.rels": `<Relationships>${relation("r1", "worksheet", "worksheets/sheet1.xml")}${relations}</Relationships>`,
});
const second = withSecond(
  '<sheet name="Two" r:id="r2"/>',
  relation("r2", "worksheet", "/xl/worksheets/sheet2.xml"),
);

test("a list is read sheet by sheet, wherever its parts lie", () => {
  expect(textsIn(read())).toEqual([["List", "Station list"]]);
  expect(textsIn(read({ ...second, "xl/worksheets/sheet2.xml": cells("X") }))).toEqual([
    ["List", "Station list"],
    ["Two", "X"],
  ]);
});

test("cells have the texts and the looks that the workbook keeps for all its sheets", () => {
  const shared = {
    ...withSecond("", relation("r8", "sharedStrings", "texts.xml") + relation("r9", "styles", "looks.xml")),
    "xl/worksheets/sheet1.xml": '<x><row><c t="s"><v>0</v></c><c s="0"><v>5</v></c></row></x>',
    "xl/texts.xml": "<sst><si><t>station LIST </t></si></sst>",
    "xl/looks.xml": '<x><cellXfs><xf numFmtId="14"/></cellXfs></x>',
  };
  expect(read(shared)?.tables[0]?.rows).toEqual([
    [
      { column: 0, row: 1, text: "station LIST " },
      { column: 1, row: 1, text: "5", odd: "shown-otherwise" },
    ],
  ]);
  expect(read({ ...shared, "xl/texts.xml": undefined })).toBeUndefined();
  expect(read({ ...shared, "xl/looks.xml": undefined })).toBeUndefined();
});

test.each(["xl/workbook.xml", "xl/_rels/workbook.xml.rels"])("without %s it is no workbook", (missing) => {
  expect(read({ [missing]: undefined })).toBeUndefined();
  const { [missing]: _, ...others } = usual;
  expect(
    listInWorkbook({
      names: Object.keys(others),
      textOf: (name) => (usual[name] === undefined ? undefined : others[name]),
    }),
  ).toBeUndefined();
});

test("a sheet that cannot be unpacked, one that holds no cells, and one that lies nowhere are told", () => {
  expect(faults(second)).toEqual(["too-long Two"]);
  const chart = withSecond('<sheet name="Two" r:id="r2"/>', relation("r2", "chartsheet", "chart.xml"));
  expect(faults(chart)).toEqual(["part Two"]);
  expect(faults(withSecond('<sheet name="Two" r:id="r3"/>', ""))).toEqual(["part Two"]);
});

test("a hidden sheet is told if it holds something", () => {
  const state = (said: string, text: string) =>
    faults({
      ...withSecond(
        `<sheet name="Two" r:id="r2"${said}/>`,
        relation("r2", "worksheet", "worksheets/two.xml"),
      ),
      "xl/worksheets/two.xml": cells(text),
    });
  expect(state(' state="hidden"', "X")).toEqual(["hidden Two"]);
  expect(state(' state="hidden"', "")).toEqual([]);
  expect(state(' state="visible"', "X")).toEqual([]);
  expect(state("", "X")).toEqual([]);
});

test.each([
  "Stations OLD",
  "old",
  "Old (2)",
  "Floor 2 - superseded",
  "DO NOT USE",
  "Backup",
  "old rows",
  "DRAFT",
])("a sheet that is called “%s” is told if it holds something", (name) => {
  const named = (text: string) =>
    faults({
      ...withSecond(`<sheet name="${name}" r:id="r2"/>`, relation("r2", "worksheet", "worksheets/two.xml")),
      "xl/worksheets/two.xml": cells(text),
    });
  expect(named("X")).toEqual([`set-aside ${name}`]);
  expect(named("")).toEqual([]);
});

test.each(["Old Wing", "Old Mill 2", "Stations (2)", "Threshold", "Golden Hall", "Draftsmen", "Archive"])(
  "a sheet that is called “%s” is read as any other",
  (name) => {
    const two = { "xl/worksheets/two.xml": cells("X") };
    const second = withSecond(
      `<sheet name="${name}" r:id="r2"/>`,
      relation("r2", "worksheet", "worksheets/two.xml"),
    );
    expect(faults({ ...second, ...two })).toEqual([]);
  },
);

test("a part that adds nothing to the cells is not told, nor is a folder", () => {
  const names = [
    "[Content_Types].xml",
    "_rels/.rels",
    "docProps/app.xml",
    "customXml/item1.xml",
    "xl/calcChain.xml",
    "XL/Theme/theme1.xml",
    "xl/printerSettings/printerSettings1.bin",
    "xl/tables/table1.xml",
    "xl/newest/",
  ];
  expect(faults(Object.fromEntries(names.map((name) => [name, ""])))).toEqual([]);
});

test.each([
  [["xl/styles.xml.exe"], ["part xl/styles.xml.exe"]],
  [["old/xl/styles.xml"], ["part old/xl/styles.xml"]],
  [["xl/new/a.xml", "xl/new/b.xml"], ["part xl/new/b.xml"]],
  [["xl/threadedComments/threadedComment1.xml"], ["comment xl/threadedComments/threadedComment1.xml"]],
  // A comment is drawn, too.
  [["xl/comments1.xml", "xl/drawings/vmlDrawing1.vml"], ["comment xl/comments1.xml"]],
  [
    ["xl/comments1.xml", "xl/drawings/vmlDrawing1.vml", "xl/media/image1.png"],
    ["comment xl/comments1.xml", "picture xl/media/image1.png"],
  ],
  [["xl/drawings/drawing1.xml"], ["picture xl/drawings/drawing1.xml"]],
  // A comment elsewhere is drawn by none of these.
  [
    ["old/xl/media/image1.png", "xl/comments1.xml", "xl/drawings/vmlDrawing1.vml"],
    ["part old/xl/media/image1.png", "comment xl/comments1.xml"],
  ],
])("of the parts %j these are told: %j", (names, told) => {
  expect(faults(Object.fromEntries(names.map((name) => [name, ""])))).toEqual(told);
});
