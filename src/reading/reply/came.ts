import { hasText } from "../../trade/legend.ts";
import type { DeviceSheet, PlateSheet, Sheet } from "../../trade/sheet.ts";
import { type LetterFacts, numerals } from "./tallies.ts";
import { tokensOf } from "./word-bag.ts";

/** What words of a letter are held against: its sheets, and those of earlier letters about the same orders. */
export type Came = Pick<LetterFacts, "sheets" | "earlier" | "finishes" | "names">;

/** A number as people write it. */
export const figure = `(?:\\d{1,3}|${numerals.slice(1).join("|")})`;

export const isDevice = (sheet: Sheet): sheet is DeviceSheet => sheet.kind === "device";
export const isPlate = (sheet: Sheet): sheet is PlateSheet => sheet.kind === "plate";

/** The legends of a sheet's buttons or gangs, one text each. */
export const facesOf = ({ legends }: Sheet): string[] =>
  legends
    .filter((one) => one.face !== "plate" && (hasText(one) || one.plain))
    .toSorted((one, other) => Number(one.face) - Number(other.face))
    .map(({ rows }) => tokensOf(rows.join(" ")).join(" "));

/** What stands on the plate of a device that stands alone. */
export const stripOf = ({ legends }: Sheet): string =>
  tokensOf(legends.find(({ face }) => face === "plate")?.rows.join(" ") ?? "").join(" ");

/** Whether an earlier sheet stood where this one stands. */
export function isAgain(sheet: Sheet, { earlier }: Came): boolean {
  const placeOf = (one: Sheet): string =>
    JSON.stringify([one.kind, tokensOf(one.mark ?? ""), isDevice(one) ? one.position : undefined]);
  return earlier.some((one) => placeOf(one) === placeOf(sheet));
}

/** Whether each sheet of the letter stands where an earlier one stood. */
export const replacesAll = (came: Came): boolean =>
  came.sheets.length > 0 && came.sheets.every((sheet) => isAgain(sheet, came));
