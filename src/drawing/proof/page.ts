import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { Aside, Order } from "../../trade/order.ts";
import type { Problem } from "../../trade/problem.ts";
import type { ProblemKind } from "../kinds.ts";
import { facesIn } from "./faces.ts";
import { foot, footHeight, head, headHeight, margin, type PageNumber } from "./furniture.ts";
import { contentHash } from "./hash.ts";
import { runOver } from "./legend.ts";
import { type ListPlace, leastWidth, listHeight, listShapes, pagesOfList } from "./list.ts";
import { changeMarks, faultMarks } from "./marks.ts";
import { measureDistance, measures } from "./measures.ts";
import { paperFor } from "./paper.ts";
import { placesOf } from "./places.ts";
import { type Entry, scheduleOf } from "./schedule.ts";
import { type Drawing, inOneLine, moved, part, type Shape } from "./shapes.ts";
import { stationShapes } from "./station.ts";
import type { View } from "./view.ts";

/** What a proof shows beside what the sheets say. */
export interface ProofDetails {
  /** How often the order has been changed, counted from 1 for what came first. */
  readonly revision?: number;
  /** How many stations of the order have no page, since they have not changed. */
  readonly left?: number;
  /** What these point at is outlined, and what newer sheets have changed. Other notes are not. */
  readonly problems?: readonly Problem[];
  /** The numbers under which the answer tells of them. */
  readonly numbers?: ReadonlyMap<Problem, number>;
  /** It goes with a release. Otherwise it says that nothing is released by it. */
  readonly released?: { readonly on: string; readonly by: string };
}

/** One page of a proof, before it is numbered: a drawing, a list of what is made, or both. */
export interface Leaf {
  readonly view: View;
  readonly paper: { readonly width: number; readonly height: number };
  /** Where the plate begins; absent on a page of the list alone. */
  readonly plateLeft?: number;
  readonly list?: { readonly entries: readonly Entry[] } & ListPlace;
}

/** Millimetres: around the plate, for its dimensions and the numbers of the gangs. */
const around = { left: measureDistance + 4, right: 8, above: measureDistance + 5, below: 7.5 };
const drawingTop = margin + headHeight + around.above;
const listPageTop = margin + headHeight + 4;

/**
 * The pages of one station. The paper is as large as the drawing needs. The list of what is made stands beside the
 * drawing or below it. Where neither leaves room, it follows on pages of its own.
 */
export function leavesOf(view: View, catalogue: Catalogue, aside: readonly Aside[] = []): Leaf[] {
  const { plate } = placesOf(view.gangs, catalogue);
  const above = drawingTop + plate.height + around.below;
  const paper = paperFor({
    width: plate.width + around.left + 2 * margin,
    height: above + footHeight + margin,
  });
  const entries = scheduleOf(view, catalogue, aside);
  const foot = paper.height - footHeight - margin;
  const isRoom = (place: ListPlace): boolean =>
    place.width >= leastWidth && place.top + listHeight(entries, place.width) <= foot;
  const leftmost = margin + around.left;
  const centred = Math.max(leftmost, (paper.width - plate.width) / 2);
  const besideAt = leftmost + plate.width + around.right;
  const beside = { left: besideAt, top: drawingTop, width: paper.width - margin - besideAt };
  if (isRoom(beside)) return [{ view, paper, plateLeft: leftmost, list: { entries, ...beside } }];
  const below = { left: margin, top: above, width: paper.width - 2 * margin };
  if (isRoom(below)) return [{ view, paper, plateLeft: centred, list: { entries, ...below } }];
  const whole = { ...below, top: listPageTop };
  return [
    { view, paper, plateLeft: centred },
    ...pagesOfList(entries, whole.width, foot - whole.top).map((some) => ({
      view,
      paper,
      list: { entries: some, ...whole },
    })),
  ];
}

/** One page at true scale, with all that says whose it is and what it is made of. */
export function proofPage(
  { view, paper, plateLeft, list }: Leaf,
  order: Order,
  catalogue: Catalogue,
  { revision, left = 0, problems = [], numbers = new Map(), released, ...number }: ProofDetails & PageNumber,
): Drawing {
  const drawn = plateLeft === undefined ? undefined : drawingOf(view, problems, numbers, catalogue);
  const state = [
    ...(revision === undefined ? [] : [`Revision ${revision}`]),
    `Content ${contentHash(view)}`,
    ...(left === 0 ? [] : [`${left} unchanged ${left === 1 ? "station" : "stations"} not shown`]),
  ];
  return {
    ...paper,
    title: inOneLine(`Proof: station ${view.mark || "without a mark"}, order ${order.number}`),
    shapes: [
      ...head(view.mark, order, { state, released }, catalogue, paper.width),
      ...(drawn === undefined
        ? []
        : [
            part("Figure", moved(drawn.shapes, plateLeft ?? 0, drawingTop), {
              alt: aloud(view, drawn.numbers),
            }),
          ]),
      ...(list === undefined ? [] : listShapes(list.entries, list)),
      ...foot(paper, number, {
        faults: drawn?.faults ?? [],
        changes: drawn?.changes ?? false,
        listFollows: list === undefined,
      }),
    ],
  };
}

/** What a drawing shows, for whoever has it read aloud. */
function aloud({ gangs }: View, numbers: readonly number[]): string {
  return [
    `The plate at true scale, ${gangs} ${gangs === 1 ? "gang" : "gangs"} wide, with all that is cut.`,
    ...(numbers.length === 0 ? [] : [`Outlined, with numbers as in the answer: ${numbers.join(", ")}.`]),
    "The table has its legends.",
  ].join(" ");
}

/** The plate with its dimensions and all that stands out on it, its upper left corner at 0, 0. */
function drawingOf(
  view: View,
  problems: readonly Problem[],
  numbers: ReadonlyMap<Problem, number>,
  catalogue: Catalogue,
): { shapes: Shape[]; faults: readonly ProblemKind[]; numbers: readonly number[]; changes: boolean } {
  const faults = faultMarks(view, problems, numbers, catalogue);
  const changes = changeMarks(view, problems, catalogue);
  return {
    shapes: [
      ...measures(placesOf(view.gangs, catalogue).plate),
      ...stationShapes(view, catalogue),
      ...changes,
      ...faults.shapes,
      ...facesIn(view, catalogue).flatMap((face) => runOver(face, catalogue)),
    ],
    faults: faults.kinds,
    numbers: faults.numbers,
    changes: changes.length > 0,
  };
}
