import type { Box, Difference } from "../facts.ts";
import { patchesIn } from "./patches.ts";
import type { RenderedPdf } from "./pdfium.ts";
import { type Area, type Picture, pngOf, wholeOf } from "./picture.ts";
import { slack } from "./widget-places.ts";

/** Pixels of the picture of a page with all that is around the form. */
const mostPixels = 40_000;

/** A page with a longer side, in points, is not looked at as a whole. */
export const largest = 2000;

/** What of the form is cut off, and what a page shows beyond the form. */
export function beyond(
  pdf: RenderedPdf,
  page: number,
  view: Box,
  part: Box,
  picture: Picture,
  empty: Picture,
): Difference[] {
  const off = view.map((side, i) => side - (part[i] ?? 0)) as [number, number, number, number];
  if (off.every((side) => Math.abs(side) <= slack)) return [];
  const found: Difference[] = [];
  const scale = picture.width / (part[2] - part[0]);
  const kept: Area = {
    left: off[0] * scale,
    right: picture.width + off[2] * scale,
    top: -off[3] * scale,
    bottom: picture.height - off[1] * scale,
  };
  if (hasPrint(empty, kept)) found.push({ what: "less", page });
  if (off[0] < -slack || off[1] < -slack || off[2] > slack || off[3] > slack) {
    const [across, up] = [view[2] - view[0], view[3] - view[1]];
    // At one pixel a point. Nobody prints a form on much more than a large sheet of paper.
    const isVast = Math.max(across, up) > largest;
    const [width, height] = [across, up].map((side) => Math.round(Math.min(largest, side))) as [
      number,
      number,
    ];
    const all = pdf.render({ page, part: view, width, height });
    const [sx, sy] = [width / (view[2] - view[0]), height / (view[3] - view[1])];
    const inner: Area = {
      left: Math.floor((part[0] - view[0]) * sx) - 1,
      right: Math.ceil((part[2] - view[0]) * sx) + 1,
      top: Math.floor((view[3] - part[3]) * sy) - 1,
      bottom: Math.ceil((view[3] - part[1]) * sy) + 1,
    };
    const white: Picture = { width, height, pixels: new Int32Array(width * height).fill(-1) };
    const patches = patchesIn(all, white, [inner]);
    if (isVast || patches.length > 0)
      found.push({ what: "more", page, picture: pngOf(all, wholeOf(all), mostPixels) });
  }
  return found;
}

/** Whether the blank form has anything outside an area of its picture. */
function hasPrint({ width, height, pixels }: Picture, { left, top, right, bottom }: Area): boolean {
  const paper = 0xffffff;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (x >= left && x < right && y >= top && y < bottom) continue;
      if (((pixels[y * width + x] ?? paper) & paper) !== paper) return true;
    }
  return false;
}
