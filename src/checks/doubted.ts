import type { Place } from "../trade/place.ts";
import type { Spot } from "../trade/problem.ts";
import type { Doubt, Sheet } from "../trade/sheet.ts";
import { labelOf } from "./check.ts";

/** Whether something of this kind was found about the sheet's file or pages. */
export function isDoubted(sheet: Sheet, ...kinds: readonly Doubt["what"][]): boolean {
  return sheet.doubts.some(({ what }) => kinds.includes(what));
}

/** The places about which it was found, each once. */
export function doubtedPlaces(sheet: Sheet, kind: Doubt["what"]): Place[] {
  const places = sheet.doubts.flatMap(({ what, place }) => (what === kind ? (place ?? []) : []));
  return [...new Set(places)];
}

/** Places of which the page still shows what was cut off in the field. */
export function shownLonger(sheet: Sheet): Place[] {
  return sheet.doubts.flatMap(({ what, place, text, shown }) =>
    what === "value-hidden" && text !== undefined && shown?.startsWith(text) ? (place ?? []) : [],
  );
}

/** Where doubts show: their places, and where each was seen on the page. */
export function spotsOf(sheet: Sheet, doubts: readonly Doubt[]): readonly Spot[] {
  const spots = doubts.map(
    ({ place, seen }): Spot => ({
      file: sheet.id,
      ...(place === undefined ? {} : { place }),
      ...(seen === undefined ? {} : { seen }),
    }),
  );
  return [...new Map(spots.map((spot) => [JSON.stringify(spot), spot])).values()];
}

/** The labels of places in quotation marks, for a sentence that lists them; more than six are counted. */
export function fieldsIn(sheet: Sheet, places: readonly Place[]): readonly string[] {
  const labels = [...new Set(places.map((place) => `“${labelOf(sheet, place)}”`))];
  return labels.length > 6 ? [...labels.slice(0, 5), `${labels.length - 5} more fields`] : labels;
}
