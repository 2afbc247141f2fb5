import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { Order } from "../../trade/order.ts";
import type { Problem } from "../../trade/problem.ts";
import { foot, footHeight, head, headHeight, margin, type PageNumber } from "./furniture.ts";
import { contentHash } from "./hash.ts";
import { list, listHeight } from "./list.ts";
import { changeMarks, faultMarks } from "./marks.ts";
import { measureDistance, measures } from "./measures.ts";
import { paperFor } from "./paper.ts";
import { placesOf } from "./places.ts";
import { scheduleOf } from "./schedule.ts";
import { type Drawing, inOneLine, moved } from "./shapes.ts";
import { stationShapes } from "./station.ts";
import type { View } from "./view.ts";

/** What a proof shows beside what the sheets say. */
export interface ProofDetails {
  /** How often the order has been changed, counted from 1 for what came first. */
  readonly revision?: number;
  /** What these point at is outlined, and what newer sheets have changed. Other notes are not. */
  readonly problems?: readonly Problem[];
  /** It goes with a release. Otherwise it says that nothing is released by it. */
  readonly released?: { readonly on: string; readonly by: string };
}

/** Millimetres: around the plate, for its dimensions and the numbers of the gangs. */
const around = { left: measureDistance + 2, above: measureDistance + 5, below: 7.5 };

/** One station at true scale, with all that says whose it is and what it is made of. */
export function proofPage(
  view: View,
  order: Order,
  catalogue: Catalogue,
  { revision, problems = [], released, ...number }: ProofDetails & PageNumber,
): Drawing {
  const { plate } = placesOf(view.gangs, catalogue);
  const entries = scheduleOf(view, catalogue);
  const plateTop = margin + headHeight + around.above;
  const listTop = plateTop + plate.height + around.below;
  const paper = paperFor({
    width: plate.width + around.left + 2 * margin,
    height: listTop + listHeight(entries) + footHeight + margin,
  });
  const faults = faultMarks(view, problems, catalogue);
  const changes = changeMarks(view, problems, catalogue);
  const plateLeft = Math.max(margin + around.left, (paper.width - plate.width) / 2);
  const state = [...(revision === undefined ? [] : [`Revision ${revision}`]), `Content ${contentHash(view)}`];
  return {
    ...paper,
    title: inOneLine(`Proof: station ${view.mark || "without a mark"}, order ${order.number}`),
    shapes: [
      ...head(view.mark, order, { state, released }, catalogue, paper.width),
      ...moved(
        [...measures(plate), ...stationShapes(view, catalogue), ...changes, ...faults],
        plateLeft,
        plateTop,
      ),
      ...list(entries, listTop, paper.width - 2 * margin),
      ...foot(paper, number, { faults: faults.length > 0, changes: changes.length > 0 }),
    ],
  };
}
