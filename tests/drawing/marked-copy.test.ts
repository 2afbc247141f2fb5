import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { degrees, PDFDict, PDFDocument, PDFHexString, PDFName } from "pdf-lib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { fillSheet, type SheetValues } from "../../src/drawing/fill-sheet.ts";
import type { MarkedProblem } from "../../src/drawing/marked/problem.ts";
import { markedCopy } from "../../src/drawing/marked-copy.ts";
import type { Box } from "../../src/reading/facts.ts";
import { withPdf } from "../../src/reading/pdf/pdf.ts";
import type { Annotation } from "../../src/reading/pdf/pdfjs-annotations.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { maker, type Shop } from "../make/config.ts";
import { hybridXfa, signed, textBox } from "../make/odd-sheets/by-hand.ts";
import { mutoolClean, pdfjsFill, pdftkFill, qpdf } from "../make/odd-sheets/by-programs.ts";
import { type SampleSheet, sampleSheets } from "../make/odd-sheets/sheets.ts";
import { readPdf } from "../make/read-pdf.ts";
import { aloneDevice } from "../make/sample.ts";
import { installed, look, run } from "./look.ts";

const folder = mkdtempSync(join(tmpdir(), "burin-marked-"));
afterAll(() => rmSync(folder, { recursive: true }));

const problem = (number: number, ...places: MarkedProblem["places"]): MarkedProblem => ({
  number,
  kind: "fail",
  says: `Number ${number} is wrong.`,
  fix: `Put number ${number} right.`,
  places,
});

/** What is wrong with each form, and the fields that say so. */
const faults: Readonly<Record<string, { problems: MarkedProblem[]; fields: string[]; mended: SheetValues }>> =
  {
    "device-26c": {
      problems: [problem(1, "row.2.1", "finish"), problem(2, "row.2.1")],
      fields: ["button2_row1", "finish"],
      mended: { button2_row1: "SHELVES", finish: "Chalk" },
    },
    "plate-26c": {
      problems: [problem(4, "row.4.1"), { ...problem(5, "ship.same"), kind: "confirm" }],
      fields: ["gang4_row1", "ship_same"],
      mended: { gang4_row1: "MEETING" },
    },
    "marrowby-device-1": {
      problems: [problem(3, "row.1.1"), { ...problem(7), kind: "person" }],
      fields: ["MS.Key1.Line1"],
      mended: { "MS.Key1.Line1": "TALKS" },
    },
  };

let samples: readonly SampleSheet[] = [];
beforeAll(async () => {
  samples = await sampleSheets();
});
const names = Object.keys(faults);
const sampleOf = (name: string): SampleSheet =>
  samples.find(({ edition }) => edition === name) as SampleSheet;
const faultsOf = (name: string) => faults[name] as (typeof faults)[string];

async function sheetIn(bytes: Uint8Array, shop?: Shop): Promise<Sheet> {
  return (await readPdf(bytes, undefined, shop)).sheet as Sheet;
}

/** A marked copy. Fails where there is none. */
async function marked(
  bytes: Uint8Array,
  problems: readonly MarkedProblem[],
  shop?: Shop,
): Promise<Uint8Array> {
  const copy = await markedCopy(bytes, await sheetIn(bytes, shop), problems);
  expect(copy).toBeDefined();
  return copy as Uint8Array;
}

const markedSample = (name: string): Promise<Uint8Array> =>
  marked(sampleOf(name).filled, faultsOf(name).problems);

/** What stands on the first page besides its content. */
function annotationsIn(bytes: Uint8Array): Promise<Annotation[]> {
  return withPdf(bytes, async (pdf) => (await pdf.getPage(1)).getAnnotations() as Promise<Annotation[]>);
}

function said(annotations: readonly Annotation[], subtype: string): (string | undefined)[] {
  return annotations.filter((one) => one.subtype === subtype).map(({ contentsObj }) => contentsObj?.str);
}

