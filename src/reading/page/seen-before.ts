import { type Area, type Picture, sameRun } from "./picture.ts";

/** So many pictures of one field are kept: one for each buyer or order whose sheets come mixed. */
const mostKept = 6;
/** A field with more pixels is not kept. */
const mostPixels = 40_000;

interface Kept {
  readonly values: string;
  readonly pixels: Int32Array;
}

/** Pictures of fields that showed what they hold, by the blank form's picture and the number of the field. */
const kept = new WeakMap<Picture, Map<number, Kept[]>>();

/**
 * Whether a field looks, pixel by pixel, as it did when it was found to show the same values. Sheets of one order
 * have most fields in common.
 */
export function shownBefore(
  picture: Picture,
  empty: Picture,
  field: number,
  area: Area,
  values: string,
): boolean {
  const before = kept.get(empty)?.get(field) ?? [];
  return before.some((one) => one.values === values && isThere(one.pixels, picture, area));
}

/** Keeps a field's picture for the next sheet. */
export function keepShown(picture: Picture, empty: Picture, field: number, area: Area, values: string): void {
  const { left, top, right, bottom } = area;
  const width = right - left;
  if (width * (bottom - top) > mostPixels) return;
  const pixels = new Int32Array(width * (bottom - top));
  for (let y = top; y < bottom; y++) {
    const start = y * picture.width + left;
    pixels.set(picture.pixels.subarray(start, start + width), (y - top) * width);
  }
  const byField = kept.get(empty) ?? new Map<number, Kept[]>();
  kept.set(empty, byField.set(field, [{ values, pixels }, ...(byField.get(field) ?? [])].slice(0, mostKept)));
}

function isThere(pixels: Int32Array, picture: Picture, { left, top, right, bottom }: Area): boolean {
  const width = right - left;
  for (let y = top; y < bottom; y++)
    if (!sameRun(pixels, (y - top) * width, picture.pixels, y * picture.width + left, width)) return false;
  return true;
}
