import type { Sheet } from "../trade/sheet.ts";
import { numberKey, plainText } from "./keys.ts";
import { isNoNumber } from "./no-number.ts";
import { isMarked, placed } from "./placed.ts";

/**
 * Where on the wall a sheet belongs: two sheets with the same text are for the same place. Undefined for one that
 * names no order or no station, and for a device of a plate whose position is not known.
 */
export function wallPlaceOf(one: Sheet): string | undefined {
  const number = one.order ?? "";
  const sheet = placed(one, [], [number]);
  if (isNoNumber(number) || !isMarked(sheet)) return undefined;
  const where = sheet.kind === "plate" ? "plate" : sheet.standing === "alone" ? "alone" : sheet.position;
  return where === undefined ? undefined : [numberKey(number), plainText(sheet.mark), where].join("/");
}
