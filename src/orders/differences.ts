import type { Replacement } from "../trade/order.ts";
import { entries, type Place } from "../trade/place.ts";
import { type Sheet, saidAt } from "../trade/sheet.ts";
import { contentKey } from "./keys.ts";

/** A place that two sheets fill in differently. */
export interface Difference {
  readonly place: Place;
  /** As typed; "" where nothing stands. */
  readonly was: string;
  readonly now: string;
}

/**
 * Where two sheets say different things. Fields come first, in the order in which one fills them in; then legends.
 */
export function differencesOf(old: Sheet, now: Sheet): Difference[] {
  const [was, is] = [saidBy(old), saidBy(now)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((place) => {
    const [before, after] = [was.get(place) ?? "", is.get(place) ?? ""];
    return before === after ? [] : [{ place, was: before, now: after }];
  });
}

/** Whether a sheet came again as it was, in what it says and in how it looks. */
export function isUnchanged({ old, now }: Replacement): boolean {
  const looks = ({ doubts, unsure, unread, edition, unmapped = [] }: Sheet): string =>
    contentKey({ doubts, unsure, unread, edition, unmapped });
  return differencesOf(old, now).length === 0 && looks(old) === looks(now);
}

/** What stands at any place of a sheet, its legends among them. */
export function textAt(sheet: Sheet, place: Place): string {
  return saidBy(sheet).get(place) ?? "";
}

/** What stands in each place of a sheet. */
function saidBy(sheet: Sheet): Map<Place, string> {
  return new Map<Place, string>([
    ...entries.map((place) => [place, saidAt(sheet, place)] as const),
    ...sheet.legends.flatMap(({ face, rows, plain }) => [
      ...rows.map((text, i) => [`row.${face}.${i + 1}`, text.trim() === "" ? "" : text] as const),
      [`plain.${face}`, plain ? "yes" : ""] as const,
    ]),
  ]);
}
