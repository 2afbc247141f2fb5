import { PDFDocument, PDFName, PrintScaling, StandardFonts } from "pdf-lib";
import { Encodings } from "pdf-lib/standard-fonts";
import { partsOf } from "../blank/canvas.ts";
import {
  type Block,
  type Box,
  type Drawing,
  type Line,
  type Lines,
  rounded,
  type Shape,
  type Words,
} from "./shapes.ts";

const pointsInMillimetre = 72 / 25.4;

/** Drawings as one PDF, each a page of its own size, all of it vectors. The same drawings make the same bytes. */
export async function pdfOf(drawings: readonly Drawing[], title: string): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setLanguage("en-US");
  // ISO 32000-2, table 147: the print dialogue begins with 100 %, not with "fit to page".
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const fonts = {
    Plain: document.embedStandardFont(StandardFonts.Helvetica),
    Bold: document.embedStandardFont(StandardFonts.HelveticaBold),
  };
  for (const { width, height, shapes } of drawings) {
    const [across, up] = [width * pointsInMillimetre, height * pointsInMillimetre];
    const page = document.addPage([across, up]);
    for (const [name, font] of Object.entries(fonts)) page.node.setFontDictionary(PDFName.of(name), font.ref);
    // From here on all is in millimetres from the upper left corner.
    const [scale, top] = [pointsInMillimetre.toFixed(6), up.toFixed(3)];
    const content = [`${scale} 0 0 -${scale} 0 ${top} cm 1 J 1 j`, ...shapes.map(operatorsOf)].join("\n");
    page.node.set(PDFName.of("Contents"), document.context.register(document.context.flateStream(content)));
  }
  return document.save({ updateFieldAppearances: false });

  function operatorsOf(shape: Shape): string {
    if (shape.kind === "words") return text(shape);
    return shape.kind === "block" ? rectangle(shape) : path(shape);
  }

  function text({ text, x, y, size, colour, bold = false, align = "left", upwards }: Words): string {
    const name = bold ? "Bold" : "Plain";
    const shown = printable(text);
    const width = fonts[name].widthOfTextAtSize(shown, size);
    const before = { left: 0, centre: width / 2, right: width }[align];
    // y runs downwards here, so letters are turned over once more.
    const matrix = upwards
      ? `0 -1 -1 0 ${rounded(x)} ${rounded(y + before)}`
      : `1 0 0 -1 ${rounded(x - before)} ${rounded(y)}`;
    const place = `${rounded(size)} Tf ${matrix} Tm`;
    return `${rgb(colour)} rg BT /${name} ${place} ${fonts[name].encodeText(shown).toString()} Tj ET`;
  }
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

/** What the standard fonts have no character for is shown as "?". */
function printable(text: string): string {
  const { WinAnsi } = Encodings;
  return Array.from(text, (character) =>
    WinAnsi.canEncodeUnicodeCodePoint(character.codePointAt(0) ?? 0) ? character : "?",
  ).join("");
}
