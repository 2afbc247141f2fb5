import type { Box } from "./canvas.ts";
import type { Draft } from "./draft.ts";
import { labelHeight, line, lineHeight } from "./entries.ts";
import { finishTable, finishTableHeight, letteringColours } from "./finishes.ts";
import { gap, margin, notes, padding, panel, titleHeight } from "./furniture.ts";
import { platePicture, platePictureHeight } from "./plate-picture.ts";

/** Sections 3 to 5 of a plate sheet: the plate, its legends in a picture of it, and the notes. */
export function platePart(draft: Draft, top: number, bottom: number): void {
  const box = { x: margin, width: draft.canvas.page.getWidth() - 2 * margin };
  const legendsTop = plate(draft, { ...box, y: top }) + gap;
  const notesTop = legends(draft, { ...box, y: legendsTop }) + gap;
  notes(draft, { ...box, y: notesTop, height: bottom - notesTop });
}

type Band = Pick<Box, "x" | "y" | "width">;

function plate(draft: Draft, { x, y, width }: Band): number {
  const { canvas, catalogue } = draft;
  const table = finishTableHeight("plate", catalogue);
  const end = y + titleHeight + Math.max(table, labelHeight + lineHeight + 20) + 4;
  panel(canvas, { x, y, width, height: end - y }, { number: 3, says: "The plate" });
  const half = width / 2;
  line(draft, { x: x + padding, y: y + titleHeight, width: half - padding }, [
    ["gangs", 2],
    ["finish", 3],
    ["lettering", 3],
    ["part-key", 4],
  ]);
  letteringColours(canvas, catalogue, x + padding, y + titleHeight + labelHeight + lineHeight + 14);
  finishTable(canvas, "plate", catalogue, {
    x: x + half + padding,
    y: y + titleHeight,
    width: half - 2 * padding,
  });
  return end;
}

function legends(draft: Draft, { x, y, width }: Band): number {
  const { canvas, catalogue } = draft;
  const height = titleHeight + platePictureHeight(catalogue) + padding;
  const remark = `${catalogue.plate.characters} characters at most in a row; a plate of fewer gangs has those from the left`;
  panel(canvas, { x, y, width, height }, { number: 4, says: "Legends", remark });
  platePicture(draft, { x: x + padding, y: y + titleHeight, width: width - 2 * padding });
  return y + height;
}
