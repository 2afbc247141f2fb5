import {
  beginText,
  type Color,
  endText,
  type PDFDocument,
  PDFName,
  PDFOperator,
  PDFOperatorNames,
  type PDFPage,
  type PDFRef,
  rgb,
  setFillingRgbColor,
  setFontAndSize,
  setTextMatrix,
  showText,
} from "pdf-lib";
import {
  addTag,
  type Pieces,
  type Role,
  type Said,
  type Structure,
  startPage,
  startStructure,
  type Tag,
} from "../tagged/structure.ts";
import { startTagged } from "../tagged/tagged-document.ts";
import { embedTypefaces, type Typefaces } from "../typeface/typeface.ts";

/** A rectangle in points. `y` is its upper edge, measured downwards from the top of the page, as one reads. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A document being drawn: the letters of its print, and the font in which its fields are filled in. */
export interface Drawn extends Typefaces {
  readonly document: PDFDocument;
  readonly helvetica: PDFRef;
  readonly tagging: Tagging;
}

/** A page being drawn. */
export interface Canvas extends Drawn, Pieces {
  readonly page: PDFPage;
}

/** Where in the tree of tags what is drawn next belongs. */
export interface Tagging {
  readonly structure: Structure;
  at: Tag;
  /** Whether all that is drawn is of one piece, such as a picture. */
  whole: boolean;
}

/** Colours of every sheet: ink on paper, one accent, pale panels under white fields. */
export const palette = {
  ink: "#1D2426",
  quiet: "#5C6463",
  accent: "#5A2D58",
  star: "#A8472B",
  line: "#B4AE9F",
  /** Around fields: 3 to 1 against paper, panels, faces and plates (WCAG 2.1, 1.4.11). */
  frame: "#77716A",
  panel: "#F5F3F5",
  face: "#E9DEEA",
  plate: "#E6E1DC",
  paper: "#FFFFFF",
} as const;

/** US Letter in points. */
export const letter = { short: 612, long: 792 } as const;

export async function startDocument(title: string): Promise<Drawn> {
  const document = await startTagged(title);
  const structure = startStructure(document);
  const helvetica = document.context.obj({
    Type: "Font",
    Subtype: "Type1",
    BaseFont: "Helvetica",
    Encoding: "WinAnsiEncoding",
  });
  return {
    document,
    ...embedTypefaces(document),
    helvetica: document.context.register(helvetica),
    tagging: { structure, at: structure.top, whole: false },
  };
}

/** Another page, `width` by `height` points. The Tab key visits its fields in the order in which they are made. */
export function addPage(drawn: Drawn, width: number, height: number): Canvas {
  const page = drawn.document.addPage([width, height]);
  // ISO 14289-1:2014 §7.18.3: S is the order of the tags.
  page.node.set(PDFName.of("Tabs"), PDFName.of("S"));
  page.node.setFontDictionary(PDFName.of("Plain"), drawn.plain.ref);
  page.node.setFontDictionary(PDFName.of("Bold"), drawn.bold.ref);
  return { ...drawn, page, ...startPage(drawn.tagging.structure, page) };
}

/** Draws what belongs together, such as a section or the row of a table. */
export function within(canvas: Canvas, role: Role, draw: () => void): void {
  const { tagging } = canvas;
  const above = tagging.at;
  tagging.at = addTag(tagging.structure, above, role);
  draw();
  tagging.at = above;
}

/** Draws something that is of one piece, such as a picture or a heading with its number. */
export function whole<T>(canvas: Canvas, role: Role, said: Said, draw: () => T): T {
  const { tagging } = canvas;
  if (tagging.whole) return draw();
  const piece = canvas.piece(addTag(tagging.structure, tagging.at, role, said));
  return marked(canvas, `/${role}`, `<</MCID ${piece}>>`, draw);
}

