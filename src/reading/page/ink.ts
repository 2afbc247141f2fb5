import { type Area, apart, brightness, leastApart, type Picture, samePart } from "./picture.ts";

/** How much darker a part of a page is than its blank: 0 to 1 a pixel, row by row from above. */
export interface Ink {
  readonly width: number;
  readonly height: number;
  readonly dark: Float32Array;
  /** There is no ink at all. */
  readonly none?: boolean;
  /** Pixels that have another colour, however pale. */
  readonly coloured?: number;
}

const nothing = new Float32Array(0);

/** The ink that a page has beyond its blank, within an area of both. */
export function inkOf(page: Picture, blank: Picture, area: Area): Ink {
  const { left, top, right, bottom } = area;
  const [width, height] = [right - left, bottom - top];
  if (samePart(page, blank, area)) return { width, height, dark: nothing, none: true };
  const dark = new Float32Array(width * height);
  let coloured = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = (top + y) * page.width + left + x;
      const one = page.pixels[at] ?? 0;
      const other = blank.pixels[at] ?? 0;
      if (one === other) continue;
      if (apart(one, other) >= leastApart) coloured++;
      const ground = brightness(other);
      dark[y * width + x] = Math.max(0, (ground - brightness(one)) / Math.max(ground, 1));
    }
  return { width, height, dark, coloured };
}

/** How many pixels are at least so dark. */
export function countDark({ dark }: Ink, least: number): number {
  let count = 0;
  for (const one of dark) if (one >= least) count++;
  return count;
}

/**
 * Where the ink is: the pixels that are at least half as dark as the darkest. Undefined if there is nothing to see.
 */
export function extentOf(ink: Ink): (Area & { readonly peak: number }) | undefined {
  let peak = 0;
  for (const one of ink.dark) if (one > peak) peak = one;
  if (peak < leastSeen) return undefined;
  const { width, height, dark } = ink;
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if ((dark[y * width + x] ?? 0) >= peak / 2) {
        if (x < left) left = x;
        if (x >= right) right = x + 1;
        if (y < top) top = y;
        bottom = y + 1;
      }
  return { left, top, right, bottom, peak };
}

/** A person who reads a form does not see paler ink. */
export const leastSeen = 0.3;

/** How alike two inks of one size are. */
export function alike(one: Ink, other: Ink): number {
  if (one.none || other.none) return 0;
  const [first, second] = [blurred(one), blurred(other)];
  return countDark(other, leastSeen) === 0 ? 0 : alikeWithin(first, second, 0, one.width);
}

/** How many pixels are at least so dark and lie farther than `off` from all such pixels of the other ink. */
export function strayDark(
  one: Ink,
  other: Ink,
  { least, off, mark }: { readonly least: number; readonly off: number; readonly mark: number },
): number {
  const { width, height } = other;
  let count = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) if ((one.dark[y * width + x] ?? 0) >= least && !isNear(x, y)) count++;
  return count;

  function isNear(x: number, y: number): boolean {
    for (let j = Math.max(0, y - off); j <= Math.min(height - 1, y + off); j++)
      for (let i = Math.max(0, x - off); i <= Math.min(width - 1, x + off); i++)
        if ((other.dark[j * width + i] ?? 0) >= mark) return true;
    return false;
  }
}

/** Some rows of an ink. */
export function part({ width, dark }: Ink, top: number, bottom: number): Ink {
  return { width, height: bottom - top, dark: dark.subarray(top * width, bottom * width) };
}

/** Some columns of an ink, as far as it has them. */
export function columns({ width, height, dark }: Ink, from: number, to: number): Ink {
  const left = Math.min(width, Math.max(0, from));
  const right = Math.max(left, Math.min(width, to));
  const part = new Float32Array((right - left) * height);
  for (let y = 0; y < height; y++)
    part.set(dark.subarray(y * width + left, y * width + right), y * (right - left));
  return { width: right - left, height, dark: part };
}

/** Pixels around what is inked. */
export const room = 3;

/** The part that has any ink, with room for a shift by half a pixel. */
export function inkedPart({ width, height, dark }: Ink): Area {
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if ((dark[y * width + x] ?? 0) < 0.04) continue;
      if (x < left) left = x;
      if (x >= right) right = x + 1;
      if (y < top) top = y;
      bottom = y + 1;
    }
  return {
    left: Math.max(0, left - room),
    top: Math.max(0, top - room),
    right: Math.min(width, right + room),
    bottom: Math.min(height, bottom + room),
  };
}

/** A part of an ink. Its darkest pixel becomes black. */
export function strongPart({ width, dark }: Ink, { left, top, right, bottom }: Area, peak: number): Ink {
  const [across, up] = [right - left, bottom - top];
  const full = new Float32Array(across * up);
  for (let y = 0; y < up; y++)
    for (let x = 0; x < across; x++)
      full[y * across + x] = Math.min(1, (dark[(top + y) * width + left + x] ?? 0) / peak);
  return { width: across, height: up, dark: full };
}

/** Every pixel becomes the mean of itself and its neighbours, so that a shift by half a pixel matters little. */
export function blurred({ width, height, dark }: Ink): Ink {
  const across = new Float32Array(dark.length);
  const both = new Float32Array(dark.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    let [before, here] = [0, dark[start] ?? 0];
    for (let x = 0; x < width; x++) {
      const after = x + 1 < width ? (dark[start + x + 1] ?? 0) : 0;
      across[start + x] = (before + 2 * here + after) / 4;
      before = here;
      here = after;
    }
  }
  const last = (height - 1) * width;
  for (let at = 0; at < dark.length; at++) {
    const above = at >= width ? (across[at - width] ?? 0) : 0;
    const below = at < last ? (across[at + width] ?? 0) : 0;
    both[at] = (above + 2 * (across[at] ?? 0) + below) / 4;
  }
  return { width, height, dark: both };
}

/**
 * How alike two inks are between two columns: 1 if they are the same, at whatever strength; 0 if they have nothing in
 * common.
 */
export function alikeWithin(one: Ink, other: Ink, left: number, right: number): number {
  const { width, height } = one;
  let [product, first, second] = [0, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = Math.max(0, left); x < Math.min(width, right); x++) {
      const a = one.dark[y * width + x] ?? 0;
      const b = other.dark[y * width + x] ?? 0;
      product += a * b;
      first += a * a;
      second += b * b;
    }
  return second === 0 || first === 0 ? 0 : product / Math.sqrt(first * second);
}
