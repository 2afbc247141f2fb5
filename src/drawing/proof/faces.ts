import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { paintOf } from "./colours.ts";
import { buttonsIn, placesOf } from "./places.ts";
import type { Box } from "./shapes.ts";
import type { View } from "./view.ts";

/** A face that a drawing shows: whose legend is on it, where it lies, and the colour of its lettering. */
export interface ShownFace {
  readonly sheet: Sheet;
  readonly name: FaceName;
  readonly face: Box;
  readonly colour: string;
}

/** The faces of a plate and of all devices in it. */
export function facesIn({ plate, gangs, devices }: View, catalogue: Catalogue): ShownFace[] {
  const places = placesOf(gangs, catalogue);
  const positions = Array.from({ length: gangs }, (_, i) => i + 1);
  const above = positions.map((position) => ({
    name: plate?.kind === "plate" ? (`${position}` as const) : ("plate" as const),
    face: places.gang(position),
  }));
  const buttons = [...devices].flatMap(([position, sheet]) =>
    [...buttonsIn(places.opening(position), sheet, catalogue)].map(([name, face]) => ({ sheet, name, face })),
  );
  return [...(plate === undefined ? [] : above.map((one) => ({ sheet: plate, ...one }))), ...buttons].map(
    (one) => ({ ...one, colour: paintOf(one.sheet, catalogue).lettering }),
  );
}