/** How far a box reaches beyond another, on each side. */
function beyond(outer: Box, inner: Box): number[] {
  return [inner[0] - outer[0], inner[1] - outer[1], outer[2] - inner[2], outer[3] - inner[3]];
}

describe.each(names)("%s", (name) => {
  test("is read as before", async () => {
    const { filled } = sampleOf(name);
    const copy = await markedSample(name);
    const [before, after] = [await readPdf(filled), await readPdf(copy)];
    expect(after).toEqual(before);
    expect(after.sheet?.doubts).toEqual([]);
    const fields = async (bytes: Uint8Array) =>
      (await look(bytes)).widgets.filter(({ fieldName }) => fieldName);
    // With order, tooltips, limits and choices.
    expect(await fields(copy)).toEqual(await fields(filled));
  });

  test("keeps every byte of what was sent", async () => {
    const { filled } = sampleOf(name);
    const copy = await markedSample(name);
    expect(Buffer.from(copy.subarray(0, filled.length)).equals(filled)).toBe(true);
    // Of these, 25,000 are the letters of two typefaces.
    expect(copy.length - filled.length).toBeLessThan(40_000);
  });

  test("has each faulty field outlined and numbered", async () => {
    const { fields, problems } = faultsOf(name);
    const annotations = await annotationsIn(await markedSample(name));
    for (const field of fields) {
      const at = annotations.findIndex(({ fieldName }) => fieldName === field);
      const box = (annotations[at] as Annotation).rect;
      const around = (one: Annotation): boolean =>
        one.subtype === "Square" && beyond(one.rect, box).every((side) => side > 0 && side < 4);
      const outlines = annotations.filter(around);
      expect(outlines, field).toHaveLength(1);
      // Under the field, which gets the clicks.
      expect(annotations.findIndex(around), field).toBeLessThan(at);
      expect(outlines[0]?.contentsObj?.str, field).toContain(problems[0]?.says.slice(0, 7));
    }
    expect(said(annotations, "Square")).toHaveLength(fields.length + 1);
    expect(said(annotations, "FreeText")).toHaveLength(fields.length);
  });

  test("lists the problems on a last page", async () => {
    const { problems } = faultsOf(name);
    const { filled } = sampleOf(name);
    const [before, after] = [await look(filled), await look(await markedSample(name))];
    expect(after.pages).toBe(before.pages + 1);
    const { prints } = await sheetIn(filled);
    for (const { number, says, fix, places } of problems)
      for (const text of [String(number), says, fix, ...places.map((place) => prints[place]?.label ?? "")])
        expect(after.words).toContain(text);
  });

  test.for<[string, (bytes: Uint8Array, values: SheetValues) => Uint8Array | Promise<Uint8Array>]>([
    ["node", fillSheet],
    ["node", pdfjsFill],
    ["pdftk", pdftkFill],
    ["mutool", async (bytes, values) => mutoolClean(await fillSheet(bytes, values))],
    ["qpdf", async (bytes, values) => qpdf(await fillSheet(bytes, values), "--object-streams=generate")],
  ])("is a plain sheet when it comes back corrected by way of %s", async ([program, fill], { skip }) => {
    if (!installed(program)) skip(`${program} is not installed`);
    const { filled } = sampleOf(name);
    const { mended } = faultsOf(name);
    const back = await readPdf(await fill(await markedSample(name), mended));
    expect(back).toEqual(await readPdf(await fillSheet(filled, mended)));
    expect(back.sheet?.doubts).toEqual([]);
  });

  test("marked again has the new marks and list alone", async () => {
    const once = await markedSample(name);
    const [place] = faultsOf(name).problems.flatMap(({ places }) => places);
    const twice = await marked(once, [problem(9, place as "finish")]);
    const annotations = await annotationsIn(twice);
    expect(said(annotations, "FreeText")).toEqual(["9"]);
    expect(said(annotations, "Square")).toHaveLength(2);
    const { pages, words } = await look(twice);
    expect(pages).toBe((await look(once)).pages);
    expect(words).toContain("Number 9 is wrong.");
    for (const { says } of faultsOf(name).problems) expect(words).not.toContain(says);
  });

  test.for([
    ["qpdf", "--check"],
    ["pdftoppm", "-r", "20"],
    ["gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=nullpage"],
    ["mutool", "info"],
  ])("is opened by %s without complaint", async ([program = "", ...how], { skip }) => {
    if (!installed(program)) skip(`${program} is not installed`);
    const file = join(folder, `${name}.pdf`);
    writeFileSync(file, await markedSample(name));
    const { status, stderr } = run(
      program,
      ...how,
      file,
      ...(program === "pdftoppm" ? [join(folder, "page")] : []),
    );
    expect({ status, stderr: stderr.replace("warning: ICC support is not available\n", "") }).toEqual({
      status: 0,
      stderr: "",
    });
  });
});

