import { textWidth } from "./appearance.ts";
import type { Box } from "./canvas.ts";
import type { Draft } from "./draft.ts";
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
  line(draft, { x: area.x + indent, y: where + 46, width: area.width - indent }, [
    ["position", 2],
    ["gangs", 3],
  ]);
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
