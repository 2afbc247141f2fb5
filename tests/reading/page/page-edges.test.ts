import { PDFDocument } from "pdf-lib";
import { expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import { beyond } from "../../../src/reading/page/page-edges.ts";
import { withRendered } from "../../../src/reading/page/pdfium.ts";
import type { Picture } from "../../../src/reading/page/picture.ts";
import { shifted } from "../../../src/reading/page/widget-places.ts";

/** A form of 100 by 80 points, in two pixels a point, with a dot of print at some places of its picture. */
function blank(...dots: readonly (readonly [x: number, y: number, colour?: number])[]): Picture {
  const pixels = new Int32Array(200 * 160).fill(-1);
  for (const [x, y, colour = 0] of dots) pixels[y * 200 + x] = colour;
  return { width: 200, height: 160, pixels };
}
const form: Box = [0, 0, 100, 80];

/**
 * What is cut off or shown beyond the form on a page that shows so much, with ink from a corner on. The corner of the
 * form lies elsewhere than that of the page.
 */
async function found(
  shows: Box,
  empty: Picture = blank(),
  ink?: readonly [x: number, y: number, width?: number, height?: number],
) {
  const [view, part] = [shows, form].map((box) => shifted(box, 20, 10)) as [Box, Box];
  const pdf = await PDFDocument.create();
  const page = pdf.addPage();
  page.setMediaBox(view[0], view[1], view[2] - view[0], view[3] - view[1]);
  if (ink !== undefined)
    page.drawRectangle({ x: 20 + ink[0], y: 10 + ink[1], width: ink[2] ?? 6, height: ink[3] ?? 6 });
  const differences = await withRendered(await pdf.save(), (rendered) =>
    beyond(rendered, 1, view, part, blank(), empty),
  );
  return (differences ?? []).map(({ what, page, picture }) => [what, page, picture !== undefined]);
}
const [less, more] = [
  ["less", 1, false],
  ["more", 1, true],
];

test.each<[string, Box]>([
  ["as large as the form", form],
  ["a point and a half larger on every side", [-1.5, -1.5, 101.5, 81.5]],
  ["as much smaller", [1.5, 1.5, 98.5, 78.5]],
])("a page %s is the form", async (_, view) => {
  expect(await found(view, blank([0, 0], [199, 159]))).toEqual([]);
});

test.each<[string, Box, readonly [number, number], readonly [number, number]]>([
  ["left", [10, 0, 100, 80], [19, 80], [20, 80]],
  ["very left", [10, 0, 100, 80], [0, 80], [20, 80]],
  ["uppermost", [0, 0, 100, 70], [100, 0], [100, 20]],
  ["right", [0, 0, 90, 80], [180, 80], [179, 80]],
  ["upper", [0, 0, 100, 70], [100, 19], [100, 20]],
  ["lower", [0, 10, 100, 80], [100, 140], [100, 139]],
])("print that is cut off at the %s edge is missed", async (_, view, out, inside) => {
  expect(await found(view, blank(out))).toEqual([less]);
  expect(await found(view, blank(inside))).toEqual([]);
});

test.each<[string, Box, readonly [number, number], readonly [number, number]]>([
  ["left", [-40, 0, 100, 80], [-20, 40], [4, 40]],
  ["right", [0, 0, 140, 80], [120, 40], [90, 40]],
  ["upper", [0, 0, 100, 120], [50, 100], [50, 70]],
  ["lower", [0, -40, 100, 80], [50, -20], [50, 4]],
])("ink beyond the %s edge of the form is told, and ink on the form is not", async (_, view, out, inside) => {
  expect(await found(view, blank(), out)).toEqual([more]);
  expect(await found(view, blank(), inside)).toEqual([]);
});

test("print that is cut off may be grey", async () => {
  // 0xff808080: PDFium leaves the highest byte of a pixel as it was.
  expect(await found([10, 0, 100, 80], blank([2, 2, 0xff808080 | 0]))).toEqual([less]);
});

test.each<
  [string, Box, readonly [number, number, number, number], readonly [number, number, number, number]]
>([
  ["left", [-40, 0, 100, 80], [-3, 30, 1, 9], [-2, 30, 1, 9]],
  ["right", [0, 0, 140, 80], [102, 30, 1, 9], [101, 30, 1, 9]],
  ["upper", [0, 0, 100, 120], [30, 82, 9, 1], [30, 81, 9, 1]],
  ["lower", [0, -40, 100, 80], [30, -3, 9, 1], [30, -2, 9, 1]],
])(
  "ink is told that lies two points beyond the %s edge, and no ink that is nearer",
  async (_, view, out, near) => {
    expect(await found(view, blank(), out)).toEqual([more]);
    expect(await found(view, blank(), near)).toEqual([]);
  },
);

test("a page that is larger than anybody prints is told as a whole", async () => {
  expect(await found([0, 0, 2000, 80])).toEqual([]);
  expect(await found([0, 0, 2001, 80])).toEqual([more]);
  expect(await found([0, 0, 100, 2001])).toEqual([more]);
});

test("a page may cut off print and show something more", async () => {
  expect(await found([10, 0, 140, 80], blank([2, 2]), [120, 40])).toEqual([less, more]);
});
