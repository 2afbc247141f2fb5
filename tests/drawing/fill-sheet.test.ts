import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDocument, type PDFRawStream } from "pdf-lib";
import { afterAll, beforeAll, expect, test } from "vitest";
import { blankSheet } from "../../src/drawing/blank-sheet.ts";
import { fillSheet, type SheetValues } from "../../src/drawing/fill-sheet.ts";
import { plainSheet } from "../../src/drawing/plain-sheet.ts";
import type { Edition } from "../../src/reading/edition.ts";
import { catalogue, editions } from "../make/config.ts";
import { installed, look, run, type Widget } from "./look.ts";
import { deviceValues, plateValues } from "./values.ts";

const folder = mkdtempSync(join(tmpdir(), "sheets-"));
afterAll(() => rmSync(folder, { recursive: true }));

const blanks = new Map<string, Uint8Array>();
beforeAll(async () => {
  for (const edition of editions)
    blanks.set(edition.name, await (edition.drawn ? blankSheet : plainSheet)(edition, catalogue));
});
const blank = (name: string): Uint8Array => blanks.get(name) as Uint8Array;
const fill = (name: string, values: SheetValues): Promise<Uint8Array> => fillSheet(blank(name), values);
const widget = async (bytes: Uint8Array, name: string): Promise<Widget> =>
  (await look(bytes)).widgets.find(({ fieldName }) => fieldName === name) as Widget;

const foreign = {
  "MS.Contact": "Ines Calloway",
  "MS.Acct.City": "Chicago",
  "MS.Where": "Ganged",
  "MS.Four": true,
};
const filled: readonly (readonly [string, SheetValues])[] = [
  ["device-26c", deviceValues],
  ["plate-26c", plateValues],
  ["device-25a", { Name: "Ines Calloway", Lay4: true, PosOf: "2 of 4", Finish: "Oat", Remarks: "a\nb" }],
  ["marrowby-device-1", foreign],
];

test.each(filled)("pdf.js reads %s as it was filled", async (name, values) => {
  const { widgets } = await look(await fill(name, values));
  const read = new Map(widgets.map((one) => [one.fieldName, one]));
  for (const [field, value] of Object.entries(values)) {
    const { fieldValue } = read.get(field) as Widget;
    expect([fieldValue].flat(), field).toEqual([value === true ? "Yes" : value]);
  }
  const empty = [...read.values()].filter(
    ({ fieldName }) => !(fieldName in values) && fieldName !== "edition",
  );
  for (const { fieldName, fieldValue } of empty)
    expect(["", "Off", undefined], fieldName).toContain([fieldValue ?? ""].flat()[0]);
});

test.each(filled)("every text put into %s is shown", async (name, values) => {
  const { widgets } = await look(await fill(name, values));
  for (const { fieldName, fieldType, textContent } of widgets) {
    const value = values[fieldName];
    if (fieldType === "Tx" && value !== undefined)
      expect(textContent?.join("\n"), fieldName).toBe(String(value));
  }
});

test("a choice from a list is shown", async () => {
  const pdf = await PDFDocument.load(await fill("device-26c", { finish: "Oat" }), { updateMetadata: false });
  const [widget] = pdf.getForm().getDropdown("finish").acroField.getWidgets();
  const drawing = widget?.getAppearances()?.normal as PDFRawStream;
  expect(drawing.getContentsString()).toContain(`<${Buffer.from("Oat").toString("hex")}> Tj`);
});

test.for(filled)("pdftk reads %s as it was filled", async ([name, values], { skip }) => {
  if (!installed("pdftk")) skip("pdftk is not installed");
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, await fill(name, values));
  const { stdout } = run("pdftk", file, "dump_data_fields_utf8");
  const read = new Map(
    stdout.split("---\n").map((part) => [/^FieldName: (.*)$/m.exec(part)?.[1], part] as const),
  );
  for (const [field, value] of Object.entries(values))
    expect(read.get(field), field).toContain(`FieldValue: ${value === true ? "Yes" : String(value)}\n`);
});

test.for(filled)("qpdf finds nothing wrong with %s, blank and filled", async ([name, values], { skip }) => {
  if (!installed("qpdf")) skip("qpdf is not installed");
  for (const bytes of [blank(name), await fill(name, values)]) {
    const file = join(folder, `${name}-checked.pdf`);
    writeFileSync(file, bytes);
    const { status, stdout, stderr } = run("qpdf", "--check", file);
    expect({ status, stderr }, stdout).toEqual({ status: 0, stderr: "" });
  }
});

test("a field's limit does not keep a longer text out", async () => {
  const bytes = await fill("device-26c", { button1_row1: "CONFERENCE ROOM" });
  expect(await widget(bytes, "button1_row1")).toMatchObject({ fieldValue: "CONFERENCE ROOM", maxLen: 8 });
});

test("letters that the form's font lacks keep their value and are drawn as question marks", async () => {
  // A Cyrillic letter that looks like S, and an emoji, which takes two code units.
  const bytes = await fill("device-26c", { button1_row1: "\u0405TACKS\u{1F600}" });
  expect(await widget(bytes, "button1_row1")).toMatchObject({
    fieldValue: "\u0405TACKS\u{1F600}",
    textContent: ["?TACKS?"],
  });
});

test("a second filling replaces the first, and the file does not grow", async () => {
  const once = await fill("device-26c", { ...deviceValues, layout: "D1", ship_same: true });
  const twice = await fillSheet(once, { layout: "D4", ship_same: false, button1_row1: "EXITS" });
  const { widgets } = await look(twice);
  const on = widgets.filter((one) => one.fieldName === "layout" && one.fieldValue === one.buttonValue);
  expect(on.map((one) => one.buttonValue)).toEqual(["D4"]);
  expect(await widget(twice, "ship_same")).toMatchObject({ fieldValue: "Off" });
  expect(await widget(twice, "button1_row1")).toMatchObject({ fieldValue: "EXITS", textContent: ["EXITS"] });
  expect(Math.abs(twice.length - once.length)).toBeLessThan(100);
});

test.each<[string, SheetValues]>([
  ["no field", { nowhere: "x" }],
  ["no choice", { finish: "Gold" }],
  ["no button", { layout: "D9" }],
  ["true or false", { ship_same: "Yes" }],
  ["the value of a button", { standing: true }],
  ["text", { project: true }],
])("refuses what cannot be filled: %s", async (says, values) => {
  const [field = ""] = Object.keys(values);
  const refused = expect(fill("device-26c", values)).rejects;
  await refused.toThrow(says);
  await refused.toThrow(field);
});

test.each(editions.filter((edition) => !edition.drawn))(
  "the plain $name has the edition's fields",
  async (edition: Edition) => {
    const { widgets, words, subject } = await look(blank(edition.name));
    expect(widgets.map(({ fieldName }) => fieldName)).toEqual(edition.fields.map(({ name }) => name));
    for (const { label } of edition.fields) expect(words).toContain(label);
    expect(subject).toBe(edition.name);
  },
);
