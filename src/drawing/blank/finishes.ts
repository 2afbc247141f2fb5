import { type Catalogue, mostGangs } from "../../catalogue/catalogue.ts";
import type { Edition } from "../../reading/edition.ts";
import { textWidth } from "./appearance.ts";
import { type Box, block, type Canvas, palette, write } from "./canvas.ts";
import { finishesFor } from "./choices.ts";

const columns = 3;
const lineHeight = 14;

/** Height of the table in points. */
export function finishTableHeight(form: Edition["form"], catalogue: Catalogue): number {
  return 11 + Math.ceil(finishesFor(form, catalogue).length / columns) * lineHeight;
}

/** Every finish with its colour, and the sizes of plate, in gangs, in which it is made. */
export function finishTable(
  canvas: Canvas,
  form: Edition["form"],
  catalogue: Catalogue,
  box: Pick<Box, "x" | "y" | "width">,
): void {
  write(canvas, "Finishes, and the sizes of plate (in gangs) made in each", box.x, box.y + 7, {
    size: 8,
    colour: palette.quiet,
  });
  const width = box.width / columns;
  finishesFor(form, catalogue).forEach((finish, i) => {
    const x = box.x + (i % columns) * width;
    const baseline = box.y + 20 + Math.floor(i / columns) * lineHeight;
    swatch(canvas, finish.colour, x, baseline);
    const sizesAt = x + width - mostGangs(catalogue) * 8 - 16;
    const room = sizesAt - x - 20;
    write(canvas, finish.name, x + 18, baseline, {
      size: Math.min(8, (8 * room) / textWidth(finish.name, 8)),
    });
    for (let gangs = 1; gangs <= mostGangs(catalogue); gangs++) {
      const made = finish.plates.includes(gangs);
      write(canvas, made ? String(gangs) : "–", sizesAt + gangs * 8, baseline, {
        size: 8,
        bold: made,
        colour: made ? palette.accent : palette.line,
        align: "centre",
      });
    }
  });
}

/** The lettering colours, in one line. */
export function letteringColours(canvas: Canvas, catalogue: Catalogue, x: number, baseline: number): void {
  let left = write(canvas, "Lettering colours", x, baseline, { size: 8, colour: palette.quiet }) + 12;
  for (const lettering of catalogue.lettering) {
    swatch(canvas, lettering.colour, left, baseline);
    left = write(canvas, lettering.name, left + 18, baseline, { size: 8 }) + 12;
  }
}

function swatch(canvas: Canvas, colour: string, x: number, baseline: number): void {
  block(
    canvas,
    { x, y: baseline - 7.5, width: 13, height: 9 },
    { fill: colour, stroke: palette.line, radius: 1.5 },
  );
}
