import { type PDFDict, PDFDocument, PDFName, type PDFRawStream, PDFString } from "pdf-lib";
import type { Entries } from "../../make/odd-pdf.ts";

/** A form before something more is done to it. */
export interface Making {
  readonly pdf: PDFDocument;
  readonly page: PDFDict;
  readonly form: PDFDict;
  readonly set: (dict: PDFDict, entries: Entries) => void;
}

/** A form on a page of 300 by 200 points that has some widgets, as it stands in a file. */
export async function madeForm(
  widgets: readonly Entries[],
  change: (making: Making) => void = () => undefined,
): Promise<PDFDocument> {
  const pdf = await PDFDocument.create();
  const { context, catalog } = pdf;
  const { node } = pdf.addPage([300, 200]);
  const set: Making["set"] = (dict, entries) => {
    for (const [key, value] of Object.entries(entries))
      dict.set(PDFName.of(key), context.obj(value as Entries));
  };
  const Contents = context.register(context.stream("q Q", { Length: 3 }));
  const Annots = widgets.map((one) =>
    context.register(context.obj({ Type: "Annot", Subtype: "Widget", Rect: [10, 20, 160, 60], ...one })),
  );
  set(node, { Contents, Annots });
  const form = context.obj({ Fields: Annots, DA: PDFString.of("/Helv 9 Tf") });
  catalog.set(PDFName.of("AcroForm"), form);
  change({ pdf, page: node, form, set });
  return pdf;
}

export const helvetica = {
  Type: "Font",
  Subtype: "Type1",
  BaseFont: "Helvetica",
  Encoding: "WinAnsiEncoding",
};
const { context } = await PDFDocument.create();

/** A field's drawing, 150 points wide and 40 high. */
export function lookOf(content: string | Uint8Array, entries: Entries = {}): PDFRawStream {
  return context.stream(content, {
    Subtype: "Form",
    BBox: [0, 0, 150, 40],
    Length: content.length,
    Resources: { Font: { Helv: helvetica } },
    ...entries,
  });
}

/** A drawing as programs make it, clipped one point from the edge, with such a text. */
export const drawn = (text: string): string =>
  `/Tx BMC q 1 1 148 38 re W n BT /Helv 10 Tf 0 g ${text} ET Q EMC`;
