import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, type PDFPage, type PDFRef } from "pdf-lib";
import type { Entries } from "../../../src/drawing/blank/field-tree.ts";
import type { SampleSheet } from "../odd-sheets/sheets.ts";

/** A way in which a sheet shows something else than its fields hold, or something more. */
export interface Forgery {
  readonly how: string;
  readonly make: (sheet: SampleSheet) => Promise<Uint8Array>;
}

export type Rectangle = readonly [number, number, number, number];

/** A sheet in the hands of somebody who alters it. */
export interface Hand {
  readonly pdf: PDFDocument;
  readonly page: PDFPage;
  readonly sheet: SampleSheet;
  /** A row with a legend, another one, and one that is empty. */
  readonly row: string;
  readonly second: string;
  readonly empty: string;
}

const rows = {
  "device-26c": { row: "button1_row1", second: "button2_row1", empty: "button1_row2" },
  "plate-26c": { row: "gang1_row1", second: "gang2_row1", empty: "gang1_row2" },
} as const;

export function forgery(how: string, alter: (hand: Hand) => void | Promise<void>): Forgery {
  return {
    how,
    make: async (sheet) => {
      const pdf = await PDFDocument.load(sheet.filled, { updateMetadata: false });
      const names = rows[sheet.edition as keyof typeof rows];
      await alter({ pdf, page: pdf.getPage(0), sheet, ...names });
      return pdf.save({ updateFieldAppearances: false });
    },
  };
}

export const name = PDFName.of;
export const widgetsOf = ({ pdf }: Hand, field: string): PDFDict[] =>
  pdf
    .getForm()
    .getField(field)
    .acroField.getWidgets()
    .map(({ dict }) => dict);
export const widgetOf = (hand: Hand, field: string): PDFDict => widgetsOf(hand, field)[0] as PDFDict;
export const rectOf = (widget: PDFDict): Rectangle => {
  const { x, y, width, height } = widget.lookup(name("Rect"), PDFArray).asRectangle();
  return [x, y, x + width, y + height];
};
export const at = (hand: Hand, field: string): Rectangle => rectOf(widgetOf(hand, field));
/** Where nothing is printed: at the foot, and in the right margin. */
export const foot: Rectangle = [40, 2, 200, 14];
export const margin: Rectangle = [760, 200, 790, 400];

export const helvetica = {
  Type: "Font",
  Subtype: "Type1",
  BaseFont: "Helvetica",
  Encoding: "WinAnsiEncoding",
};

/** A drawing of a size, with Helvetica as F. */
export function drawing(
  { pdf }: Hand,
  [l, b, r, t]: Rectangle,
  operators: string,
  resources: Entries = {},
): PDFRef {
  const { context } = pdf;
  return context.register(
    context.stream(operators, {
      Type: "XObject",
      Subtype: "Form",
      BBox: [0, 0, r - l, t - b],
      Resources: { Font: { F: helvetica }, ...resources },
    }),
  );
}

export const says = (text: string, size = 9): string => `BT 0.7 0 0 rg /F ${size} Tf 2 3 Td (${text}) Tj ET`;

export function annotate(
  hand: Hand,
  subtype: string,
  box: Rectangle,
  entries: Entries = {},
  look?: string,
): PDFRef {
  const { context } = hand.pdf;
  const ref = context.register(
    context.obj({
      Type: "Annot",
      Subtype: subtype,
      Rect: [...box],
      F: 4,
      ...(look === undefined ? {} : { AP: { N: drawing(hand, box, look) } }),
      ...entries,
    } as Entries),
  );
  hand.page.node.addAnnot(ref);
  return ref;
}

export const text = (words: string): PDFHexString => PDFHexString.fromText(words);

export function paint({ page }: Hand, operators: string): void {
  page.node.addContentStream(page.doc.context.register(page.doc.context.stream(operators)));
}

export function write(hand: Hand, words: string, x: number, y: number, size = 9): void {
  hand.page.drawText(words, { x, y, size });
}

/** Puts another drawing into a field. */
export function relook(hand: Hand, field: string, operators: string, resources: Entries = {}): void {
  const widget = widgetOf(hand, field);
  widget.set(
    name("AP"),
    hand.pdf.context.obj({ N: drawing(hand, rectOf(widget), operators, resources) } as Entries),
  );
}

export const shown = (words: string, more = ""): string =>
  `/Tx BMC q BT 0.11 0.14 0.15 rg /F 10 Tf ${more} 2 4.9 Td (${words}) Tj ET Q EMC`;

export const valueOf = ({ sheet }: Hand, field: string): string => String(sheet.values[field] ?? "");

/** Quads around a box. ISO 32000-1:2008 table 179 */
export const quads = ([l, b, r, t]: Rectangle): number[] => [l, t, r, t, l, b, r, b];

/** Letters of strokes, without any font: E X I T. */
export const strokes =
  "0.11 0.14 0.15 RG 1 w 3 4 m 3 12 l 8 12 l 3 12 m 3 4 l 8 4 l 3 8 m 7 8 l 11 4 m 17 12 l 11 12 m 17 4 l 20 4 m 20 12 l 23 12 m 29 12 l 26 12 m 26 4 l S";

/** A map by which a font says that its letters are others. ISO 32000-1:2008 §9.10.3 */
export function toUnicode({ pdf }: Hand, pairs: readonly (readonly [string, string])[]): PDFRef {
  const hex = (one: string, digits: number): string =>
    `<${(one.codePointAt(0) ?? 0).toString(16).padStart(digits, "0")}>`;
  const lines = pairs.map(([from, to]) => `${hex(from, 2)} ${hex(to, 4)}`);
  return pdf.context.register(
    pdf.context.stream(
      `/CIDInit /ProcSet findresource begin 12 dict begin begincmap /CMapType 2 def 1 begincodespacerange <00> <ff> endcodespacerange ${lines.length} beginbfchar\n${lines.join("\n")}\nendbfchar endcmap end end`,
    ),
  );
}
