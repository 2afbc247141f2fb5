import type { Catalogue } from "../../catalogue/catalogue.ts";
import { sheetReplaced } from "../../checks/order/sheet-replaced.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { Place } from "../../trade/place.ts";
import type { Problem } from "../../trade/problem.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { textWidth } from "../blank/appearance.ts";
import { gravestKind, outlineLooks, type ProblemKind, problemKinds } from "../kinds.ts";
import { buttonsIn, placesOf } from "./places.ts";
import { type Box, block, grown, type Shape, words } from "./shapes.ts";
import type { View } from "./view.ts";

/** A colour that no finish has. White around an outline makes it stand out on any. */
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

/** Outlines on a drawing, and the kinds and numbers of the problems that they tell of. */
interface FaultMarks {
  readonly shapes: readonly Shape[];
  readonly numbers: readonly number[];
  readonly kinds: readonly ProblemKind[];
}

/**
 * Outlines around everything in the drawing that a problem points at, with the numbers of the answer. Mere notes have
 * none.
 */
export function faultMarks(
  view: View,
  problems: readonly Problem[],
  numbers: ReadonlyMap<Problem, number>,
  catalogue: Catalogue,
): FaultMarks {
  const spots = problems.flatMap((problem) => {
    const kind = problemKinds.find((one) => one === problem.verdict);
    if (kind === undefined) return [];
    const boxes = problem.spots.flatMap(({ file, place }) => boxOf(view, file, place, catalogue) ?? []);
    return boxes.map((box) => ({ box, kind, number: numbers.get(problem) }));
  });
  const apart = [...Map.groupBy(spots, ({ box }) => keyOf(box)).values()].flatMap((those) => {
    const box = those[0]?.box;
    const told = [...new Set(those.flatMap(({ number }) => number ?? []))].toSorted((a, b) => a - b);
    return box === undefined ? [] : [{ box: grown(box, 0.5), kind: gravestKind(those), told }];
  });
  const pills: Box[] = [];
  return {
    numbers: [...new Set(apart.flatMap(({ told }) => told))].toSorted((a, b) => a - b),
    kinds: problemKinds.filter((kind) => apart.some((one) => one.kind === kind)),
    shapes: [
      ...apart.flatMap(({ box, kind }) => outline(box, { ...outlineLooks[kind], thickness: 0.8 })),
      ...apart.flatMap(({ box, kind, told }) =>
        told.length === 0 ? [] : pill(box, told.join(", "), outlineLooks[kind].colour, pills),
      ),
    ],
  };
}

/** Millimetres. */
const pillHeight = 4.4;
const pillText = 3.2;

/** Numbers in a bar with round ends on the upper left corner of a box, beside those that stand there. */
function pill(box: Box, text: string, colour: string, others: Box[]): Shape[] {
  const width = Math.max(pillHeight, textWidth(text, pillText) * 1.12 + 2.4);
  const at = { x: box.x - pillHeight / 2, y: box.y - pillHeight / 2, width, height: pillHeight };
  const covers = (other: Box): boolean =>
    Math.abs(other.y - at.y) < pillHeight && at.x < other.x + other.width && other.x < at.x + width;
  for (let other = others.find(covers); other !== undefined; other = others.find(covers))
    at.x = other.x + other.width + 0.4;
  others.push(at);
  return [
    block(grown(at, 0.4), { radius: pillHeight / 2 + 0.4, fill: "#FFFFFF" }),
    block(at, { radius: pillHeight / 2, fill: colour }),
    words(text, at.x + width / 2, at.y + pillHeight / 2 + 0.36 * pillText, {
      size: pillText,
      bold: true,
      colour: "#FFFFFF",
      align: "centre",
    }),
  ];
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
  const boxes = placed.flatMap(({ spots }) =>
    spots.flatMap(({ file, place }) => boxOf(view, file, place, catalogue) ?? []),
  );
  const apart = new Map(boxes.map((box) => [keyOf(box), grown(box, 0.5)]));
  return [...apart.values()].flatMap((box) => outline(box, { colour: changed, thickness: 0.5 }));
}

function keyOf({ x, y, width }: Box): string {
  return `${x} ${y} ${width}`;
}

interface Look {
  readonly colour: string;
  /** Millimetres. */
  readonly thickness: number;
  /** Drawn and left out, in points. */
  readonly dash?: readonly number[];
}

function outline(box: Box, { colour, thickness, dash = [] }: Look): Shape[] {
  const [drawn = 0, left = 0] = dash.map((length) => (length * 25.4) / 72);
  const dashed = drawn === 0 ? {} : { dash: [drawn, left] as const };
  return [
    block(box, { radius: 1.6, line: { colour: "#FFFFFF", thickness: thickness + 0.8 } }),
    block(box, { radius: 1.6, line: { colour, thickness, ...dashed } }),
  ];
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
