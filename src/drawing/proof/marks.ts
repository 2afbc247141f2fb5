import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { Place } from "../../trade/place.ts";
import type { Problem } from "../../trade/problem.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { buttonsIn, placesOf } from "./places.ts";
import { type Box, block, grown, type Shape } from "./shapes.ts";
import type { View } from "./view.ts";

/** A colour that no finish has. White around it makes it stand out on any. */
export const faulty = "#D8005A";

/**
 * Places whose content shows in the drawing: the colours, the layout, the number of gangs. All others are words
 * alone.
 */
const shownPlaces: ReadonlySet<Place> = new Set<Place>([
  "finish",
  "lettering",
  "layout",
  "legend-place",
  "gangs",
  "position",
  "standing",
]);

/** Outlines around everything in the drawing that a problem points at. Mere notes have none. */
export function faultMarks(view: View, problems: readonly Problem[], catalogue: Catalogue): Shape[] {
  const spots = problems.filter(({ verdict }) => verdict !== "pass").flatMap((problem) => problem.spots);
  const boxes = spots.flatMap(({ file, place }) => boxOf(view, file, place, catalogue) ?? []);
  const apart = new Map(boxes.map((box) => [`${box.x} ${box.y} ${box.width}`, box]));
  return [...apart.values()].flatMap((box) => [
    block(grown(box, 0.5), { radius: 1.6, line: { colour: "#FFFFFF", thickness: 1.6 } }),
    block(grown(box, 0.5), { radius: 1.6, line: { colour: faulty, thickness: 0.8 } }),
  ]);
}

function boxOf(view: View, file: string, place: Place | undefined, catalogue: Catalogue): Box | undefined {
  const places = placesOf(view.gangs, catalogue);
  const face = /^(?:row|plain)\.(\d+|plate)\b/.exec(place ?? "")?.[1] as FaceName | undefined;
  if (view.plate?.id === file && (face === "plate" || (face !== undefined && view.plate.kind === "plate"))) {
    const position = face === "plate" ? 1 : Number(face);
    return position <= view.gangs ? places.gang(position) : places.plate;
  }
  if (face === undefined && place !== undefined && !shownPlaces.has(place)) return undefined;
  const position = positionOf(view, file);
  const device = view.devices.get(position);
  if (device !== undefined) {
    const opening = places.opening(position);
    return face === undefined ? opening : (buttonsIn(opening, device, catalogue).get(face) ?? opening);
  }
  return view.plate?.id === file ? places.plate : undefined;
}

/** Where the device of a file stands; 0 if nowhere. */
function positionOf({ devices }: View, file: Sheet["id"]): number {
  return [...devices].find(([, device]) => device.id === file)?.[0] ?? 0;
}
