import { buttonsOf, type Catalogue, layoutOf } from "../../catalogue/catalogue.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { DeviceSheet } from "../../trade/sheet.ts";
import type { Box } from "./shapes.ts";

/** Where a plate of so many gangs and all that is in it stands, with its upper left corner at 0, 0. */
export interface Places {
  readonly plate: Box;
  /** The face above a gang, counted from 1. */
  readonly gang: (position: number) => Box;
  readonly opening: (position: number) => Box;
}

export function placesOf(gangs: number, { plate, device }: Catalogue): Places {
  const width = plate.widths[gangs - 1];
  if (width === undefined) throw new Error(`no plate has ${gangs} gangs`);
  const centreOf = (position: number): number => width / 2 + (position - (gangs + 1) / 2) * plate.pitch;
  return {
    plate: { x: 0, y: 0, width, height: plate.height },
    gang: (position) => around(centreOf(position), plate.legend_middle, plate.face),
    opening: (position) => around(centreOf(position), plate.height / 2, device.opening),
  };
}

/** The buttons of a device in their opening, by name; none while the layout is not known or not made. */
export function buttonsIn(
  opening: Box,
  { layouts }: DeviceSheet,
  catalogue: Catalogue,
): ReadonlyMap<FaceName, Box> {
  const [code = "", ...more] = layouts;
  const layout = more.length > 0 ? undefined : layoutOf(catalogue, code);
  if (layout === undefined) return new Map();
  const { columns, lines, face } = layout;
  const cell = { width: opening.width / columns, height: opening.height / lines };
  return new Map(
    Array.from({ length: buttonsOf(layout) }, (_, i): [FaceName, Box] => [
      `${i + 1}`,
      {
        x: opening.x + (i % columns) * cell.width + (cell.width - face.width) / 2,
        y: opening.y + Math.floor(i / columns) * cell.height + (cell.height - face.height) / 2,
        width: face.width,
        height: face.height,
      },
    ]),
  );
}

function around(x: number, y: number, { width, height }: { width: number; height: number }): Box {
  return { x: x - width / 2, y: y - height / 2, width, height };
}
