import { type Catalogue, type Finish, mostGangs } from "../../catalogue/catalogue.ts";
import type { Edition } from "../../reading/edition.ts";
import { textWidth } from "./appearance.ts";
import { type Box, block, type Canvas, palette, within, write } from "./canvas.ts";
import { finishesFor } from "./choices.ts";
import type { Draft } from "./draft.ts";
import { lineHeight as fieldHeight, labelHeight, line } from "./entries.ts";
import { padding, panel, titleHeight } from "./furniture.ts";

const columns = 2;
const lineHeight = 13.5;
const fieldsWidth = 98;
/** Points for each gang count of the table. */
const digit = 7;

/** Width of the section: what is chosen, and beside it the table. */
export function coloursWidth(catalogue: Catalogue): number {
  return 2 * padding + fieldsWidth + 12 + columns * columnWidth(catalogue);
}

/** The least height that the section needs. */
export function coloursHeight(form: Edition["form"], catalogue: Catalogue): number {
  const chosen = 3 * step - 3;
  return titleHeight + Math.max(chosen, tableHeight(form, catalogue) + 14) + padding;
}

/** What is chosen of colours, and what there is. */
export function colours(draft: Draft, box: Box, number: number): void {
  const { canvas, catalogue, edition } = draft;
  panel(canvas, box, { number, says: "The colours" });
  const area = { x: box.x + padding, y: box.y + titleHeight, width: fieldsWidth };
  const places = ["finish", "lettering", "part-key"] as const;
  places.forEach((place, i) => {
    line(draft, { ...area, y: area.y + i * step }, [[place, 1]]);
  });
  const x = area.x + fieldsWidth + 12;
  finishTable(canvas, edition.form, catalogue, x, area.y);
  letteringColours(canvas, catalogue, x, area.y + tableHeight(edition.form, catalogue) + 10);
}

const step = labelHeight + fieldHeight + 3;

function columnWidth(catalogue: Catalogue): number {
  return 60 + (mostGangs(catalogue) + 1) * digit;
}

function tableHeight(form: Edition["form"], catalogue: Catalogue): number {
  return 11 + Math.ceil(finishesFor(form, catalogue).length / columns) * lineHeight;
}

/** Every finish with its colour, and the sizes of plate, in gangs, in which it is made. */
function finishTable(
  canvas: Canvas,
  form: Edition["form"],
  catalogue: Catalogue,
  left: number,
  top: number,
): void {
  write(canvas, "Finishes, and the sizes of plate (in gangs) made in each", left, top + 7, {
    size: 8,
    colour: palette.quiet,
  });
  const width = columnWidth(catalogue);
  within(canvas, "Table", () => {
    finishesFor(form, catalogue).forEach((finish, i) => {
      const x = left + (i % columns) * width;
      within(canvas, "TR", () => {
        finishRow(canvas, finish, catalogue, {
          x,
          baseline: top + 20 + Math.floor(i / columns) * lineHeight,
        });
      });
    });
  });
}

function finishRow(
  canvas: Canvas,
  finish: Finish,
  catalogue: Catalogue,
  { x, baseline }: { readonly x: number; readonly baseline: number },
): void {
  swatch(canvas, finish.colour, x, baseline);
  const sizesAt = x + columnWidth(catalogue) - (mostGangs(catalogue) + 1) * digit;
  const room = sizesAt - x - 20;
  write(canvas, finish.name, x + 18, baseline, {
    size: Math.min(8, (8 * room) / textWidth(finish.name, 8)),
    role: "TH",
    said: { scope: "Row" },
  });
  for (let gangs = 1; gangs <= mostGangs(catalogue); gangs++) {
    const made = finish.plates.includes(gangs);
    write(canvas, made ? String(gangs) : "–", sizesAt + gangs * digit - digit / 2, baseline, {
      size: 8,
      bold: made,
      colour: made ? palette.accent : palette.quiet,
      align: "centre",
      role: "TD",
      said: made ? {} : { actual: "not made" },
    });
  }
}

/** The lettering colours, in one line. */
function letteringColours(canvas: Canvas, catalogue: Catalogue, x: number, baseline: number): void {
  let left = write(canvas, "Lettering", x, baseline, { size: 8, colour: palette.quiet }) + 10;
  for (const lettering of catalogue.lettering) {
    swatch(canvas, lettering.colour, left, baseline);
    left = write(canvas, lettering.name, left + 18, baseline, { size: 8 }) + 10;
  }
}

function swatch(canvas: Canvas, colour: string, x: number, baseline: number): void {
  block(
    canvas,
    { x, y: baseline - 7.5, width: 13, height: 9 },
    { fill: colour, stroke: palette.line, radius: 1.5 },
  );
}
