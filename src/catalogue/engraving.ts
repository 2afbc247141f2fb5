import { z } from "zod";

/** Single-stroke fonts that Burin has the strokes of: RS Roman simplex, RN the same, narrower. */
export const fontCodes = ["RS", "RN"] as const;
export type FontCode = (typeof fontCodes)[number];

const millimetres = z.number().positive();

/** A surface that is engraved. */
export const faceSchema = z.strictObject({
  width: millimetres,
  height: millimetres,
  /** Height of a capital letter as cut. */
  cap: millimetres,
  /** Diameter of the cutter: how wide a stroke is cut. */
  cutter: millimetres,
  /** Space added between two letters, besides that of the font. */
  tracking: z.number(),
  /** From the foot of one row to the head of the next. */
  row_gap: millimetres,
  /** The first font of the list, unless another is named. */
  font: z.enum(fontCodes).optional(),
});
export type Face = z.output<typeof faceSchema>;

export const engravingSchema = z.strictObject({
  fonts: z.array(z.strictObject({ code: z.enum(fontCodes), name: z.string().min(1) })).min(1),
  /**
   * `fixed`: every letter is as high as its face says. Otherwise a legend that is too wide is cut smaller, step by
   * step.
   */
  fit: z.union([z.literal("fixed"), z.strictObject({ step: millimetres, down_to: millimetres })]),
  /** Kept free at every edge of a face. */
  margin: z.number().nonnegative(),
  /** The least height of a capital that is cut without being asked. */
  least_cap: millimetres,
  /** From the eye to the wall. */
  reading_distance: millimetres,
});
export type Engraving = z.output<typeof engravingSchema>;

/**
 * Height of a capital, in millimetres, that spans 16 minutes of arc at a distance.
 * Source: ISO 9241-3:1992, character height: at least 16′ of arc; quoted at second hand.
 */
export function readableCap(distance: number): number {
  return 2 * distance * Math.tan(((16 / 60) * Math.PI) / 180 / 2);
}

/** The least height of a capital that need not be asked about. The catalogue and readability both set it. */
export function leastCap({ least_cap, reading_distance }: Engraving): number {
  return Math.max(least_cap, readableCap(reading_distance));
}

/** Height of so many rows, with capitals so high, from the head of the first to the foot of the last. */
export function blockOf(rows: number, cap: number, { row_gap }: Pick<Face, "row_gap">): number {
  return rows * cap + Math.max(0, rows - 1) * row_gap;
}

type Fault = readonly [keyof Face, string];

/** What is wrong with a face that carries so many rows: where in it, and in words. */
export function faceFaults(face: Face, rows: number, engraving: Engraving): Fault[] {
  const { cap, row_gap, height, font } = face;
  const least = leastCap(engraving);
  const faults: Fault[] = [];
  if (cap < least)
    faults.push(["cap", `letters of ${cap} mm are too small; ${least.toFixed(2)} mm is the least`]);
  // NUREG-0700 Revision 2 (2002), 11.4, from memory: rows stand at least half a letter's height apart.
  if (row_gap < cap / 2) faults.push(["row_gap", "rows must stand at least half a letter's height apart"]);
  if (blockOf(rows, cap, face) > height - 2 * engraving.margin)
    faults.push(["height", `${rows} rows do not fit`]);
  if (font !== undefined && !engraving.fonts.some(({ code }) => code === font))
    faults.push(["font", `the font ${font} is not in the list of fonts`]);
  return faults;
}
