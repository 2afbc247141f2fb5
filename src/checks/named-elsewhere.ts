import { differencesOf } from "../orders/differences.ts";
import { byId, letterOf } from "../orders/ids.ts";
import { plainText } from "../orders/keys.ts";
import { isMarked } from "../orders/placed.ts";
import type { Order, Replacement, Station } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import {
  type IsMark,
  markInFront,
  nameOf,
  otherMarkIn,
  placeOf,
  placesIn,
  positionOf,
  toldBy,
} from "./named-place.ts";

/** A sheet whose file is called after another place than it says. */
interface NamedElsewhere extends Said {
  readonly sheet: Sheet;
  /** The sheet whose place it takes, if that alone makes its name worth a question. */
  readonly old?: Sheet;
}

/** What a sheet says of its place. */
interface Said {
  readonly place: "position" | "mark";
  readonly typed: string | number;
}

/** The sheets whose files are called after other places than they say, without names that are only old. */
export function namedElsewhere(order: Order, replaced: readonly Replacement[]): NamedElsewhere[] {
  const taken = placesIn(order);
  const marks = new Set(order.stations.map(({ mark }) => plainText(mark)));
  const isMark: IsMark = (one) => marks.has(one);
  const gave = new Map(replaced.flatMap(({ old, now, how }) => (how === "place" ? [[now.id, old]] : [])));
  return order.stations.flatMap((station) =>
    [...station.plates, ...station.devices].flatMap((sheet): NamedElsewhere[] => {
      const own = placeOf(sheet);
      // What was made of a list has its name from us.
      if (!isMarked(sheet) || sheet.list !== undefined || (taken.get(own)?.length ?? 0) > 1) return [];
      const told = toldBy(sheet, isMark);
      if (told !== undefined && told !== own && isAsked(told, own, sheet, station))
        return [{ sheet, ...saidInstead(sheet, isMark) }];
      const old = gave.get(sheet.id);
      if (old === undefined || !takesOver(sheet, old)) return [];
      // A name that begins with a mark of the same series may name a station that is new.
      const front = markInFront(sheet);
      const isKnown: IsMark = (one) => isMark(one) || one === front;
      const elsewhere = toldBy(sheet, isKnown);
      return elsewhere === undefined || elsewhere === own
        ? []
        : [{ sheet, ...saidInstead(sheet, isKnown), old }];
    }),
  );

  /** A name is only old where the place that it tells has a file of that name, or where others of its station came before. */
  function isAsked(told: string, own: string, sheet: Sheet, station: Station): boolean {
    const there = taken.get(told) ?? [];
    const isOld = !isFirstHere(sheet, station) || there.some((other) => namesItself(other, told, isMark));
    return !isOld || there.some((other) => toldBy(other, isMark) === own);
  }
}

/** What a sheet says of its place where its file's name says something else. */
function saidInstead(sheet: Sheet, isMark: IsMark): Said {
  const { mark, position } = positionOf(sheet);
  return position !== undefined && otherMarkIn(nameOf(sheet), sheet, isMark) === undefined
    ? { typed: position, place: "position" }
    : { typed: mark, place: "mark" };
}

/** Whether a sheet changes one that had another name. */
function takesOver(sheet: Sheet, old: Sheet): boolean {
  return plainText(nameOf(old)) !== plainText(nameOf(sheet)) && differencesOf(old, sheet).length > 0;
}

/** Whether the file of a sheet is named after the place that the sheet has. */
function namesItself(sheet: Sheet, place: string, isMark: IsMark): boolean {
  const { mark, position } = positionOf(sheet);
  return position === undefined
    ? plainText(nameOf(sheet)).includes(plainText(mark))
    : toldBy(sheet, isMark) === place;
}

/** Whether the sheet came with the first of its station; one that came later may be an old file, mended. */
function isFirstHere(sheet: Sheet, { plates, devices }: Station): boolean {
  return [...plates, ...devices].every(({ id }) => byId(letterOf(sheet.id), letterOf(id)) <= 0);
}
