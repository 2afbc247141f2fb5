import type { Catalogue } from "../../catalogue/catalogue.ts";
import { sheetReplaced } from "../../checks/order/sheet-replaced.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { Place } from "../../trade/place.ts";
import type { Problem } from "../../trade/problem.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { buttonsIn, placesOf } from "./places.ts";
import { type Box, block, grown, type Shape } from "./shapes.ts";
import type { View } from "./view.ts";

/** Colours that no finish has. White around them makes them stand out on any. */
export const faulty = "#D8005A";
export const changed = "#0A4FB0";

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
  return outlines(
    view,
    problems.filter(({ verdict }) => verdict !== "pass"),
    catalogue,
    { colour: faulty, thickness: 0.8 },
  );
}

/** Outlines around what a newer sheet has changed. */
export function changeMarks(view: View, problems: readonly Problem[], catalogue: Catalogue): Shape[] {
  const replaced = problems.filter(
    ({ check, wording }) => check === sheetReplaced.id && wording === "changed",
  );
  // A sheet that changed whole has no place to outline.
  const placed = replaced.map((problem) => ({
    ...problem,
    spots: problem.spots.filter(({ place }) => place !== undefined),
  }));
  return outlines(view, placed, catalogue, { colour: changed, thickness: 0.5 });
}

function outlines(
  view: View,
  problems: readonly Problem[],
  catalogue: Catalogue,
  line: { readonly colour: string; readonly thickness: number },
): Shape[] {
  const spots = problems.flatMap((problem) => problem.spots);
  const boxes = spots.flatMap(({ file, place }) => boxOf(view, file, place, catalogue) ?? []);
  const apart = new Map(boxes.map((box) => [`${box.x} ${box.y} ${box.width}`, box]));
  return [...apart.values()].flatMap((box) => [
    block(grown(box, 0.5), { radius: 1.6, line: { colour: "#FFFFFF", thickness: line.thickness + 0.8 } }),
    block(grown(box, 0.5), { radius: 1.6, line }),
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
