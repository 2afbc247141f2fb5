import { plainText } from "../orders/keys.ts";
import { isMarked } from "../orders/placed.ts";
import type { Order } from "../trade/order.ts";
import type { Problem } from "../trade/problem.ts";
import type { Sheet } from "../trade/sheet.ts";
import {
  type IsMark,
  markInFront,
  nameOf,
  placeOf,
  placesIn,
  positionIn,
  positionOf,
  toldBy,
} from "./named-place.ts";

/** A sheet, and copies of it whose files are called after places for which no sheet came. */
interface CalledElsewhere {
  readonly kept: Sheet;
  readonly copies: readonly Sheet[];
}

/** The sheets that were saved under the names of several places and say the same in all. */
export function calledElsewhere(order: Order): CalledElsewhere[] {
  const isElsewhere = elsewhereIn(order);
  const called = order.twice.filter(({ kept, again }) => isElsewhere(kept, again.named ?? again.file));
  return [...Map.groupBy(called, ({ kept }) => kept)].map(([kept, pairs]) => ({
    kept,
    copies: pairs.map(({ again }) => again),
  }));
}

/** Whether a place is still without a sheet, of those that were asked about as `calledElsewhere`. */
export function isStillElsewhere({ facts: { files }, spots: [spot] }: Problem, order: Order): boolean {
  const kept = order.sheets.find(({ id }) => id === spot?.file);
  const isElsewhere = elsewhereIn(order);
  return kept !== undefined && [files].flat().some((file) => isElsewhere(kept, String(file)));
}

/** Tells of a sheet and the name of its copy whether the name tells a place for which nothing came. */
function elsewhereIn({ stations }: Order): (kept: Sheet, name: string) => boolean {
  const taken = placesIn({ stations });
  const marks = new Set(stations.map(({ mark }) => plainText(mark)));
  return (kept, file) => {
    // What was made of a list has its name from us.
    if (!isMarked(kept) || kept.list !== undefined) return false;
    const { named: _, ...rest } = kept;
    const copy = { ...rest, file };
    const front = markInFront(copy);
    // A name that begins with a mark of the same series may name a station of which nothing came.
    const isKnown: IsMark = (one) => marks.has(one) || one === front;
    const told = toldBy(copy, isKnown) ?? besideAlone(copy, kept);
    return told !== undefined && told !== placeOf(kept) && !taken.has(told);
  };
}

/** What stands alone has no position, so the first of its names may tell any. */
function besideAlone(copy: Sheet, kept: Sheet): string | undefined {
  const { mark, position } = positionOf(kept);
  const [told, first = 1] = [copy, kept].map((sheet) => positionIn(nameOf(sheet)));
  if (kept.kind === "plate" || position !== undefined || told === first) return undefined;
  return told === undefined ? undefined : placeOf(kept, { mark, position: told });
}
