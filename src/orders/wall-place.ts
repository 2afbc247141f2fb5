import type { Sheet } from "../trade/sheet.ts";
import { numberKey, plainText } from "./keys.ts";
import { isNoNumber } from "./no-number.ts";
import { isMarked, placed } from "./placed.ts";

/**
 * Where on the wall a sheet belongs. Two sheets with the same text are for the same place. Undefined if the sheet
 * names no order or no station, or if the position of a device in a plate is not known.
 */
export function wallPlaceOf(one: Sheet): string | undefined {
  const number = one.order ?? "";
  const sheet = placed(one, [], [number]);
  if (isNoNumber(number) || !isMarked(sheet)) return undefined;
  const where = sheet.kind === "plate" ? "plate" : sheet.standing === "alone" ? "alone" : sheet.position;
  return where === undefined ? undefined : [numberKey(number), plainText(sheet.mark), where].join("/");
}
