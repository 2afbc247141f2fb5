import type { Replacement } from "../trade/order.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { differencesOf } from "./differences.ts";
import { letterOf } from "./ids.ts";
import { plainText } from "./keys.ts";

/** What sheets stand, and which of them took the place of others when a letter came. */
interface Came {
  readonly sheets: readonly Sheet[];
  readonly replaced: readonly Replacement[];
  readonly late: readonly Replacement[];
}

/**
 * The sheets of an earlier list that a corrected one leaves out. A list is corrected as a whole if one of its rows came
 * again as it was, or most of its stations came again. One that brings only what had to be mended is not.
 */
export function leftOutIn({ sheets, replaced, late }: Came): Sheet[] {
  const again = Map.groupBy(
    replaced.filter(({ now }) => now.list !== undefined),
    ({ old }) => listOf(old),
  );
  const repeated = new Set<FileId>(late.map(({ now }) => now.id));
  const standing = Map.groupBy(
    sheets.filter(({ id }) => !repeated.has(id)),
    listOf,
  );
  return [...again].flatMap(([list, came]) => {
    const left = list === undefined ? [] : (standing.get(list) ?? []);
    const areFew = stationsOf(left) <= stationsOf(came.map(({ old }) => old));
    const isWhole = came.some(
      ({ old, now, how }) => how === "place" && (areFew || differencesOf(old, now).length === 0),
    );
    return isWhole ? left : [];
  });
}

/** The list that a sheet was made of; undefined if it came as a sheet. */
function listOf({ id, list }: Sheet): string | undefined {
  return list === undefined ? undefined : `${letterOf(id)} ${list.file}`;
}

function stationsOf(sheets: readonly Sheet[]): number {
  return new Set(sheets.map(({ mark = "" }) => plainText(mark))).size;
}
