import { PDFDocument, PDFName, StandardFonts } from "pdf-lib";
import { Encodings, Font, FontNames } from "pdf-lib/standard-fonts";
import { withRendered } from "./pdfium.ts";
import { brightness, type Picture } from "./picture.ts";

/**
 * A letter as PDFium draws it. Its ink is added up from the upper left corner, so that the ink of any rectangle takes
 * four look-ups.
 */
export interface Glyph {
  /** The side of the cell that it was drawn into, in pixels. */
  readonly side: number;
  readonly sums: Float32Array;
  /** Where the ink is, as parts of the font's size: from the pen, and from the baseline up. */
  readonly ink: {
    readonly left: number;
    readonly right: number;
    readonly bottom: number;
    readonly top: number;
  };
  /** How far the pen moves on, as a part of the font's size. */
  readonly advance: number;
}

/** The letters of Helvetica by character. Characters that it does not have are missing. */
export type Glyphs = ReadonlyMap<string, Glyph>;

/**
 * In pixels: the size of the font, the side of a cell, and where the pen begins in a cell, from the left and from
 * above.
 */
export const drawn = { size: 48, cell: 80, left: 16, baseline: 56 } as const;
const columns = 16;

const helvetica = Font.load(FontNames.Helvetica);
const { WinAnsi } = Encodings;

let making: Promise<Glyphs> | undefined;

/** The letters of Helvetica, in which forms are filled in. Drawn once a process. */
export function helveticaGlyphs(): Promise<Glyphs> {
  making ??= makeGlyphs();
  return making;
}

async function makeGlyphs(): Promise<Glyphs> {
  const codes = WinAnsi.supportedCodePoints.filter((point) => point > 32 && point !== 0xa0);
  const rows = Math.ceil(codes.length / columns);
  const [width, height] = [columns * drawn.cell, rows * drawn.cell];
  const document = await PDFDocument.create({ updateMetadata: false });
  const font = document.embedStandardFont(StandardFonts.Helvetica);
  const page = document.addPage([width, height]);
  page.node.setFontDictionary(PDFName.of("F"), font.ref);
  const shown = codes.map((point, i) => {
    const { code } = WinAnsi.encodeUnicodeCodePoint(point);
    const x = (i % columns) * drawn.cell + drawn.left;
    const y = height - Math.floor(i / columns) * drawn.cell - drawn.baseline;
    return `1 0 0 1 ${x} ${y} Tm <${code.toString(16).padStart(2, "0")}> Tj`;
  });
  page.node.addContentStream(
    document.context.register(document.context.stream(`BT /F ${drawn.size} Tf ${shown.join(" ")} ET`)),
  );
  const picture = await withRendered(await document.save(), (pdf) => pdf.render({ page: 1, width, height }));
  if (picture === undefined) throw new Error("PDFium cannot open a page of letters");
  return new Map(codes.map((point, i) => [String.fromCodePoint(point), glyphIn(picture, i, point)] as const));
}

function glyphIn({ width, pixels }: Picture, index: number, point: number): Glyph {
  const { cell, size } = drawn;
  const [left, top] = [(index % columns) * cell, Math.floor(index / columns) * cell];
  const side = cell + 1;
  const sums = new Float32Array(side * side);
  const ink: Record<keyof Glyph["ink"], number> = { left: cell, right: 0, bottom: 0, top: cell };
  for (let y = 0; y < cell; y++)
    for (let x = 0; x < cell; x++) {
      const dark = 1 - brightness(pixels[(top + y) * width + left + x] ?? 0) / 255;
      sums[(y + 1) * side + x + 1] =
        dark + (sums[y * side + x + 1] ?? 0) + (sums[(y + 1) * side + x] ?? 0) - (sums[y * side + x] ?? 0);
      if (dark < 0.5) continue;
      ink.left = Math.min(ink.left, x);
      ink.right = Math.max(ink.right, x + 1);
      ink.top = Math.min(ink.top, y);
      ink.bottom = Math.max(ink.bottom, y + 1);
    }
  return {
    side,
    sums,
    ink: {
      left: (ink.left - drawn.left) / size,
      right: (ink.right - drawn.left) / size,
      bottom: (drawn.baseline - ink.bottom) / size,
      top: (drawn.baseline - ink.top) / size,
    },
    advance: advanceOf(point),
  };
}

/** How far the pen moves on after a character. */
export function advanceOf(point: number): number {
  const { name } = WinAnsi.encodeUnicodeCodePoint(point);
  return (helvetica.getWidthOfGlyph(name) ?? 0) / 1000;
}
