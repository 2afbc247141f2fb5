import { rounded } from "../drawing/proof/shapes.ts";
import { dataOf, escaped } from "../drawing/proof/svg.ts";
import { layerOf, outlines } from "./layers.ts";
import type { Part } from "./part.ts";

/**
 * A part as SVG in millimetres at true scale, from its upper left corner, y downwards. Strokes are paths at the middle
 * of the cut, as wide as the cutter, each face in a group of its own. Outlines have theirs, and are not cut.
 */
export function cutSvg(part: Part, title: string): string {
  const [width, height] = [rounded(part.width), rounded(part.height)];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escaped(title)}</title>`,
    ...outlines(part).flatMap(({ layer, boxes }) => [
      `<g id="${layer}" fill="none" stroke="#909090" stroke-width="0.1">`,
      ...boxes.map(
        (box) =>
          `<rect x="${rounded(box.x)}" y="${rounded(box.y)}" width="${rounded(box.width)}" height="${rounded(box.height)}"/>`,
      ),
      "</g>",
    ]),
    ...part.faces.flatMap((face) => [
      `<g id="${layerOf(face)}" fill="none" stroke="#000000" stroke-width="${face.path?.cutter ?? 0}" stroke-linecap="round" stroke-linejoin="round">`,
      ...(face.path?.strokes ?? []).map((stroke) => `<path d="${dataOf(stroke)}"/>`),
      "</g>",
    ]),
    "</svg>\n",
  ].join("\n");
}
