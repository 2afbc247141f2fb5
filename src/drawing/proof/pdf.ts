import { PDFName, type PDFPage, PrintScaling } from "pdf-lib";
import { partsOf } from "../blank/canvas.ts";
import {
  addTag,
  type Pieces,
  type Role,
  type Structure,
  startPage,
  startStructure,
  type Tag,
} from "../tagged/structure.ts";
import { startTagged } from "../tagged/tagged-document.ts";
import { embedTypefaces, type Typefaces } from "../typeface/typeface.ts";
import {
  type Block,
  type Box,
  type Drawing,
  type Line,
  type Lines,
  type Part,
  rounded,
  type Shape,
  type Words,
} from "./shapes.ts";

const pointsInMillimetre = 72 / 25.4;

/**
 * Drawings as one PDF, each a page of its own size, all of it vectors, and tagged for whoever has it read aloud. The
 * same drawings make the same bytes.
 */
export async function pdfOf(drawings: readonly Drawing[], title: string): Promise<Uint8Array> {
  const document = await startTagged(title);
  const structure = startStructure(document);
  // ISO 32000-2, table 147: the print dialogue begins with 100 %, not with "fit to page".
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const typefaces = embedTypefaces(document);
  for (const drawing of drawings) {
    const page = document.addPage();
    drawOn(page, drawing, typefaces, { structure, above: addTag(structure, structure.top, "Sect") });
  }
  return document.save({ updateFieldAppearances: false });
}

/** Draws an empty page. Without a structure it is not tagged. */
export function drawOn(
  page: Pick<PDFPage, "node" | "ref">,
  { width, height, shapes }: Drawing,
  typefaces: Typefaces,
  tags: { readonly structure: Structure; readonly above: Tag } | undefined,
): void {
  const { node } = page;
  const [across, up] = [width * pointsInMillimetre, height * pointsInMillimetre];
  node.set(PDFName.of("MediaBox"), node.context.obj([0, 0, across, up]));
  node.set(
    PDFName.of("Resources"),
    node.context.obj({ Font: { Plain: typefaces.plain.ref, Bold: typefaces.bold.ref } }),
  );
  // From here on all is in millimetres from the upper left corner.
  const [scale, top] = [pointsInMillimetre.toFixed(6), up.toFixed(3)];
  const drawn =
    tags === undefined
      ? shapes.map((shape) => operatorsOf(shape, typefaces))
      : contentOf(shapes, tags.above, { ...tags, ...typefaces, ...startPage(tags.structure, page) });
  const content = [`${scale} 0 0 -${scale} 0 ${top} cm 1 J 1 j`, ...drawn].join("\n");
  node.set(PDFName.of("Contents"), node.context.register(node.context.flateStream(content)));
}

interface Tagging extends Typefaces, Pieces {
  readonly structure: Structure;
}

/** Roles that hold others and no words of their own. */
const holding: ReadonlySet<Role> = new Set<Role>(["Sect", "Table", "TR"]);

/** The operators of shapes, each of which belongs to a tag or is marked as decoration. */
function contentOf(shapes: readonly Shape[], tag: Tag, tagging: Tagging): string[] {
  return shapes.map((shape) => {
    if (shape.kind === "part") return partOf(shape, tag, tagging);
    if (shape.kind === "words") return marked("P", addTag(tagging.structure, tag, "P"), [shape], tagging);
    return decoration(operatorsOf(shape, tagging));
  });
}

function partOf(part: Part, above: Tag, tagging: Tagging): string {
  const { role, shapes } = part;
  const tag = addTag(tagging.structure, above, role, part);
  if (holding.has(role)) return contentOf(shapes, tag, tagging).join("\n");
  return marked(role, tag, shapes, tagging);
}

/** Shapes as the content of one tag. ISO 32000-1:2008 §14.6, §14.7.4.2 */
function marked(role: string, tag: Tag, shapes: readonly Shape[], tagging: Tagging): string {
  const operators = shapes.map((shape) => operatorsOf(shape, tagging)).join("\n");
  return `/${role} <</MCID ${tagging.piece(tag)}>> BDC\n${operators}\nEMC`;
}

/** ISO 32000-1:2008 §14.8.2.2 */
function decoration(operators: string): string {
  return `/Artifact BMC\n${operators}\nEMC`;
}

function operatorsOf(shape: Shape, typefaces: Typefaces): string {
  if (shape.kind === "part") return shape.shapes.map((inner) => operatorsOf(inner, typefaces)).join("\n");
  if (shape.kind === "words") return text(shape, typefaces);
  return shape.kind === "block" ? rectangle(shape) : path(shape);
}

function text(shape: Words, typefaces: Typefaces): string {
  const { text, x, y, size, colour, bold = false, align = "left", upwards } = shape;
  const typeface = bold ? typefaces.bold : typefaces.plain;
  const width = typeface.widthOf(text, size);
  const before = { left: 0, centre: width / 2, right: width }[align];
  // y runs downwards here, so letters are turned over once more.
  const matrix = upwards
    ? `0 -1 -1 0 ${rounded(x)} ${rounded(y + before)}`
    : `1 0 0 -1 ${rounded(x - before)} ${rounded(y)}`;
  const place = `${rounded(size)} Tf ${matrix} Tm`;
  return `${rgb(colour)} rg BT /${bold ? "Bold" : "Plain"} ${place} ${typeface.codesOf(text).toString()} Tj ET`;
}

function rectangle(shape: Block): string {
  const { fill, line, radius = 0 } = shape;
  const paint = { both: "B", fill: "f", line: "S" }[
    fill === undefined ? "line" : line === undefined ? "fill" : "both"
  ];
  const colour = fill === undefined ? "" : `${rgb(fill)} rg `;
  return `q ${colour}${line === undefined ? "" : pen(line)}${outline(shape, radius)} ${paint} Q`;
}

function outline({ x, y, width, height }: Box, radius: number): string {
  if (radius === 0) return `${at(x, y, width, height)} re`;
  const [right, bottom] = [x + width, y + height];
  // How far a Bézier curve's control points lie from the ends of a quarter circle.
  const c = radius * (1 - 0.5523);
  return [
    `${at(x + radius, y)} m ${at(right - radius, y)} l`,
    `${at(right - c, y, right, y + c, right, y + radius)} c ${at(right, bottom - radius)} l`,
    `${at(right, bottom - c, right - c, bottom, right - radius, bottom)} c ${at(x + radius, bottom)} l`,
    `${at(x + c, bottom, x, bottom - c, x, bottom - radius)} c ${at(x, y + radius)} l`,
    `${at(x, y + c, x + c, y, x + radius, y)} c h`,
  ].join(" ");
}

function at(...numbers: readonly number[]): string {
  return numbers.map(rounded).join(" ");
}

function path({ strokes, line }: Lines): string {
  const points = strokes.map((stroke) =>
    stroke.map(([x, y], i) => `${rounded(x)} ${rounded(y)} ${i === 0 ? "m" : "l"}`).join(" "),
  );
  return points.length === 0 ? "" : `q ${pen(line)}${points.join(" ")} S Q`;
}

function pen({ colour, thickness, dash }: Line): string {
  return `${rgb(colour)} RG ${rounded(thickness)} w ${dash === undefined ? "" : `[${dash.join(" ")}] 0 d `}`;
}

function rgb(colour: string): string {
  return partsOf(colour).map(rounded).join(" ");
}