test.for([
  "kestrel-plate-pdftk",
  "kestrel-left-qpdf",
  "kestrel-right-pdfjs",
  "kirkmere-desk-chromium",
  "kirkmere-half-written-qpdf",
  "marrowby-two-layouts-mupdf",
])("%s, filled by another program, is marked and read as before", async (file) => {
  const bytes = readFileSync(`fixtures/raw/${file}.pdf`);
  const copy = await marked(bytes, [problem(1, "mark", "layout"), problem(2, "order")], maker);
  expect(await readPdf(copy, undefined, maker)).toEqual(await readPdf(bytes, undefined, maker));
  const numbers = said(await annotationsIn(copy), "FreeText");
  expect(numbers).toContain("1");
  expect(numbers).toContain("2");
  if (!installed("qpdf")) return;
  const path = join(folder, `${file}.pdf`);
  writeFileSync(path, copy);
  expect(run("qpdf", "--check", path)).toMatchObject({ status: 0, stderr: "" });
});

test("boxes of which one is to be ticked share an outline", async () => {
  const bytes = readFileSync("fixtures/raw/marrowby-two-layouts-mupdf.pdf");
  const annotations = await annotationsIn(await marked(bytes, [problem(1, "layout")], maker));
  const boxes = annotations.filter(({ fieldName }) => /MS\.(One|Three|Five|Eight)$/.test(fieldName ?? ""));
  expect(boxes).toHaveLength(4);
  const [outline, ...others] = annotations.filter((one) => one.subtype === "Square" && one.rect[3] < 700);
  expect(others).toEqual([]);
  for (const { rect } of boxes)
    expect(Math.min(...beyond((outline as Annotation).rect, rect))).toBeGreaterThan(0);
});

test("on a page that lies on its side, numbers stand where one sees the upper right corner", async () => {
  const pdf = await PDFDocument.load(sampleOf("device-26c").filled, { updateMetadata: false });
  pdf.getPage(0).setRotation(degrees(90));
  const turned = await pdf.save({ updateFieldAppearances: false });
  const annotations = await annotationsIn(await marked(turned, [problem(1, "notes")]));
  const [left, , , top] = (annotations.find(({ fieldName }) => fieldName === "notes") as Annotation).rect;
  const number = annotations.find(({ subtype }) => subtype === "FreeText") as Annotation;
  expect(Math.min(...beyond(number.rect, [left, top, left, top]))).toBeGreaterThan(0);
});

describe("a file that must not be changed", () => {
  const sealed: readonly (readonly [
    string,
    (bytes: Uint8Array) => Uint8Array | Promise<Uint8Array>,
    string?,
  ])[] = [
    ["signed", signed],
    ["with an XFA form beside its own", hybridXfa],
    ["locked against changes", (bytes) => qpdf(bytes, "--encrypt", "", "owner", "256", "--"), "qpdf"],
    ["that opens with a password", () => readFileSync("fixtures/raw/kirkmere-locked-qpdf.pdf")],
  ];
  test.for(sealed)("%s: the list comes alone", async ([, make, program = "node"], { skip }) => {
    if (!installed(program)) skip(`${program} is not installed`);
    const bytes = await make(sampleOf("device-26c").filled);
    const list = (await markedCopy(bytes, aloneDevice(), [problem(1, "finish"), problem(2)])) as Uint8Array;
    const { pages, widgets, words } = await look(list);
    expect({ pages, widgets }).toEqual({ pages: 1, widgets: [] });
    for (const text of ["signed, locked", "Finish", "Number 1 is wrong.", "Put number 2 right."])
      expect(words).toContain(text);
  });
});

