/**
 * A surface that can carry a legend. On a device sheet it is a button ("1", "2", … from the top left, row by row), or
 * "plate": the strip of the one-gang plate of a device that stands alone. On a plate sheet it is a gang ("1", "2", …
 * left to right).
 */
export type FaceName = `${number}` | "plate";

/** The text engraved on one face, row by row as typed. An untouched row is "". */
export interface Legend {
  readonly face: FaceName;
  readonly rows: readonly string[];
  /** The buyer marked this face "leave plain": nothing is to be cut. */
  readonly plain: boolean;
}

/** Whether the legend has anything to cut. */
export function hasText(legend: Legend): boolean {
  return legend.rows.some((row) => row.trim() !== "");
}
