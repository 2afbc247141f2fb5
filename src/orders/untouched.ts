import { hasText } from "../trade/legend.ts";
import type { Untouched } from "../trade/order.ts";
import { type Entry, entries } from "../trade/place.ts";
import { isFilled, type Sheet } from "../trade/sheet.ts";
import { differencesOf } from "./differences.ts";
import { foreseen } from "./expected.ts";
import { wallPlaceOf } from "./wall-place.ts";

/**
 * Device sheets of one letter on which nothing is filled in but what can be known before, beside one for the same place
 * that is filled in. A sheet that comes again as it stood says nothing new: then the other may be the one that is meant,
 * and what was typed on it is lost.
 */
export function untouchedAmong(sheets: readonly Sheet[], earlier: readonly Sheet[]): Untouched[] {
  const [blanks, rest] = [sheets.filter(isUntouched), sheets.filter((sheet) => !isUntouched(sheet))];
  if (blanks.length === 0) return [];
  const filled = Map.groupBy(rest, wallPlaceOf);
  const before = Map.groupBy(earlier, wallPlaceOf);
  return blanks.flatMap((blank): Untouched[] => {
    const place = wallPlaceOf(blank);
    if (place === undefined) return [];
    const olds = before.get(place) ?? [];
    const beside = (filled.get(place) ?? []).find((sheet) =>
      olds.every((old) => differencesOf(old, sheet).length > 0),
    );
    return beside === undefined ? [] : [{ blank, beside }];
  });
}

const known: ReadonlySet<Entry> = new Set(foreseen);

/** Whether a device has no legend and no layout, although its form asks for them, and nobody wrote on it. */
function isUntouched(sheet: Sheet): boolean {
  const { kind, prints, legends, unread, unsure, doubts, unmapped = [] } = sheet;
  return (
    kind === "device" &&
    prints.layout !== undefined &&
    legends.every((legend) => !legend.plain && !hasText(legend)) &&
    entries.every((place) => known.has(place) || !isFilled(sheet, place)) &&
    unread.length + unsure.length + doubts.length + unmapped.length === 0
  );
}
