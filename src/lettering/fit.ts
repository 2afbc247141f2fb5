import { blockOf, type Engraving, type Face } from "../catalogue/engraving.ts";
import type { CutRow } from "../trade/cut.ts";
import { type Cut, offCentre, widthOf } from "./row.ts";

/** How a legend is cut on its face. Checks, drawings and the record all go by it. */
export interface Fitted extends Cut {
  /** The width there is for a row. */
  readonly room: number;
  /** Whether every row fits into that width at the height that was found. */
  readonly fits: boolean;
  /** Rows that have something to cut. */
  readonly rows: readonly CutRow[];
}

/** How far from the upper edge the first row of a legend begins, or from the lower edge the last one ends. */
export type Edge = { readonly top: number } | { readonly foot: number };

/**
 * Fits the rows of a legend to a face. Letters have the face's cap height. If the catalogue allows smaller ones, they
 * have the greatest height at which every row fits. A legend that cannot fit keeps the least height, and its too wide
 * rows begin at the left margin. All other rows are centred. The rows stand in the middle of the face, or so far
 * `from` an edge.
 */
export function fitLegend(rows: readonly string[], face: Face, engraving: Engraving, from?: Edge): Fitted {
  const { cutter, tracking, row_gap } = face;
  const font = face.font ?? engraving.fonts[0]?.code ?? "RS";
  const typed = rows.flatMap((text, i) => (text.trim() === "" ? [] : [{ row: i + 1, text }]));
  const room = tidy(face.width - 2 * engraving.margin);
  const cutAt = (cap: number): Cut => ({ font, cap, tracking, cutter });
  const isRoom = (cap: number): boolean =>
    typed.every(({ text }) => widthOf(text, cutAt(cap)) + cutter <= room);

  const heights = heightsOf(face.cap, engraving.fit);
  const cap = heights.find(isRoom) ?? heights.at(-1) ?? face.cap;
  // Blanks above a row are cut as empty rows.
  const lines = typed.at(-1)?.row ?? 0;
  const block = blockOf(lines, cap, face);
  const first =
    from === undefined
      ? (face.height - block) / 2
      : "top" in from
        ? from.top
        : face.height - from.foot - block;
  return {
    ...cutAt(cap),
    room,
    fits: isRoom(cap),
    rows: typed.map(({ row, text }) => {
      const width = widthOf(text, cutAt(cap));
      const centred = (face.width - width) / 2 - offCentre(text, cutAt(cap));
      return {
        row,
        text,
        left: width + cutter <= room ? centred : engraving.margin,
        baseline: first + row * cap + (row - 1) * row_gap,
        width: width + cutter,
      };
    }),
  };
}

/** The cap heights to try, from the greatest. */
function heightsOf(cap: number, fit: Engraving["fit"]): number[] {
  if (fit === "fixed") return [cap];
  const steps = Math.max(0, Math.floor((cap - fit.down_to) / fit.step + 1e-9));
  return Array.from({ length: steps + 1 }, (_, i) => tidy(cap - i * fit.step));
}

/** A length without the rounding errors of binary fractions. */
function tidy(length: number): number {
  return Number(length.toFixed(4));
}
