import type { Stroke } from "../../lettering/stroke.ts";
import {
  type Block,
  type Drawing,
  type Line,
  type Lines,
  rounded,
  type Shape,
  type Words,
} from "./shapes.ts";

/** A drawing as an SVG file, as large on paper as it says in millimetres. */
export function svgOf({ width, height, title, shapes }: Drawing): string {
  const size = `width="${rounded(width)}mm" height="${rounded(height)}mm" viewBox="0 0 ${rounded(width)} ${rounded(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size}>`,
    `<title>${escaped(title)}</title>`,
    '<rect width="100%" height="100%" fill="#FFFFFF"/>',
    ...shapes.flatMap(elementsOf),
    "</svg>\n",
  ].join("\n");
}

function elementsOf(shape: Shape): string[] {
  if (shape.kind === "part") return shape.shapes.flatMap(elementsOf);
  if (shape.kind === "words") return [text(shape)];
  return [shape.kind === "block" ? rectangle(shape) : path(shape)];
}

function rectangle({ x, y, width, height, radius, fill, line }: Block): string {
  const corners = radius === undefined ? "" : ` rx="${rounded(radius)}"`;
  const place = `x="${rounded(x)}" y="${rounded(y)}" width="${rounded(width)}" height="${rounded(height)}"`;
  return `<rect ${place}${corners} fill="${fill ?? "none"}"${line === undefined ? "" : pen(line)}/>`;
}

function path({ strokes, line }: Lines): string {
  const round = ' stroke-linecap="round" stroke-linejoin="round"';
  return `<path d="${strokes.map(dataOf).join("")}" fill="none"${pen(line)}${round}/>`;
}

/** The data of a path through the points of a stroke. */
export function dataOf(stroke: Stroke): string {
  return stroke.map(([x, y], i) => `${i === 0 ? "M" : "L"}${rounded(x)} ${rounded(y)}`).join("");
}

function pen({ colour, thickness, dash }: Line): string {
  const dashes = dash === undefined ? "" : ` stroke-dasharray="${dash.join(" ")}"`;
  return ` stroke="${colour}" stroke-width="${rounded(thickness)}"${dashes}`;
}

const anchors = { left: "start", centre: "middle", right: "end" } as const;

function text({ text, x, y, size, colour, bold = false, align = "left", upwards = false }: Words): string {
  const font = `font-family="Helvetica, Arial, sans-serif" font-size="${rounded(size)}"${bold ? ' font-weight="bold"' : ""}`;
  const place = `x="${rounded(x)}" y="${rounded(y)}" text-anchor="${anchors[align]}"${upwards ? ` transform="rotate(-90 ${rounded(x)} ${rounded(y)})"` : ""}`;
  return `<text ${place} ${font} fill="${colour}">${escaped(text)}</text>`;
}

/** A text as it stands in XML between two tags. */
export function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
