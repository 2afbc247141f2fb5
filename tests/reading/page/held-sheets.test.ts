import { PDFArray, PDFDict, PDFDocument, PDFName, PDFNumber, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import type { Entries } from "../../../src/drawing/blank/field-tree.ts";
import { fillSheet } from "../../../src/drawing/fill-sheet.ts";
import { openPdf } from "../../../src/reading/pdf/open-pdf.ts";
import { editions } from "../../make/config.ts";
import { mutoolClean, pdfjsFill, pdftkFill, qpdf } from "../../make/odd-sheets/by-programs.ts";
import { type SampleSheet, sampleSheets } from "../../make/odd-sheets/sheets.ts";
import { hasProgram } from "../../make/program.ts";

const plain = (await sampleSheets()).find(({ edition }) => edition === "marrowby-device-1") as SampleSheet;
const rowField = "MS.Key1.Line1";

const program = (text: string): Entries => ({ S: "JavaScript", JS: PDFString.of(text) });

/** What forms of others have besides their pages and fields, and what it is told as where their blank has none. */
const things: readonly (readonly [string, string, (pdf: PDFDocument) => void])[] = [
  [
    "a second form",
    "twin",
    (pdf) => {
      const { context } = pdf;
      const [template, data] = ["<template><field name='a'/></template>", "<data><a></a></data>"].map((xml) =>
        context.register(context.stream(xml)),
      );
      const parts = [PDFString.of("template"), template, PDFString.of("datasets"), data];
      formOf(pdf).set(PDFName.of("XFA"), context.obj(parts as never));
    },
  ],
  [
    "a layer",
    "layer",
    ({ catalog, context }) => {
      const layer = context.register(context.obj({ Type: "OCG", Name: PDFString.of("print") } as Entries));
      const properties = { OCGs: [layer], D: { Order: [layer] } } as unknown as Entries;
      catalog.set(PDFName.of("OCProperties"), context.obj(properties));
    },
  ],
  ["a program", "program", (pdf) => pdf.addJavaScript("x", "app.beep();")],
  [
    "a program that runs at once",
    "program",
    ({ catalog, context }) => catalog.set(PDFName.of("OpenAction"), context.obj(program("app.beep();"))),
  ],
  [
    "a program of a page",
    "program",
    (pdf) =>
      pdf.getPage(0).node.set(PDFName.of("AA"), pdf.context.obj({ O: program("app.beep();") } as Entries)),
  ],
  [
    "a program of a field",
    "program",
    (pdf) => rowOf(pdf).set(PDFName.of("AA"), pdf.context.obj({ K: program("event.rc = true;") } as Entries)),
  ],
  [
    "a file that belongs to it",
    "file",
    ({ catalog, context }) => {
      const file = context.register(context.stream("<a/>", { Type: "EmbeddedFile" }));
      const entries = { Type: "Filespec", F: PDFString.of("a.xml"), EF: { F: file } } as unknown as Entries;
      catalog.set(PDFName.of("AF"), context.obj([context.register(context.obj(entries))]));
    },
  ],
  [
    "a link with a border",
    "laid",
    (pdf) =>
      annotate(pdf, {
        Subtype: "Link",
        Border: [0, 0, 1],
        A: { S: "URI", URI: PDFString.of("https://marrowby.example/") },
      }),
  ],
  [
    "a button",
    "program",
    (pdf) => {
      const fields = formOf(pdf).lookup(PDFName.of("Fields"), PDFArray);
      const A = { S: "ResetForm", Fields: [pdf.context.getObjectRef(rowOf(pdf))] };
      fields.push(annotate(pdf, { Subtype: "Widget", FT: "Btn", Ff: 65_536, T: PDFString.of("clear"), A }));
    },
  ],
  ["a tip", "laid", (pdf) => rowOf(pdf).set(PDFName.of("TU"), PDFString.of("First line"))],
  [
    "another look under the pointer",
    "field",
    (pdf) => {
      const look = pdf.context.register(
        pdf.context.stream("0.9 g 0 0 9 9 re f", { Type: "XObject", Subtype: "Form", BBox: [0, 0, 9, 9] }),
      );
      rowOf(pdf).lookup(PDFName.of("AP"), PDFDict).set(PDFName.of("R"), look);
    },
  ],
];

function formOf({ catalog }: PDFDocument): PDFDict {
  return catalog.lookup(PDFName.of("AcroForm"), PDFDict);
}

function rowOf(pdf: PDFDocument): PDFDict {
  return pdf.getForm().getTextField(rowField).acroField.dict;
}

function annotate(pdf: PDFDocument, entries: Entries): ReturnType<PDFDocument["context"]["register"]> {
  const ref = pdf.context.register(
    pdf.context.obj({ Type: "Annot", Rect: [20, 4, 80, 14], F: PDFNumber.of(4), ...entries } as Entries),
  );
  pdf.getPage(0).node.addAnnot(ref);
  return ref;
}

async function changed(bytes: Uint8Array, ...changes: readonly ((pdf: PDFDocument) => void)[]) {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false, preserveXFA: true });
  for (const change of changes) change(pdf);
  return pdf.save({ updateFieldAppearances: false });
}

