import type { Place } from "../trade/place.ts";
import type { Otherwise, Sheet } from "../trade/sheet.ts";
import { differencesOf, textAt } from "./differences.ts";
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
  const { file = "", cells = {}, unread = [] } = listed.list ?? {};
  const said = differencesOf(sheet, listed).filter(
    ({ place, was, now }) =>
      isCut(place) || (now !== "" && plainText(was) !== plainText(now) && !place.startsWith("contact.")),
  );
  const places = [
    ...said.map(({ place, was, now }) => ({ place, typed: was, says: now })),
    ...unread.map(({ place, typed }) => ({ place, typed: textAt(sheet, place), says: typed })),
  ].map((one) => ({ ...one, cell: cells[one.place] ?? "" }));
  return places.length === 0 ? undefined : { file, places };
}

/** What a list leaves empty elsewhere, the sheet may say. */
function isCut(place: Place): boolean {
  return place.startsWith("row.") || place.startsWith("plain.");
}
