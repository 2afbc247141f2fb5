import { PDFDict, PDFNumber } from "pdf-lib";
import type { Box } from "../../reading/facts.ts";
import { common, inOrder } from "../../reading/pdf/boxes.ts";
import { entryOf, rectangleOf } from "../../reading/pdf/pdf-value.ts";

/**
 * A page as one sees it, in points from the lower left corner of what shows, after the page was turned. Marks are
 * placed so, since a number that lies on its side is hard to read.
 */
export interface ShownPage {
  readonly width: number;
  readonly height: number;
  /** From the coordinates of the page to what is seen, and back. */
  readonly toShown: (box: Box) => Box;
  readonly toPage: (box: Box) => Box;
  /** From points off the corner of what shows, as readers tell places, to the coordinates of the page. */
  readonly fromCorner: (box: Box) => Box;
  /** The matrix of a drawing that is to be seen upright. ISO 32000-1:2008 §12.5.5 */
  readonly upright: readonly number[];
}

// ISO 32000-1:2008 table 30; US Letter where a page says nothing of its size.
const usual: Box = [0, 0, 612, 792];

/** How a page is seen. It inherits from the nodes above what it does not say itself. ISO 32000-1:2008 §7.7.3.4 */
export function shownPage(page: PDFDict): ShownPage {
  const media = rectangleOf(inherited(page, "MediaBox")) ?? usual;
  const [left, bottom, right, top] = common(rectangleOf(inherited(page, "CropBox")) ?? media, media);
  const turned = inherited(page, "Rotate");
  const angle = turned instanceof PDFNumber ? ((turned.asNumber() % 360) + 360) % 360 : 0;
  const [across, up] = [right - left, top - bottom];
  const fromCorner = (box: Box): Box => [box[0] + left, box[1] + bottom, box[2] + left, box[3] + bottom];
  const sideways = angle === 90 || angle === 270;
  // Each pair of corners is turned, then put in order again.
  const turn =
    (to: (x: number, y: number) => readonly [number, number]) =>
    (box: Box): Box =>
      inOrder(...to(box[0], box[1]), ...to(box[2], box[3]));
  const ways: Readonly<
    Record<number, readonly [ShownPage["toShown"], ShownPage["toPage"], readonly number[]]>
  > = {
    90: [
      turn((x, y) => [y - bottom, right - x]),
      turn((x, y) => [right - y, bottom + x]),
      [0, 1, -1, 0, 0, 0],
    ],
    180: [turn((x, y) => [right - x, top - y]), turn((x, y) => [right - x, top - y]), [-1, 0, 0, -1, 0, 0]],
    270: [turn((x, y) => [top - y, x - left]), turn((x, y) => [left + y, top - x]), [0, -1, 1, 0, 0, 0]],
  };
  const [toShown, toPage, upright] = ways[angle] ?? [
    turn((x, y) => [x - left, y - bottom]),
    turn((x, y) => [x + left, y + bottom]),
    [1, 0, 0, 1, 0, 0],
  ];
  return {
    width: sideways ? up : across,
    height: sideways ? across : up,
    toShown,
    toPage,
    upright,
    fromCorner,
  };
}

/** An entry of a node, or of the nearest node above that has it. */
export function inherited(node: PDFDict, key: string): ReturnType<typeof entryOf> {
  return upwards(node)
    .map((one) => entryOf(one, key))
    .find((entry) => entry !== undefined);
}

/** After so many steps up a tree it is a circle. */
const highest = 50;

/** A node of a tree, the node above it, and so on. */
export function* upwards(node: PDFDict): Generator<PDFDict> {
  let at: ReturnType<typeof entryOf> = node;
  for (let step = 0; step < highest && at instanceof PDFDict; step++) {
    yield at;
    at = entryOf(at, "Parent");
  }
}
