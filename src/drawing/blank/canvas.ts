import { type Color, PDFDocument, type PDFFont, PDFName, type PDFPage, rgb, StandardFonts } from "pdf-lib";

/** A rectangle in points. `y` is its upper edge, measured downwards from the top of the page, as one reads. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A page being drawn, and the two fonts it is drawn with. */
export interface Canvas {
  readonly document: PDFDocument;
  readonly page: PDFPage;
  readonly plain: PDFFont;
  readonly bold: PDFFont;
}

/** Colours of every sheet: ink on paper, one accent, pale panels under white fields. */
export const palette = {
  ink: "#1D2426",
  quiet: "#5C6463",
  accent: "#5A2D58",
  star: "#A8472B",
  line: "#B4AE9F",
  panel: "#F5F3F5",
  face: "#E9DEEA",
  plate: "#E6E1DC",
  paper: "#FFFFFF",
} as const;

/** US Letter in points. */
export const letter = { short: 612, long: 792 } as const;

/**
 * An empty document. The library's dates and producer are left out, so that the same edition and catalogue always
 * make the same bytes.
 */
export async function startDocument(): Promise<Omit<Canvas, "page">> {
  const document = await PDFDocument.create({ updateMetadata: false });
  return {
    document,
    plain: document.embedStandardFont(StandardFonts.Helvetica),
    bold: document.embedStandardFont(StandardFonts.HelveticaBold),
  };
}

/** Another page, `width` by `height` points. The Tab key visits its fields in the order in which they are made. */
export function addPage(document: PDFDocument, width: number, height: number): PDFPage {
  const page = document.addPage([width, height]);
  // ISO 32000-2, table 31: W is the order of the widgets in the page's annotations.
  page.node.set(PDFName.of("Tabs"), PDFName.of("W"));
  return page;
}

export interface Writing {
  readonly size: number;
  readonly colour?: string;
  readonly bold?: boolean;
  /** Which part of the text stands at `x`. */
  readonly align?: "left" | "centre" | "right";
}

/** One line of text; `y` is its baseline. Returns the x at which it ends. */
export function write(canvas: Canvas, text: string, x: number, y: number, writing: Writing): number {
  const { size, colour = palette.ink, bold = false, align = "left" } = writing;
  const font = bold ? canvas.bold : canvas.plain;
  const width = font.widthOfTextAtSize(text, size);
  const left = x - { left: 0, centre: width / 2, right: width }[align];
  canvas.page.drawText(text, {
    x: left,
    y: canvas.page.getHeight() - y,
    size,
    font,
    color: colourOf(colour),
  });
  return left + width;
}

export interface Look {
  readonly fill?: string;
  readonly stroke?: string;
  readonly thickness?: number;
  /** Of the corners, in points. */
  readonly radius?: number;
}

/** A rectangle, its corners rounded if the look says so. */
export function block({ page }: Canvas, box: Box, { fill, stroke, thickness = 0.7, radius = 0 }: Look): void {
  page.drawRectangle({
    x: box.x,
    y: page.getHeight() - box.y - box.height,
    width: box.width,
    height: box.height,
    ...(radius === 0 ? {} : { rx: radius, ry: radius }),
    ...(fill === undefined ? {} : { color: colourOf(fill) }),
    ...(stroke === undefined ? {} : { borderColor: colourOf(stroke), borderWidth: thickness }),
  });
}

/** A circle around (`x`, `y`). */
export function disc({ page }: Canvas, x: number, y: number, radius: number, look: Look): void {
  const { fill, stroke, thickness = 0.7 } = look;
  page.drawCircle({
    x,
    y: page.getHeight() - y,
    size: radius,
    ...(fill === undefined ? {} : { color: colourOf(fill) }),
    ...(stroke === undefined ? {} : { borderColor: colourOf(stroke), borderWidth: thickness }),
  });
}

/** A line through points given as [x, y], y from the top. */
export function stroke(
  { page }: Canvas,
  points: readonly (readonly [number, number])[],
  {
    colour = palette.line,
    thickness = 0.7,
    dash,
  }: { colour?: string; thickness?: number; dash?: number[] } = {},
): void {
  points.slice(1).forEach(([x, y], i) => {
    const [fromX, fromY] = points[i] ?? [x, y];
    page.drawLine({
      start: { x: fromX, y: page.getHeight() - fromY },
      end: { x, y: page.getHeight() - y },
      thickness,
      color: colourOf(colour),
      ...(dash === undefined ? {} : { dashArray: dash }),
    });
  });
}

/** The box without a margin on every side; the second margin is the upper and lower one. */
export function inset(box: Box, across: number, down = across): Box {
  return { x: box.x + across, y: box.y + down, width: box.width - 2 * across, height: box.height - 2 * down };
}

/** Red, green and blue of `#RRGGBB`, each from 0 to 1. */
export function partsOf(hex: string): [number, number, number] {
  const part = (at: number): number => Number.parseInt(hex.slice(at, at + 2), 16) / 255;
  return [part(1), part(3), part(5)];
}

function colourOf(hex: string): Color {
  return rgb(...partsOf(hex));
}
