import type { Sheet } from "../trade/sheet.ts";
import { plainText } from "./keys.ts";
import { isMarked, placed } from "./placed.ts";

/**
 * The earlier sheets that still stand when new ones come: a new sheet for the same place takes the place
 * of the old one, whether or not it is in order itself, since its sender no longer wants the old one. A
 * sheet that names no station replaces nothing: it may as well be one more of its kind.
 */
export function withoutReplaced(earlier: readonly Sheet[], sheets: readonly Sheet[]): Sheet[] {
  const taken = new Set(sheets.map(placeOf));
  return earlier.filter((sheet) => {
    const place = placeOf(sheet);
    return place === undefined || !taken.has(place);
  });
}

/** The order, and the station and position in it; undefined for a sheet that names no station. */
function placeOf(one: Sheet): string | undefined {
  const number = one.order ?? "";
  const sheet = placed(one, [], [number]);
  if (!isMarked(sheet)) return undefined;
  const position = sheet.kind === "device" && sheet.standing !== "alone" ? (sheet.position ?? "") : "";
  return JSON.stringify([plainText(number), sheet.kind, plainText(sheet.mark), position]);
}
