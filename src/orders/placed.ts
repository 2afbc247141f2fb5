import type { Sheet } from "../trade/sheet.ts";
import { plainText } from "./keys.ts";
import { readNotedPlace } from "./notes.ts";

/** What people write into the field of the station mark where they have none. */
const noMark = /^(|NA|NIL|NONE|TBA|TBD|X+)$/;

/** Whether the sheet carries a station mark. */
export function isMarked(sheet: Sheet): sheet is Sheet & { readonly mark: string } {
  return !noMark.test(plainText(sheet.mark ?? ""));
}

/**
 * The sheet with what its notes add: the station mark if it has none, and its place where its fields say nothing.
 * `marks` and `numbers` are those of the whole order.
 */
export function placed(sheet: Sheet, marks: readonly string[], numbers: readonly string[]): Sheet {
  if (isMarked(sheet)) return sheet;
  const { mark, ...noted } = readNotedPlace(sheet.notes ?? "", marks, numbers);
  if (mark === undefined) return sheet;
  if (sheet.kind === "plate") return { ...sheet, mark };
  if (sheet.standing !== "alone") return { ...noted, ...sheet, mark };
  // A device that stands alone needs no plate, and its notes may speak of a neighbour's. But if the form does not
  // ask, "alone" is only taken for granted.
  const granted = sheet.prints.standing === undefined && noted.position !== undefined;
  return granted ? { ...noted, ...sheet, mark, standing: "in-plate" } : sheet;
}
