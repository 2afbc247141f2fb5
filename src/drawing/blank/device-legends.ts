import { type Catalogue, mostButtons, type Room, roomOfButton } from "../../catalogue/catalogue.ts";
import type { FaceName } from "../../trade/legend.ts";
import { type Box, block, palette, write } from "./canvas.ts";
import type { Draft } from "./draft.ts";
import { bare, boxSize, lineHeight, tick } from "./entries.ts";
import { padding, panel, roomWords, titleHeight } from "./furniture.ts";

/** Points: around what a face holds, between faces, from row to row, and what stands beside the rows. */
const edge = 4;
const between = 6;
const step = lineHeight + 3;
const numberWidth = 12;
const plainWidth = 15;

/** Faces beside each other. */
const most = 4;

/** A face for each button and a strip for the plate, with rows to type where they are cut. Returns its lower edge. */
export function deviceLegends(draft: Draft, { x, y, width }: Pick<Box, "x" | "y" | "width">): number {
  const { canvas, catalogue } = draft;
  const lines = linesOf(catalogue);
  const heights = lines.map((faces) => Math.max(...faces.map(({ room }) => heightOf(room))));
  const strip = y + titleHeight + heights.reduce((sum, height) => sum + height + between, 0) + 2;
  const end = strip + heightOf({ ...catalogue.plate, rows: 1 }) + padding;
  const remark = "numbered as in the pictures; for a face without words tick “plain”";
  panel(canvas, { x, y, width, height: end - y }, { number: 3, says: "The legends", remark });

  const area = { x: x + padding, width: width - 2 * padding };
  let top = y + titleHeight;
  lines.forEach((faces, i) => {
    const height = heights[i] ?? 0;
    const wide = (area.width - between * (faces.length - 1)) / faces.length;
    faces.forEach(({ n, room }, k) => {
      button(draft, n, room, { x: area.x + k * (wide + between), y: top, width: wide, height });
    });
    top += height + between;
  });
  plateStrip(draft, { ...area, y: strip, height: heightOf({ ...catalogue.plate, rows: 1 }) });
  return end;
}

interface Button {
  readonly n: number;
  readonly room: Room;
}

/** The buttons of the largest layout, as evenly over lines as they go. */
function linesOf(catalogue: Catalogue): Button[][] {
  const all = Array.from({ length: mostButtons(catalogue) }, (_, i) => ({
    n: i + 1,
    room: roomOfButton(i + 1, catalogue),
  }));
  const lines = Math.ceil(all.length / most);
  const inLine = Math.ceil(all.length / lines);
  return Array.from({ length: lines }, (_, i) => all.slice(i * inLine, (i + 1) * inLine));
}

function heightOf({ rows }: Pick<Room, "rows">): number {
  return 2 * edge + rows * step - 3;
}

/** One button: its number, its rows below each other, and its tick. */
function button(draft: Draft, n: number, { rows }: Room, box: Box): void {
  block(draft.canvas, box, { fill: palette.face, stroke: palette.accent, radius: 4 });
  write(draft.canvas, `${n}`, box.x + edge + 4.5, box.y + edge + 12.3, {
    size: 10,
    bold: true,
    colour: palette.accent,
    align: "centre",
  });
  const x = box.x + edge + numberWidth;
  const width = box.width - 2 * edge - numberWidth - plainWidth;
  for (let row = 1; row <= rows; row++)
    bare(draft, `row.${n}.${row}`, {
      x,
      y: box.y + edge + (row - 1) * step,
      width,
      height: lineHeight,
    });
  plain(draft, `${n}`, box);
}

/** The plate that a device alone brings with it. */
function plateStrip(draft: Draft, box: Box): void {
  const { canvas, catalogue } = draft;
  block(canvas, box, { fill: palette.plate, stroke: palette.line, radius: 4 });
  const baseline = box.y + box.height / 2 + 3;
  const end = write(canvas, "Plate", box.x + edge + 3, baseline, { size: 9, bold: true });
  const says = [
    `of a device that stands alone: ${roomWords(catalogue.plate)}`,
    "in a plate of several gangs: on the plate sheet",
  ];
  const ends = says.map((line, i) =>
    write(canvas, line, end + 6, baseline - 4.2 + i * 8.6, { size: 7, colour: palette.quiet }),
  );
  const left = Math.max(...ends) + 8;
  const { rows } = catalogue.plate;
  const all = box.x + box.width - edge - plainWidth - left;
  const width = (all - 6 * (rows - 1)) / rows;
  for (let row = 1; row <= rows; row++)
    bare(draft, `row.plate.${row}`, {
      x: left + (row - 1) * (width + 6),
      y: box.y + edge,
      width,
      height: lineHeight,
    });
  plain(draft, "plate", box);
}

/** The tick that leaves a face without words, at its upper right. */
function plain(draft: Draft, face: FaceName, box: Box): void {
  const x = box.x + box.width - edge - boxSize;
  tick(draft, `plain.${face}`, x, box.y + edge + boxSize / 2);
  write(draft.canvas, "plain", x + boxSize / 2, box.y + edge + boxSize + 6.5, {
    size: 6,
    colour: palette.quiet,
    align: "centre",
  });
}
