import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { DeviceSheet } from "../../trade/sheet.ts";
import { palette } from "../blank/canvas.ts";
import { paintOf } from "./colours.ts";
import { facesIn } from "./faces.ts";
import { legendOn } from "./legend.ts";
import { buttonsIn, placesOf } from "./places.ts";
import { type Box, block, type Shape, words } from "./shapes.ts";
import type { View } from "./view.ts";

/** Millimetres. */
const edge = 0.2;
const dash = [1.2, 1] as const;

/** The plate of a station with its devices and every legend as it is cut, its upper left corner at 0, 0. */
export function stationShapes(view: View, catalogue: Catalogue): Shape[] {
  const places = placesOf(view.gangs, catalogue);
  const positions = Array.from({ length: view.gangs }, (_, i) => i + 1);
  return [
    plateBody(view, places.plate, catalogue),
    ...positions.flatMap((position) => {
      const opening = places.opening(position);
      return [
        ...deviceShapes(view.devices.get(position), opening, catalogue),
        positionLabel(view, position, { x: opening.x + opening.width / 2, y: places.plate.height + 4 }),
      ];
    }),
    ...facesIn(view, catalogue).flatMap((face) => legendOn(face, catalogue)),
  ];
}

function plateBody({ plate }: View, box: Box, catalogue: Catalogue): Shape {
  if (plate === undefined)
    return block(box, { radius: 3, line: { colour: palette.quiet, thickness: edge, dash } });
  const paint = paintOf(plate, catalogue);
  return block(box, { radius: 3, fill: paint.body, line: { colour: paint.edge, thickness: edge } });
}

function deviceShapes(device: DeviceSheet | undefined, opening: Box, catalogue: Catalogue): Shape[] {
  if (device === undefined)
    return [
      block(opening, {
        radius: 1.5,
        fill: palette.paper,
        line: { colour: palette.quiet, thickness: edge, dash },
      }),
      ...remark(opening, "device sheet", "still to come"),
    ];
  const paint = paintOf(device, catalogue);
  const line = { colour: paint.edge, thickness: edge };
  const buttons = buttonsIn(opening, device, catalogue);
  if (buttons.size === 0)
    return [
      block(opening, { radius: 1.5, fill: palette.paper, line }),
      ...remark(opening, "layout", "not known"),
    ];
  return [
    block(opening, { radius: 1.5, fill: paint.gap, line }),
    ...[...buttons.values()].map((face) => block(face, { radius: 1.2, fill: paint.body, line })),
  ];
}

function remark({ x, y, width, height }: Box, ...says: readonly string[]): Shape[] {
  return says.map((line, i) =>
    words(line, x + width / 2, y + height / 2 + i * 4, {
      size: 3.2,
      colour: palette.quiet,
      align: "centre",
    }),
  );
}

function positionLabel(
  { devices, gangs }: View,
  position: number,
  { x, y }: { x: number; y: number },
): Shape {
  const device = devices.get(position);
  const isGuess = device !== undefined && device.position === undefined && gangs > 1;
  const says = isGuess ? "position not given" : String(position);
  return words(says, x, y, { size: 3, colour: palette.quiet, align: "centre" });
}
