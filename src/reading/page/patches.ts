import {
  type Area,
  apart,
  aroundAll,
  grown,
  leastApart,
  type Picture,
  sameRun,
  shared,
  wholeOf,
} from "./picture.ts";

/** A patch has at least so many pixels that differ. Rounding leaves fewer. */
const leastPixels = 4;
/** Side of a cell in pixels. Cells that touch are one patch. */
const cell = 12;
const mostPatches = 4;

/** Where two pictures of one size differ, apart from some areas. */
export function patchesIn(one: Picture, other: Picture, leftOut: readonly Area[]): Area[] {
  const { width, height } = one;
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const counts = new Uint16Array(columns * rows);
  const out = leftOut.map((area) => shared(grown(area, 1), wholeOf(one)));
  let some = false;
  // The parts of a line that are looked at, and the first line for which they change.
  let here: readonly (readonly [from: number, to: number])[] = [];
  let end = 0;
  for (let y = 0; y < height; y++) {
    const start = y * width;
    // Most lines are the same from end to end.
    if (sameRun(one.pixels, start, other.pixels, start, width)) continue;
    if (y >= end) [here, end] = between(out, y, width, height);
    for (const [from, to] of here) {
      if (sameRun(one.pixels, start + from, other.pixels, start + from, to - from)) continue;
      for (let x = from; x < to; x++) {
        const a = one.pixels[start + x] ?? 0;
        const b = other.pixels[start + x] ?? 0;
        if (a === b || apart(a, b) < leastApart) continue;
        const index = Math.floor(y / cell) * columns + Math.floor(x / cell);
        counts[index] = (counts[index] ?? 0) + 1;
        some = true;
      }
    }
  }
  if (!some) return [];
  return joined(counts, columns, rows).map((area) => shared(area, wholeOf(one)));
}

/** The parts of a line between the areas, and the next line on which an area begins or ends. */
function between(
  areas: readonly Area[],
  y: number,
  width: number,
  height: number,
): [parts: [from: number, to: number][], next: number] {
  const parts: [number, number][] = [];
  let [at, next] = [0, height];
  for (const { left, top, right, bottom } of areas.toSorted((a, b) => a.left - b.left)) {
    for (const edge of [top, bottom]) if (edge > y) next = Math.min(next, edge);
    if (y < top || y >= bottom) continue;
    if (left > at) parts.push([at, left]);
    at = Math.max(at, right);
  }
  if (at < width) parts.push([at, width]);
  return [parts, next];
}

/** Patches to be told one by one. If they are too many, the area around all of them. */
export function toldApart(patches: readonly Area[]): readonly Area[] {
  return patches.length > mostPatches ? [aroundAll(patches)] : patches;
}

/** Cells that differ and touch → the areas that they cover. */
function joined(counts: Uint16Array, columns: number, rows: number): Area[] {
  const areas: Area[] = [];
  const seen = new Uint8Array(counts.length);
  for (let start = 0; start < counts.length; start++) {
    if (seen[start] === 1 || counts[start] === 0) continue;
    const stack = [start];
    seen[start] = 1;
    let pixels = 0;
    const cells: Area[] = [];
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      const [x, y] = [at % columns, Math.floor(at / columns)];
      pixels += counts[at] ?? 0;
      cells.push({ left: x * cell, top: y * cell, right: (x + 1) * cell, bottom: (y + 1) * cell });
      for (let j = Math.max(0, y - 2); j <= Math.min(rows - 1, y + 2); j++)
        for (let i = Math.max(0, x - 2); i <= Math.min(columns - 1, x + 2); i++) {
          const next = j * columns + i;
          if (seen[next] === 1 || counts[next] === 0) continue;
          seen[next] = 1;
          stack.push(next);
        }
    }
    if (pixels >= leastPixels) areas.push(aroundCells(cells));
  }
  return areas;
}

/** Done in a loop: a page has too many cells to be spread as arguments. */
function aroundCells(cells: readonly Area[]): Area {
  return cells.reduce((one, other) => aroundAll([one, other]));
}
