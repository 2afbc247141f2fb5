import type { Box } from "./canvas.ts";
import type { Draft } from "./draft.ts";
import { colours, coloursHeight, coloursWidth } from "./finishes.ts";
import { gap, margin, notes, padding, panel, roomWords, titleHeight } from "./furniture.ts";
import { order, orderHeight } from "./order.ts";
import { platePicture, platePictureHeight } from "./plate-picture.ts";
import { stationOfPlate } from "./station.ts";

/** A plate sheet, from what is this plate's alone to what every sheet of the order says. */
export function platePart(draft: Draft, top: number, bottom: number): void {
  const { canvas, catalogue } = draft;
  const width = canvas.page.getWidth() - 2 * margin;
  const box = { x: margin, width };
  const legendsTop = stationOfPlate(draft, { ...box, y: top }) + gap;
  const colour = legends(draft, { ...box, y: legendsTop }) + gap;
  const last = bottom - orderHeight(draft);
  const height = last - gap - colour;
  if (height < coloursHeight("plate", catalogue))
    throw new Error("the sheet has no room left for every finish");
  const left = { ...box, y: colour, width: coloursWidth(catalogue), height };
  colours(draft, left, 3);
  notes(draft, { ...left, x: margin + left.width + gap, width: width - left.width - gap }, 4);
  order(draft, last, 5);
}

function legends(draft: Draft, { x, y, width }: Pick<Box, "x" | "y" | "width">): number {
  const { canvas, catalogue } = draft;
  const height = titleHeight + platePictureHeight(catalogue) + padding;
  const remark = `${roomWords(catalogue.plate)} above each gang; a plate of fewer gangs has those from the left`;
  panel(canvas, { x, y, width, height }, { number: 2, says: "The legends", remark });
  platePicture(draft, { x: x + padding, y: y + titleHeight, width: width - 2 * padding });
  return y + height;
}
