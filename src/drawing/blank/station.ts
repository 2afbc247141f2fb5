import { textWidth } from "./appearance.ts";
import { type Box, palette, write } from "./canvas.ts";
import { type Draft, waitingFor } from "./draft.ts";
import { boxSize, label, labelHeight, line, lineHeight, radios } from "./entries.ts";
import { padding, panel, titleHeight } from "./furniture.ts";

const title = { number: 1, says: "The station" } as const;
const [alone, inPlate] = ["Alone, with its own one-gang plate", "In a plate of several gangs"];

/** Width that the section has on a device sheet. */
export const stationWidth = 2 * padding + boxSize + 4 + Math.ceil(textWidth(alone, 8.5));

/** The place on the wall: its mark, and where in it the device goes. */
export function stationOfDevice(draft: Draft, box: Box): void {
  panel(draft.canvas, box, title);
  const area = { x: box.x + padding, y: box.y + titleHeight, width: box.width - 2 * padding };
  line(draft, area, [["mark", 1]]);
  const where = area.y + labelHeight + lineHeight + 8;
  label(draft, "standing", area.x, where + 7);
  radios(draft, "standing", [
    { code: "alone", says: alone, x: area.x, middle: where + 18 },
    { code: "in-plate", says: inPlate, x: area.x, middle: where + 35 },
  ]);
  const indent = boxSize + 4;
  const hasBoth = waitingFor(draft, "position") !== undefined;
  const said = { size: 7.5, colour: palette.quiet };
  line(draft, { x: area.x + indent, y: where + 46, width: area.width - indent }, [
    ["position", 2],
    ["gangs", 3],
  ]);
  // Beside the fields that it is about, as far as the edition has them.
  if (hasBoth) write(draft.canvas, "(*) in a plate of several gangs", area.x + indent, where + 83, said);
}

/** The same on a plate sheet, with how large the plate is. */
export function stationOfPlate(draft: Draft, { x, y, width }: Pick<Box, "x" | "y" | "width">): number {
  const end = y + titleHeight + labelHeight + lineHeight + padding;
  const remark = "each gang takes a device, which has a sheet of its own with the same station mark";
  panel(draft.canvas, { x, y, width, height: end - y }, { ...title, remark });
  line(draft, { x: x + padding, y: y + titleHeight, width: width / 2 - padding }, [
    ["mark", 3],
    ["gangs", 2],
  ]);
  return end;
}
