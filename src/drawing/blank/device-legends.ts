import { buttonsOf, mostButtons } from "../../catalogue/catalogue.ts";
import type { FaceName } from "../../trade/legend.ts";
import { type Box, palette, stroke, write } from "./canvas.ts";
import { numberedFace } from "./device-picture.ts";
import type { Draft } from "./draft.ts";
import { bare, boxSize, lineHeight, tick } from "./entries.ts";
import { padding, panel, titleHeight } from "./furniture.ts";

/** Points from one button's line to the next. */
const step = 21.5;
/** Widths of what stands beside the rows: the numbered face, the tick "leave plain", the layouts that have the button. */
const faceWidth = 27;
const plainWidth = 46;
const layoutsWidth = 54;
const small = { size: 8, colour: palette.quiet } as const;

/** Section 4 of a device sheet: a line for each button and one for the plate. Returns the height of its lower edge. */
export function deviceLegends(draft: Draft, { x, y, width }: Pick<Box, "x" | "y" | "width">): number {
  const { canvas, catalogue } = draft;
  const { device, plate } = catalogue;
  const first = y + titleHeight + 11;
  const last = first + mostButtons(catalogue) * step + 19;
  const end = last + lineHeight + padding;
  const remark = `${device.characters} characters at most in a row; for a button without words tick “Leave plain”`;
  panel(canvas, { x, y, width, height: end - y }, { number: 4, says: "Legends", remark });

  const left = x + padding;
  const right = x + width - padding;
  const plain = right - layoutsWidth - plainWidth;
  const rows = { x: left + faceWidth, width: plain - left - faceWidth, height: lineHeight };
  columns({ ...rows, y: first }, device.rows).forEach((row, i) => {
    write(canvas, `Row ${i + 1}`, row.x, first - 4, small);
  });
  write(canvas, "Leave plain", plain + plainWidth / 2, first - 4, { ...small, align: "centre" });
  for (let n = 1; n <= mostButtons(catalogue); n++) {
    const top = first + (n - 1) * step;
    numberedFace(canvas, n, { x: left, y: top, width: 19, height: lineHeight });
    legendLine(draft, `${n}`, { ...rows, y: top }, device.rows, plain);
    write(canvas, layoutsWith(draft, n), right, top + 11, { ...small, align: "right" });
  }

  stroke(canvas, [
    [left, last - 17],
    [right, last - 17],
  ]);
  write(canvas, "Plate", left, last - 5, { size: 8.5, bold: true });
  const says = `only for a device that stands alone; ${plate.characters} characters at most in a row`;
  write(canvas, says, left + faceWidth, last - 5, small);
  legendLine(draft, "plate", { ...rows, y: last, x: left, width: plain - left }, plate.rows, plain);
  return end;
}

/** The rows of one face side by side, and its tick in the column at `plain`. */
function legendLine(draft: Draft, face: FaceName, box: Box, rows: number, plain: number): void {
  columns(box, rows).forEach((row, i) => {
    bare(draft, `row.${face}.${i + 1}`, row);
  });
  tick(draft, `plain.${face}`, plain + (plainWidth - boxSize) / 2, box.y + lineHeight / 2);
}

function columns(box: Box, count: number): Box[] {
  const between = 6;
  const width = (box.width - between * (count - 1)) / count;
  return Array.from({ length: count }, (_, i) => ({ ...box, x: box.x + i * (width + between), width }));
}

/** Which layouts have the n-th button. */
function layoutsWith({ catalogue: { layouts } }: Draft, n: number): string {
  const having = layouts.filter((layout) => buttonsOf(layout) >= n);
  return having.length === layouts.length ? "every layout" : `${having.map(buttonsOf).join(", ")} buttons`;
}
