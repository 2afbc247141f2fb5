import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { Aside, Order } from "../../trade/order.ts";
import type { Problem } from "../../trade/problem.ts";
import { facesIn } from "./faces.ts";
import { foot, footHeight, head, headHeight, margin, type PageNumber } from "./furniture.ts";
import { contentHash } from "./hash.ts";
import { runOver } from "./legend.ts";
import { list, listHeight, pagesOfList } from "./list.ts";
import { changeMarks, faultMarks } from "./marks.ts";
import { measureDistance, measures } from "./measures.ts";
import { paperFor } from "./paper.ts";
import { placesOf } from "./places.ts";
import { type Entry, scheduleOf } from "./schedule.ts";
import { type Drawing, inOneLine, moved, type Shape } from "./shapes.ts";
import { stationShapes } from "./station.ts";
import type { View } from "./view.ts";

/** What a proof shows beside what the sheets say. */
export interface ProofDetails {
  /** How often the order has been changed, counted from 1 for what came first. */
  readonly revision?: number;
  /** What these point at is outlined, and what newer sheets have changed. Other notes are not. */
  readonly problems?: readonly Problem[];
  /** The numbers under which the answer tells of them. */
  readonly numbers?: ReadonlyMap<Problem, number>;
  /** It goes with a release. Otherwise it says that nothing is released by it. */
  readonly released?: { readonly on: string; readonly by: string };
}

/** One page of a proof, before it is numbered: a drawing with the list below it, or a list that found no room there. */
export interface Leaf {
  readonly view: View;
  readonly isDrawing: boolean;
  readonly paper: { readonly width: number; readonly height: number };
  readonly entries: readonly Entry[];
}

/** Millimetres: around the plate, for its dimensions and the numbers of the gangs. */
const around = { left: measureDistance + 4, above: measureDistance + 5, below: 7.5 };
const drawingTop = margin + headHeight + around.above;
const listPageTop = margin + headHeight + 4;

/**
 * The pages of one station. The paper is as large as the drawing needs. The list of what is made follows on pages of
 * its own where it finds no room below.
 */
export function leavesOf(view: View, catalogue: Catalogue, aside: readonly Aside[] = []): Leaf[] {
  const { plate } = placesOf(view.gangs, catalogue);
  const above = drawingTop + plate.height + around.below;
  const paper = paperFor({
    width: plate.width + around.left + 2 * margin,
    height: above + footHeight + margin,
  });
  const leaf = { view, paper };
  const width = paper.width - 2 * margin;
  const entries = scheduleOf(view, catalogue, aside);
  const room = paper.height - footHeight - margin;
  if (above + listHeight(entries, width) <= room) return [{ ...leaf, isDrawing: true, entries }];
  const lists = pagesOfList(entries, width, room - listPageTop);
  return [
    { ...leaf, isDrawing: true, entries: [] },
    ...lists.map((some) => ({ ...leaf, isDrawing: false, entries: some })),
  ];
}

/** One page at true scale, with all that says whose it is and what it is made of. */
export function proofPage(
  { view, isDrawing, paper, entries }: Leaf,
  order: Order,
  catalogue: Catalogue,
  { revision, problems = [], numbers = new Map(), released, ...number }: ProofDetails & PageNumber,
): Drawing {
  const { plate } = placesOf(view.gangs, catalogue);
  const faults = isDrawing ? faultMarks(view, problems, numbers, catalogue) : { shapes: [], kinds: [] };
  const changes = isDrawing ? changeMarks(view, problems, catalogue) : [];
  const plateLeft = Math.max(margin + around.left, (paper.width - plate.width) / 2);
  const state = [...(revision === undefined ? [] : [`Revision ${revision}`]), `Content ${contentHash(view)}`];
  const drawn: Shape[] = isDrawing
    ? moved(
        [
          ...measures(plate),
          ...stationShapes(view, catalogue),
          ...changes,
          ...faults.shapes,
          ...facesIn(view, catalogue).flatMap((face) => runOver(face, catalogue)),
        ],
        plateLeft,
        drawingTop,
      )
    : [];
  const listTop = isDrawing ? drawingTop + plate.height + around.below : listPageTop;
  return {
    ...paper,
    title: inOneLine(`Proof: station ${view.mark || "without a mark"}, order ${order.number}`),
    shapes: [
      ...head(view.mark, order, { state, released }, catalogue, paper.width),
      ...drawn,
      ...(entries.length === 0 ? [] : list(entries, listTop, paper.width - 2 * margin)),
      ...foot(paper, number, {
        faults: faults.kinds,
        changes: changes.length > 0,
        listFollows: isDrawing && entries.length === 0,
      }),
    ],
  };
}
