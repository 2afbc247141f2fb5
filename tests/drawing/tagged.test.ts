import { readFileSync } from "node:fs";
import { PDFContext, PDFDict, PDFDocument, PDFName } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { blankSheet } from "../../src/drawing/blank-sheet.ts";
import { markedCopy } from "../../src/drawing/marked-copy.ts";
import { proofPdf } from "../../src/drawing/proof.ts";
import { embedTypefaces } from "../../src/drawing/typeface/typeface.ts";
import { ourTypefaces } from "../../src/reading/our-look.ts";
import { objectKey } from "../../src/reading/page/content-key.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue, maker, type Shop, trade } from "../make/config.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { readPdf } from "../make/read-pdf.ts";
import { completeOrder } from "../make/sample.ts";
import { alone, orderOf, station } from "./proof-orders.ts";
import { faultsByPoppler, faultsOf } from "./ua.ts";

const proof = (): Promise<Uint8Array> => proofPdf(orderOf(...completeOrder()), catalogue, { revision: 3 });

const drawn = [trade, maker].flatMap(({ catalogue, editions }) =>
  editions.filter((edition) => edition.drawn).map((edition) => ({ edition, catalogue })),
);

/** A sheet, marked twice, as a copy that came back and is marked anew. */
async function marked(bytes: Uint8Array, shop?: Shop): Promise<Uint8Array> {
  const { sheet } = await readPdf(bytes, undefined, shop);
  const problem = { kind: "fail", says: "It is wrong.", fix: "Put it right.", places: ["finish"] } as const;
  const problems = [1, 2].map((number) => ({ ...problem, number }));
  let copy = bytes;
  for (let time = 0; time < 2; time++)
    copy = (await markedCopy(copy, sheet as Sheet, problems)) as Uint8Array;
  return copy;
}

async function markedSample(name: string): Promise<Uint8Array> {
  const sample = (await sampleSheets()).find(({ edition }) => edition === name);
  return marked(sample?.filled ?? new Uint8Array());
}

/**
 * What is typed into a field is shown in the Helvetica that every viewer has, since readers compare it with that. So no
 * sheet that is filled in keeps these two clauses for its fields.
 */
const ofFields: readonly string[] = [
  "7.21.4.1: Helvetica is not in the file",
  "7.21.7: Helvetica has no meanings",
];

interface File {
  readonly name: string;
  readonly make: () => Promise<Uint8Array>;
  readonly known?: readonly string[];
}

const files: readonly File[] = [
  ...drawn.map(({ edition, catalogue }) => ({
    name: `the blank ${edition.name}`,
    make: () => blankSheet(edition, catalogue),
    known: ofFields,
  })),
  { name: "a marked copy of a device sheet", make: () => markedSample("device-26c"), known: ofFields },
  { name: "a marked copy of a plate sheet", make: () => markedSample("plate-26c"), known: ofFields },
  { name: "a proof", make: proof },
  { name: "a proof of one device", make: () => proofPdf(orderOf(alone("D4")), catalogue) },
  { name: "a proof of a plate of six", make: () => proofPdf(orderOf(...station(6)), catalogue) },
];

describe.each(files)("$name keeps PDF/UA-1", ({ make, known = [] }) => {
  test("as pdf.js sees it", async () => {
    expect(await faultsOf(await make())).toEqual([]);
  });

  test("as poppler sees it", async ({ skip }) => {
    const faults = faultsByPoppler(await make());
    if (faults === undefined) skip("poppler is not installed");
    expect(faults).toEqual(known);
  });
});

test("a marked copy of a sheet without tags has none, and does not claim any", async () => {
  const old = new Uint8Array(readFileSync("fixtures/raw/kestrel-left-qpdf.pdf"));
  const copy = await marked(old, maker);
  expect(await faultsOf(copy)).toEqual(
    expect.arrayContaining(["5: no pdfuaid:part", "7.1: not marked", "7.1: nothing tagged on page 2"]),
  );
});

test("the letters of our drawings are those by which marked copies are known", () => {
  const context = PDFContext.create();
  const { plain, bold } = embedTypefaces({ context });
  const keys = [plain, bold].map(({ ref }) => objectKey(context.lookup(ref)));
  expect(keys).toEqual([...ourTypefaces]);
});

const key = (name: string): PDFName => PDFName.of(name);

/** A proof that was changed. */
async function changed(change: (pdf: PDFDocument) => void): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(await proof(), { updateMetadata: false });
  change(pdf);
  return pdf.save();
}

const tags = (pdf: PDFDocument, role: string): PDFDict[] =>
  pdf.context
    .enumerateIndirectObjects()
    .flatMap(([, object]) =>
      object instanceof PDFDict && object.get(key("S")) === key(role) ? [object] : [],
    );

describe("a file that does not keep it is told by its clause", () => {
  test.each<[string, (pdf: PDFDocument) => void]>([
    ["5: no pdfuaid:part", ({ catalog }) => catalog.delete(key("Metadata"))],
    ["7.1: not marked", ({ catalog }) => catalog.delete(key("MarkInfo"))],
    ["7.1: nothing tagged on page 1", ({ catalog }) => catalog.delete(key("StructTreeRoot"))],
    ["7.1: the title is not displayed", ({ catalog }) => catalog.delete(key("ViewerPreferences"))],
    [
      "7.1: content that is not marked on page 1",
      (pdf) => pdf.getPage(0).drawLine({ start: { x: 9, y: 9 }, end: { x: 99, y: 9 } }),
    ],
    ["7.1: content and tags differ on page 1", (pdf) => tags(pdf, "H1")[0]?.delete(key("K"))],
    ["7.2: no language", ({ catalog }) => catalog.delete(key("Lang"))],
    ["7.3: a figure without words on page 1", (pdf) => tags(pdf, "Figure")[0]?.delete(key("Alt"))],
    ["7.4.2: the first heading is no H1", (pdf) => tags(pdf, "H1")[0]?.set(key("S"), key("H2"))],
    ["7.5: a row with more than cells on page 2", (pdf) => tags(pdf, "TH")[0]?.set(key("S"), key("P"))],
    ["7.18.1: Square without words on page 1", annotate],
  ])("%s", async (fault, change) => {
    expect(await faultsOf(await changed(change))).toContain(fault);
  });

  test.for<[string, (pdf: PDFDocument) => void]>([
    ["7.5: a heading of a table without a scope", (pdf) => tags(pdf, "TH")[0]?.delete(key("A"))],
    ["7.21.7: BURINP+Arimo has no meanings", (pdf) => fontOf(pdf)?.delete(key("ToUnicode"))],
    ["7.21.4.1: BURINP+Arimo is not in the file", (pdf) => fontOf(pdf)?.delete(key("FontDescriptor"))],
  ])("%s", async ([fault, change], { skip }) => {
    const faults = faultsByPoppler(await changed(change));
    if (faults === undefined) skip("poppler is not installed");
    expect(faults).toContain(fault);
  });
});

function annotate(pdf: PDFDocument): void {
  const square = pdf.context.obj({ Type: "Annot", Subtype: "Square", Rect: [9, 9, 99, 99] });
  pdf.getPage(0).node.set(key("Annots"), pdf.context.obj([pdf.context.register(square)]));
}

function fontOf(pdf: PDFDocument): PDFDict | undefined {
  const fonts = pdf.getPage(0).node.Resources()?.lookup(key("Font"), PDFDict);
  return fonts?.lookup(key("Plain"), PDFDict);
}
