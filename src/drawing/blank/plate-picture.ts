import { type Catalogue, mostGangs } from "../../catalogue/catalogue.ts";
import { type Box, block, palette, stroke } from "./canvas.ts";
import { numberedFace } from "./device-picture.ts";
import type { Draft } from "./draft.ts";
import { bare, lineHeight, tick } from "./entries.ts";

/** Points: around everything, from one row to the next, the opening of a gang, the line of ticks. */
const edge = 8;
const step = lineHeight + 4;
const opening = { width: 26, height: 34 };
const tickHeight = 18;

export function platePictureHeight({ plate }: Catalogue): number {
  return 2 * edge + plate.rows * step + 3 + opening.height + tickHeight;
}

/** The widest plate with its gangs numbered. The rows of each gang stand where they are cut, above its opening. */
export function platePicture(draft: Draft, { x, y, width }: Pick<Box, "x" | "y" | "width">): void {
  const { canvas, catalogue } = draft;
  const height = platePictureHeight(catalogue);
  block(canvas, { x, y, width, height }, { fill: palette.plate, stroke: palette.line, radius: 6 });
  const gang = width / mostGangs(catalogue);
  for (let n = 1; n <= mostGangs(catalogue); n++) {
    const left = x + (n - 1) * gang;
    const centre = left + gang / 2;
    for (let row = 1; row <= catalogue.plate.rows; row++) {
      const top = y + edge + (row - 1) * step;
      bare(draft, `row.${n}.${row}`, { x: left + 5, y: top, width: gang - 10, height: lineHeight });
    }
    const top = y + edge + catalogue.plate.rows * step + 3;
    numberedFace(canvas, n, { ...opening, x: centre - opening.width / 2, y: top });
    tick(draft, `plain.${n}`, centre - 28.5, top + opening.height + tickHeight / 2 + 2, "Leave plain");
    if (n > 1)
      stroke(
        canvas,
        [
          [left, y + edge],
          [left, y + height - edge],
        ],
        { dash: [2, 2] },
      );
  }
}
