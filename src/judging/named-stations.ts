import { patternOf } from "../reading/reply/tallies.ts";
import type { Sheet } from "../trade/sheet.ts";

/** The marks of some sheets. */
export function stationsOf(sheets: readonly Sheet[]): readonly string[] {
  return [...new Set(sheets.flatMap(({ mark }) => mark ?? []))];
}

/** The stations of an order that words name. */
export function stationsIn(words: string, sheets: readonly Sheet[]): readonly string[] {
  return stationsOf(sheets).filter((mark) => (patternOf(mark)?.exec(words) ?? null) !== null);
}