/** Draws what says nothing by itself. ISO 32000-1:2008 §14.8.2.2 */
function decoration(canvas: Canvas, draw: () => void): void {
  if (canvas.tagging.whole) draw();
  else marked(canvas, "/Artifact", undefined, draw);
}

/** ISO 32000-1:2008 §14.6 */
function marked<T>(
  { page, tagging }: Canvas,
  name: string,
  properties: string | undefined,
  draw: () => T,
): T {
  const { BeginMarkedContent, BeginMarkedContentSequence, EndMarkedContent } = PDFOperatorNames;
  page.pushOperators(
    properties === undefined
      ? PDFOperator.of(BeginMarkedContent, [name])
      : PDFOperator.of(BeginMarkedContentSequence, [name, properties]),
  );
  tagging.whole = true;
  const drawn = draw();
  tagging.whole = false;
  page.pushOperators(PDFOperator.of(EndMarkedContent));
  return drawn;
}

export interface Writing {
  readonly size: number;
  readonly colour?: string;
  readonly bold?: boolean;
  /** Which part of the text stands at `x`. */
  readonly align?: "left" | "centre" | "right";
  /** What the line is, if it is no paragraph. */
  readonly role?: Role;
  readonly said?: Said;
}

/** One line of text; `y` is its baseline. Returns the x at which it ends. */
export function write(canvas: Canvas, text: string, x: number, y: number, writing: Writing): number {
  const { size, colour = palette.ink, bold = false, align = "left", role = "P", said = {} } = writing;
  const font = bold ? canvas.bold : canvas.plain;
  const width = font.widthOf(text, size);
  const left = x - { left: 0, centre: width / 2, right: width }[align];
  whole(canvas, role, said, () =>
    canvas.page.pushOperators(
      setFillingRgbColor(...partsOf(colour)),
      beginText(),
      setFontAndSize(bold ? "Bold" : "Plain", size),
      setTextMatrix(1, 0, 0, 1, left, canvas.page.getHeight() - y),
      showText(font.codesOf(text)),
      endText(),
    ),
  );
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
export function block(canvas: Canvas, box: Box, { fill, stroke, thickness = 0.7, radius = 0 }: Look): void {
  const { page } = canvas;
  const look = {
    x: box.x,
    y: page.getHeight() - box.y - box.height,
    width: box.width,
    height: box.height,
    ...(radius === 0 ? {} : { rx: radius, ry: radius }),
    ...(fill === undefined ? {} : { color: colourOf(fill) }),
    ...(stroke === undefined ? {} : { borderColor: colourOf(stroke), borderWidth: thickness }),
  };
  decoration(canvas, () => page.drawRectangle(look));
}

/** A circle around (`x`, `y`). */
export function disc(canvas: Canvas, x: number, y: number, radius: number, look: Look): void {
  const { page } = canvas;
  const { fill, stroke, thickness = 0.7 } = look;
  const circle = {
    x,
    y: page.getHeight() - y,
    size: radius,
    ...(fill === undefined ? {} : { color: colourOf(fill) }),
    ...(stroke === undefined ? {} : { borderColor: colourOf(stroke), borderWidth: thickness }),
  };
  decoration(canvas, () => page.drawCircle(circle));
}

/** A line through points given as [x, y], y from the top. */
export function stroke(
  canvas: Canvas,
  points: readonly (readonly [number, number])[],
  {
    colour = palette.line,
    thickness = 0.7,
    dash,
  }: { colour?: string; thickness?: number; dash?: number[] } = {},
): void {
  const { page } = canvas;
  decoration(canvas, () =>
    points.slice(1).forEach(([x, y], i) => {
      const [fromX, fromY] = points[i] ?? [x, y];
      page.drawLine({
        start: { x: fromX, y: page.getHeight() - fromY },
        end: { x, y: page.getHeight() - y },
        thickness,
        color: colourOf(colour),
        ...(dash === undefined ? {} : { dashArray: dash }),
      });
    }),
  );
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
