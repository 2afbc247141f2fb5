import type { Otherwise, Sheet } from "../trade/sheet.ts";
import { differencesOf } from "./differences.ts";
import { plainText } from "./keys.ts";
import { wallPlaceOf } from "./wall-place.ts";

/** A sheet, and what a list beside it orders for the same place. */
export interface Pair {
  readonly sheet: Sheet;
  readonly listed: Sheet;
}

/** The sheets of one letter that a list beside them orders too. */
export function pairedWithLists(sheets: readonly Sheet[]): Pair[] {
  const own = new Map(
    sheets.filter(({ list }) => list === undefined).map((sheet) => [wallPlaceOf(sheet), sheet]),
  );
  return sheets
    .filter(({ list }) => list !== undefined)
    .flatMap((listed) => {
      const place = wallPlaceOf(listed);
      const sheet = place === undefined ? undefined : own.get(place);
      return sheet === undefined ? [] : [{ sheet, listed }];
    });
}

/** Where a list says something else than the sheet; undefined if the two agree. */
export function otherwiseIn({ sheet, listed }: Pair): Otherwise | undefined {
  const { file = "", cells = {} } = listed.list ?? {};
  const places = differencesOf(sheet, listed)
    .filter(
      ({ place, was, now }) =>
        isCut(place) || (was !== "" && now !== "" && plainText(was) !== plainText(now)),
    )
    .map(({ place, was, now }) => ({ place, cell: cells[place] ?? "", typed: was, says: now }));
  return places.length === 0 ? undefined : { file, places };
}

/** Legends are compared as typed. What one of the two leaves out elsewhere, the other may say. */
function isCut(place: string): boolean {
  return place.startsWith("row.") || place.startsWith("plain.");
}