test.each([
  ["no PDF", () => Buffer.from("LOBBY")],
  ["a sheet cut short", () => readFileSync("fixtures/raw/kirkmere-cut-short.pdf")],
  ["bytes before the header", () => Buffer.concat([Buffer.from("\r\n\r\n"), sampleOf("device-26c").filled])],
])("%s cannot be marked", async (_, bytes) => {
  expect(await markedCopy(bytes(), aloneDevice(), [problem(1, "finish")])).toBeUndefined();
});

test("what somebody else wrote on the page stays, and stays in doubt", async () => {
  const bytes = await textBox(sampleOf("device-26c").filled, "EXITS", "button1_row1");
  const copy = await marked(bytes, [problem(1, "row.1.1")]);
  expect((await sheetIn(copy)).doubts).toMatchObject([
    { what: "typed-over", place: "row.1.1", text: "EXITS" },
  ]);
  expect(new Set(said(await annotationsIn(copy), "FreeText"))).toEqual(new Set(["1", "EXITS"]));
});

test("a number that was written over is read like any other text", async () => {
  const pdf = await PDFDocument.load(await markedSample("device-26c"), { updateMetadata: false });
  for (const [, object] of pdf.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFDict) || object.get(PDFName.of("Subtype")) !== PDFName.of("FreeText"))
      continue;
    object.set(PDFName.of("Contents"), PDFHexString.fromText("SHELVES"));
    object.delete(PDFName.of("AP"));
  }
  const { doubts } = await sheetIn(await pdf.save({ updateFieldAppearances: false }));
  expect(doubts).toContainEqual(
    expect.objectContaining({ what: "typed-over", place: "row.2.1", text: "SHELVES" }),
  );
});

test("more problems than a page holds run on, and are all taken away again", async () => {
  const { filled } = sampleOf("plate-26c");
  const many = Array.from({ length: 30 }, (_, i) => problem(i + 1, "finish"));
  const copy = await marked(filled, many);
  const { pages, words } = await look(copy);
  expect(pages).toBeGreaterThan(3);
  for (const { says } of many) expect(words).toContain(says);
  expect((await look(await marked(copy, [problem(1)]))).pages).toBe(2);
});

test.each([
  [
    ["fail", "confirm"],
    "What to correct",
    "Correct the numbered fields on the sheet itself, save the file and send it again.",
  ],
  [
    ["confirm", "person"],
    "What we ask",
    "Answer in a reply to our letter. To change something, correct the numbered fields on the sheet itself, save the file and send it again.",
  ],
  [
    ["person"],
    "What one of us looks at",
    "One of us writes to you. To change something, correct the numbered fields on the sheet itself, save the file and send it again.",
  ],
] as const)("the list of %s is called by what it wants: %s", async (kinds, title, todo) => {
  const problems = kinds.map((kind, i) => ({ ...problem(i + 1, "row.2.1"), kind }));
  const { words } = await look(await marked(sampleOf("device-26c").filled, problems));
  const titles = ["What to correct", "What we ask", "What one of us looks at"];
  expect(titles.filter((one) => words.includes(one))).toEqual([title]);
  expect(words).toContain(todo);
});

test("words of any letters and length are listed", async () => {
  const says = `\u0405TACKS \u{1F600}\n${"long ".repeat(2000)}${"x".repeat(500)}`;
  const { words } = await look(await marked(sampleOf("device-26c").filled, [{ ...problem(1), says }]));
  expect(words).toContain("?TACKS ?");
  expect(words).toContain("Put number 1 right.");
});
