import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { listWorkbook } from "../../../src/drawing/list/list-workbook.ts";
import { listForm } from "../../../src/reading/list/list-form.ts";
import { openFile } from "../../../src/reading/open-file.ts";
import { installed } from "../../drawing/look.ts";
import { maker } from "../../make/config.ts";
import { changed, csvOf, type Rows, rowsOf, writers } from "../../make/list.ts";

const folder = mkdtempSync(join(tmpdir(), "lists-"));
afterAll(() => rmSync(folder, { recursive: true }));

const rows = rowsOf({});
const sheet = "xl/worksheets/sheet1.xml";
const written = await writers["write-excel-file"](rows);

async function listIn(bytes: Uint8Array) {
  const facts = await openFile(bytes);
  if (facts.kind !== "list") throw new Error(`read as ${facts.kind}`);
  return facts;
}

const textsIn = (all: Rows): string[] => all.flat().filter((text) => text !== "");

describe.each(Object.entries(writers))("written by %s", (_, write) => {
  test("every cell is read as typed", async () => {
    const { tables, more } = await listIn(await write(rows));
    expect(tables.flatMap((table) => table.rows.flat().map(({ text }) => text))).toEqual(textsIn(rows));
    expect(more).toEqual([]);
  });
});

/** Formats that LibreOffice reads a CSV by, with every column as text. */
function byLibreOffice(file: string, to: string): void {
  execFileSync("soffice", ["--headless", "--convert-to", to, "--outdir", folder, join(folder, file)], {
    stdio: "ignore",
  });
}

test.skipIf(!installed("soffice"))(
  "a list that LibreOffice saved, through ODS too, is read as typed",
  async () => {
    writeFileSync(join(folder, "list.csv"), csvOf(rows));
    byLibreOffice("list.csv", "ods");
    byLibreOffice("list.ods", "xlsx");
    const { tables, more } = await listIn(readFileSync(join(folder, "list.xlsx")));
    expect(tables.flatMap((table) => table.rows.flat().map(({ text }) => text))).toEqual(textsIn(rows));
    expect(more).toEqual([]);
  },
);

test.skipIf(!installed("soffice"))("our own empty list comes back from LibreOffice as it was", async () => {
  const form = listForm(maker.editions);
  if (form === undefined) throw new Error("no form");
  const own = await listWorkbook(form, maker.catalogue);
  writeFileSync(join(folder, "own.xlsx"), own);
  byLibreOffice("own.xlsx", "ods");
  byLibreOffice("own.ods", "xlsx");
  const again = await listIn(readFileSync(join(folder, "own.xlsx")));
  expect(again).toEqual(await listIn(own));
});

/** A cell of the list as XML, put in the place of the first legend. */
function withCell(xml: string, styles: (xml: string) => string = (all) => all): Uint8Array {
  return changed(written, {
    [sheet]: (all) => all.replace(/<c r="I17"[^>]*>.*?<\/c>/s, xml),
    "xl/styles.xml": styles,
  });
}

const style =
  (numFmt: string, code: string, font = "") =>
  (xml: string) =>
    xml
      .replace(
        /<numFmts.*?<\/numFmts>/s,
        `<numFmts count="1"><numFmt numFmtId="${numFmt}" formatCode="${code}"/></numFmts>`,
      )
      .replace(/<fonts count="\d+">/, `$&<font>${font}</font>`)
      .replace(
        /<cellXfs.*<\/cellXfs>/s,
        `<cellXfs><xf numFmtId="0"/><xf numFmtId="${numFmt}" fontId="0"/></cellXfs>`,
      );

/** A look with the last of several fills, which is solid. */
const onFill = (font: string, ground: string) => (xml: string) =>
  style(
    "164",
    "@",
    `<color rgb="${font}"/>`,
  )(xml)
    .replace(
      /<fills.*<\/fills>/s,
      `<fills><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="solid"><fgColor rgb="${ground}"/></patternFill></fill></fills>`,
    )
    .replace('numFmtId="164" fontId', 'numFmtId="164" fillId="1" fontId');

