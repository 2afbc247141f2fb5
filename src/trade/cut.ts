import type { FaceName } from "./legend.ts";

/** One row as it is cut. Distances are millimetres from the upper left corner of its face. */
export interface CutRow {
  /** Counted from 1, as on the sheet. */
  readonly row: number;
  readonly text: string;
  /** From the left end of the first letter's advance. */
  readonly left: number;
  readonly baseline: number;
  /** The width of the row as cut, the cutter included. */
  readonly width: number;
}

/** A legend as it is cut on its face: what was fitted when the sheet was checked. */
export interface CutLegend {
  readonly face: FaceName;
  /** The code of the font. */
  readonly font: string;
  /** Height of a capital, and the cutter's diameter, in millimetres. */
  readonly cap: number;
  readonly cutter: number;
  /** Whether every row fits. */
  readonly fits: boolean;
  readonly rows: readonly CutRow[];
}
