import { PDFDict, PDFDocument, PDFName } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { proofPdf } from "../../src/drawing/proof.ts";
import { catalogue } from "../make/config.ts";
import { completeOrder } from "../make/sample.ts";
import { alone, orderOf, station } from "./proof-orders.ts";
import { faultsByPoppler, faultsOf } from "./ua.ts";

const proof = (): Promise<Uint8Array> => proofPdf(orderOf(...completeOrder()), catalogue, { revision: 3 });

const files: readonly (readonly [string, () => Promise<Uint8Array>])[] = [
  ["a proof", proof],
  ["a proof of one device", () => proofPdf(orderOf(alone("D4")), catalogue)],
  ["a proof of a plate of six", () => proofPdf(orderOf(...station(6)), catalogue)],
];

describe.each(files)("%s keeps PDF/UA-1", (_, make) => {
  test("as pdf.js sees it", async () => {
    expect(await faultsOf(await make())).toEqual([]);
  });

  test("as poppler sees it", async ({ skip }) => {
    const faults = faultsByPoppler(await make());
    if (faults === undefined) skip("poppler is not installed");
    expect(faults).toEqual([]);
  });
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