test.each([
  ["a number", '<c r="I17"><v>101</v></c>', undefined, { text: "101" }],
  ["a number with a fraction", '<c r="I17"><v>2.5</v></c>', undefined, { text: "2.5" }],
  [
    "zeros in front of a text",
    '<c r="I17" t="inlineStr"><is><t>00123</t></is></c>',
    undefined,
    { text: "00123" },
  ],
  ["a number in thousands", '<c r="I17"><v>1E5</v></c>', undefined, { text: "100000" }],
  ["a number of many digits", '<c r="I17"><v>123456789012</v></c>', undefined, { odd: "shown-otherwise" }],
  [
    "3/4, which became a day",
    '<c r="I17" s="1"><v>46085</v></c>',
    style("164", "d-mmm"),
    { odd: "shown-otherwise" },
  ],
  [
    "1E5, as it was typed",
    '<c r="I17" s="1"><v>100000</v></c>',
    style("164", "0.00E+00"),
    { odd: "shown-otherwise" },
  ],
  ["00123 by a format", '<c r="I17" s="1"><v>123</v></c>', style("164", "00000"), { odd: "shown-otherwise" }],
  [
    "a text in a format that shows nothing",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    style("164", ";;;"),
    { odd: "shown-otherwise" },
  ],
  ["yes or no", '<c r="I17" t="b"><v>1</v></c>', undefined, { text: "TRUE", odd: "shown-otherwise" }],
  ["an error", '<c r="I17" t="e"><v>#REF!</v></c>', undefined, { odd: "shown-otherwise" }],
  ["a formula", '<c r="I17" t="str"><f>A1</f><v>OFF</v></c>', undefined, { text: "OFF", odd: "formula" }],
  ["a formula without a value", '<c r="I17"><f>A1</f></c>', undefined, { odd: "formula" }],
  [
    "a text that is struck out",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    style("164", "@", "<strike/>"),
    { odd: "struck" },
  ],
  [
    "a word that is struck out",
    '<c r="I17" t="inlineStr"><is><r><rPr><strike/></rPr><t>ON</t></r><r><t>OFF</t></r></is></c>',
    undefined,
    { text: "ONOFF", odd: "struck" },
  ],
  [
    "white on white",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    style("164", "@", '<color rgb="FFFFFFFF"/>'),
    { odd: "unseen" },
  ],
  [
    "white of the theme on white",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    style("164", "@", '<color theme="0"/>'),
    { odd: "unseen" },
  ],
  [
    "a grey that is made of the theme's white",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    style("164", "@", '<color theme="0" tint="-0.5"/>'),
    { text: "OFF" },
  ],
  [
    "white on blue",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    onFill("FFFFFFFF", "FF0000FF"),
    { text: "OFF" },
  ],
  [
    "blue on blue",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    onFill("FF0000FF", "FF0000FF"),
    { odd: "unseen" },
  ],
  [
    "a text whose line through it is taken back",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    style("164", "@", '<strike val="0"/>'),
    { text: "OFF" },
  ],
  [
    "a word whose line through it is taken back",
    '<c r="I17" t="inlineStr"><is><r><rPr><strike val="0"/></rPr><t>ON</t></r><r><t>OFF</t></r></is></c>',
    undefined,
    { text: "ONOFF" },
  ],
  [
    "a text of one point",
    '<c r="I17" s="1" t="inlineStr"><is><t>OFF</t></is></c>',
    style("164", "@", '<sz val="1"/>'),
    { odd: "unseen" },
  ],
  [
    "characters that XML cannot hold",
    '<c r="I17" t="inlineStr"><is><t>A_x0041_&#x1F600;</t></is></c>',
    undefined,
    { text: "AA😀" },
  ],
] as const)("%s is read as it shows, or told", async (_, xml, styles, expected) => {
  const { tables } = await listIn(withCell(xml, styles));
  const cell = tables
    .flatMap(({ rows: all }) => all.flat())
    .find(({ column, row }) => column === 8 && row === 17);
  expect(cell).toMatchObject(expected);
  if (!("odd" in expected)) expect(cell?.odd).toBeUndefined();
});