async function differences(bytes: Uint8Array, blank: Uint8Array): Promise<string[] | undefined> {
  const facts = await openPdf(bytes, undefined, { editions, blanks: new Map([[plain.edition, blank]]) });
  return facts.kind === "pdf" ? facts.differences?.map(({ what }) => what) : undefined;
}

const rich = await changed(plain.blank, ...things.map(([, , add]) => add));

describe("a sheet on a form of others with all of it in its blank raises nothing", () => {
  test.for<[string, () => Uint8Array | Promise<Uint8Array>, string?, string?]>([
    ["filled by us", () => fillSheet(rich, plain.values)],
    ["filled by pdf.js", () => pdfjsFill(rich, plain.values)],
    ["filled by pdftk", () => pdftkFill(rich, plain.values), "pdftk"],
    ["drawn by its viewer", () => pdftkFill(rich, plain.values, "need_appearances"), "pdftk"],
    ["saved anew by qpdf", async () => qpdf(await fillSheet(rich, plain.values), "--linearize"), "qpdf"],
    ["saved anew by MuPDF", async () => mutoolClean(await fillSheet(rich, plain.values)), "mutool", "-v"],
  ])("%s", async ([, make, needs, ask], { skip }) => {
    if (needs !== undefined && !hasProgram(needs, ask)) skip(`${needs} is not installed`);
    expect(await differences(await make(), rich)).toEqual([]);
  });
});

describe("what the blank of a form has not is a difference on its sheet", () => {
  test.each(things)("%s", async (_, what, add) => {
    expect(await differences(await changed(plain.filled, add), plain.blank)).toContain(what);
  });
  test.each([
    ["a program", "program", (pdf: PDFDocument) => pdf.addJavaScript("x", "app.alert('EXIT');")],
    ["a tip", "laid", (pdf: PDFDocument) => rowOf(pdf).set(PDFName.of("TU"), PDFString.of("Another tip"))],
  ] as const)("%s that is another than the blank's", async (name, what, other) => {
    const own = things.find(([one]) => one === name)?.[2] ?? other;
    expect(await differences(await changed(plain.filled, other), await changed(plain.blank, own))).toContain(
      what,
    );
  });
});

describe("a second form that the blank has too", () => {
  const [[, , second]] = things as [readonly [string, string, (pdf: PDFDocument) => void]];
  const typed = (words: string) => (pdf: PDFDocument) => {
    second(pdf);
    const data = pdf.context.register(pdf.context.stream(`<data><a>${words}</a></data>`));
    formOf(pdf).lookup(PDFName.of("XFA"), PDFArray).set(3, data);
  };
  test("may hold what the fields hold", async () => {
    const blank = await changed(plain.blank, second);
    expect(await differences(await changed(plain.filled, typed("MEETING")), blank)).toEqual([]);
  });
  test("may hold it without the blanks around it, line by line", async () => {
    const values = { ...plain.values, [rowField]: " MEETING " };
    const sheet = await changed(await fillSheet(plain.blank, values), typed("MEETING"));
    expect(await differences(sheet, await changed(plain.blank, second))).toEqual([]);
  });
  test("may hold nothing else", async () => {
    const blank = await changed(plain.blank, second);
    expect(await differences(await changed(plain.filled, typed("EXIT")), blank)).toEqual(["twin"]);
  });
});
