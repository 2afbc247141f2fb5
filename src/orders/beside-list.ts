import type { Place } from "../trade/place.ts";
import type { Otherwise, Sheet } from "../trade/sheet.ts";
import { differencesOf, textAt } from "./differences.ts";
import { numberKey, plainText } from "./keys.ts";
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

/**
 * The one list that orders what sheets beside it order, and not some of them. Only of the kind of sheet that it orders
 * can it lack one. If it orders nothing else than the sheets do, devices alone and in plates are of one kind.
 */
export function lackedByList(
  sheets: readonly Sheet[],
): { readonly file: string; readonly lacks: ReadonlySet<Sheet> } | undefined {
  const pairs = pairedWithLists(sheets);
  const [file, ...more] = new Set(sheets.flatMap(({ list }) => list?.file ?? []));
  if (file === undefined || more.length > 0 || pairs.length === 0) return undefined;
  const isSummary = pairs.length === sheets.filter(({ list }) => list !== undefined).length;
  const kinds = new Set(
    sheets.filter(({ list }) => list !== undefined).map((sheet) => kindOf(sheet, isSummary)),
  );
  const paired = new Set(pairs.map(({ sheet }) => wallPlaceOf(sheet)));
  const lacks = sheets.filter(
    (sheet) =>
      sheet.list === undefined &&
      wallPlaceOf(sheet) !== undefined &&
      !paired.has(wallPlaceOf(sheet)) &&
      kinds.has(kindOf(sheet, isSummary)),
  );
  return { file, lacks: new Set(lacks) };
}

function kindOf(sheet: Sheet, isSummary: boolean): string {
  const standing = sheet.kind === "device" && !isSummary ? sheet.standing : "";
  return `${numberKey(sheet.order ?? "")} ${sheet.kind} ${standing}`;
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
