import type { Point, Stroke } from "../../lettering/stroke.ts";
import { palette } from "../blank/canvas.ts";
import { type Box, lines, type Shape, words } from "./shapes.ts";

const thin = { colour: palette.quiet, thickness: 0.15 } as const;
const text = { size: 3, colour: palette.quiet } as const;

/** Millimetres from the box to its dimension line. */
export const measureDistance = 5;

/** How wide and how high a box is, with a line above it and one at its left. */
export function measures(box: Box): Shape[] {
  const { x, y, width, height } = box;
  const [above, beside] = [y - measureDistance, x - measureDistance];
  return [
    lines(
      [
        straight(x, above, x + width, above),
        straight(x, above - 1.5, x, y - 1),
        straight(x + width, above - 1.5, x + width, y - 1),
        arrow([x, above], [1, 0]),
        arrow([x + width, above], [-1, 0]),
        straight(beside, y, beside, y + height),
        straight(beside - 1.5, y, x - 1, y),
        straight(beside - 1.5, y + height, x - 1, y + height),
        arrow([beside, y], [0, 1]),
        arrow([beside, y + height], [0, -1]),
      ],
      thin,
    ),
    words(lengthOf(width), x + width / 2, above - 1.2, { ...text, align: "centre" }),
    words(lengthOf(height), beside - 1.2, y + height / 2, { ...text, align: "centre", upwards: true }),
  ];
}

function lengthOf(length: number): string {
  return `${length} mm (${(length / 25.4).toFixed(2)} in)`;
}

function straight(x: number, y: number, toX: number, toY: number): Stroke {
  return [
    [x, y],
    [toX, toY],
  ];
}

/** The head of an arrow whose tip is here and whose shaft leaves in this direction. */
function arrow([x, y]: Point, [dx, dy]: Point): Stroke {
  const [back, aside] = [1.8, 0.5];
  return [
    [x + dx * back + dy * aside, y + dy * back + dx * aside],
    [x, y],
    [x + dx * back - dy * aside, y + dy * back - dx * aside],
  ];
}

/** A bar of 50 mm with a tick each 10 mm, to see whether a print is at true scale. */
export function scaleBar(x: number, y: number): Shape[] {
  const ticks = [0, 10, 20, 30, 40, 50].map((at) =>
    straight(x + at, y - (at % 50 === 0 ? 2 : 1.2), x + at, y),
  );
  return [
    lines([straight(x, y, x + 50, y), ...ticks], { colour: palette.ink, thickness: 0.2 }),
    words("50 mm", x + 53, y, { size: 3.2, bold: true, colour: palette.ink }),
  ];
}