const part = (name: string): Uint8Array => changed(written, { [name]: () => "<x/>" });

test.each([
  [
    "a hidden row",
    changed(written, { [sheet]: (xml) => xml.replace('<row r="17"', '<row hidden="1" r="17"') }),
    "hidden",
  ],
  [
    "a row without height",
    changed(written, { [sheet]: (xml) => xml.replace('<row r="17"', '<row ht="0" r="17"') }),
    "hidden",
  ],
  [
    "a hidden column",
    changed(written, {
      [sheet]: (xml) =>
        xml.replace("<sheetData", '<cols><col min="1" max="1" width="9" hidden="true"/></cols><sheetData'),
    }),
    "hidden",
  ],
  [
    "a hidden sheet",
    changed(written, { "xl/workbook.xml": (xml) => xml.replace("<sheet ", '<sheet state="veryHidden" ') }),
    "hidden",
  ],
  [
    "merged cells",
    changed(written, {
      [sheet]: (xml) =>
        xml.replace("</sheetData>", '</sheetData><mergeCells><mergeCell ref="A17:A18"/></mergeCells>'),
    }),
    "merged",
  ],
  [
    "a look that follows a rule",
    changed(written, {
      [sheet]: (xml) => xml.replace("</sheetData>", '</sheetData><conditionalFormatting sqref="A1:B9"/>'),
    }),
    "rule",
  ],
  ["a comment", part("xl/comments1.xml"), "comment"],
  ["a picture", part("xl/drawings/drawing1.xml"), "picture"],
  ["a link to another workbook", part("xl/externalLinks/externalLink1.xml"), "program"],
  ["a macro", part("xl/vbaProject.bin"), "program"],
  ["what nobody here knows", part("xl/newest/thing.xml"), "part"],
  ["a comment where no program keeps one", part("own/xl/comments1.xml"), "part"],
  ["a picture where no program keeps one", part("own/xl/media/a.png"), "part"],
  ["a macro where no program keeps one", part("own/xl/vbaProject.bin"), "part"],
])("%s is told", async (_, bytes, what) => {
  const { more } = await listIn(bytes);
  expect(new Set(more.map((one) => one.what))).toEqual(new Set([what]));
});

test("a workbook without our head is not read", async () => {
  expect(
    await openFile(
      await writers.xlsx([
        ["Station", "Qty"],
        ["S-1", "4"],
      ]),
    ),
  ).toEqual({ kind: "office" });
});

test.each([
  ["entities that grow", '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>'],
  ["an entity from elsewhere", '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>'],
])("a workbook with %s is not read", async (_, type) => {
  const bytes = changed(written, { [sheet]: (xml) => xml.replace("<worksheet", `${type}<worksheet`) });
  expect(await openFile(bytes)).toEqual({ kind: "office" });
});

test("a million rows, and a sheet that unpacks to more than is read, are told as too long", async () => {
  const row = (n: number): string => `<row r="${n}"><c r="A${n}" t="inlineStr"><is><t>S</t></is></c></row>`;
  const grown = (rows: number): Uint8Array =>
    changed(written, {
      [sheet]: (xml) =>
        xml.replace(
          "</sheetData>",
          `${Array.from({ length: rows }, (_, i) => row(i + 100)).join("")}</sheetData>`,
        ),
    });
  expect((await listIn(grown(3_000))).more).toMatchObject([{ what: "too-long" }]);
  // Nothing says that it is a list then, so it is a document like others.
  expect(await openFile(grown(1_000_000))).toEqual({ kind: "office" });
});
