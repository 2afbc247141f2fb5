import type { Ink } from "./ink.ts";

/** Pixels that touch, and whether they are as high as letters. */
interface Piece {
  readonly pixels: readonly number[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * How dark a pixel of a letter is. As parts of the font's size: how high letters are at least, and how near an accent
 * is to its letter.
 */
const least = { dark: 0.3, high: 0.4 };
const near = 0.1;

/**
 * Separates lines that reach into each other, as where an accent stands beside what hangs down from the line above.
 * All ink belongs to one of the lines. Gives one ink for each line, from above, each as large as the whole.
 */
export function linesApart(ink: Ink, size: number): Ink[] {
  const isLetter = ({ top, bottom }: Piece): boolean => bottom - top >= least.high * size;
  const touching = piecesOf(ink);
  const rows = linesOf(touching.filter(isLetter)).map(({ row }) => row);
  const pieces = touching.flatMap((piece) => cut(piece, rows, ink.width));
  const [first, ...others] = linesOf(pieces.filter(isLetter));
  if (first === undefined || others.length === 0) return [ink];
  const lines = [first, ...others] as const;
  const line = new Map<Piece, Line>(
    lines.flatMap((one) => one.letters.map((letter) => [letter, one] as const)),
  );
  const letters = lines.flatMap((one) => one.letters);
  for (const piece of pieces) {
    if (line.has(piece)) continue;
    // An accent belongs to the letter close below it, and anything else to the nearest line.
    const below = letters.find(
      ({ left, right, top }) =>
        left < piece.right && right > piece.left && top >= piece.bottom && top - piece.bottom <= near * size,
    );
    const own = below === undefined ? nearest(lines, (piece.top + piece.bottom) / 2) : line.get(below);
    if (own !== undefined) line.set(piece, own);
  }
  const owner = new Map<number, Line>();
  for (const [{ pixels }, own] of line) for (const at of pixels) owner.set(at, own);
  const made = new Map(lines.map((one) => [one, new Float32Array(ink.dark.length)]));
  ink.dark.forEach((dark, at) => {
    if (dark === 0) return;
    const own = owner.get(at) ?? around(at, ink.width).flatMap((beside) => owner.get(beside) ?? [])[0];
    const on = made.get(own ?? nearest(lines, Math.floor(at / ink.width)));
    if (on !== undefined) on[at] = dark;
  });
  return lines.map((one) => ({ ...ink, dark: made.get(one) ?? ink.dark }));
}

interface Line {
  /** A row of pixels that runs through all of its letters. */
  readonly row: number;
  readonly letters: readonly Piece[];
}

/**
 * Finds lines. The row that most letters cover is a line's, and they are its letters. Then the same for the letters
 * that are left.
 */
function linesOf(letters: readonly Piece[]): Line[] {
  const lines: Line[] = [];
  let left = letters;
  while (left.length > 0) {
    const rows = left.flatMap(({ top, bottom }) => Array.from({ length: bottom - top }, (_, i) => top + i));
    const counts = Map.groupBy(rows, (row) => row);
    const most = Math.max(...[...counts.values()].map(({ length }) => length));
    const full = [...counts].filter(([, { length }]) => length === most).map(([row]) => row);
    const row = full[Math.floor(full.length / 2)] ?? 0;
    const isOn = ({ top, bottom }: Piece): boolean => top <= row && row < bottom;
    lines.push({ row, letters: left.filter(isOn) });
    left = left.filter((one) => !isOn(one));
  }
  return lines.toSorted((a, b) => a.row - b.row);
}

/**
 * Cuts a piece that runs through the letters of two lines, such as a "g" with an accent below it, where it is
 * thinnest.
 */
function cut(piece: Piece, rows: readonly number[], width: number): Piece[] {
  const [row, next] = rows.filter((one) => piece.top <= one && one < piece.bottom);
  if (row === undefined || next === undefined) return [piece];
  const inRow = (at: number): number => piece.pixels.filter((one) => Math.floor(one / width) === at).length;
  const between = Array.from({ length: next - row - 1 }, (_, i) => row + 1 + i);
  const thinnest = between.reduce((best, one) => (inRow(one) < inRow(best) ? one : best), row + 1);
  const [above, below] = [
    piece.pixels.filter((at) => at < thinnest * width),
    piece.pixels.filter((at) => at >= thinnest * width),
  ];
  return [pieceOf(above, width), ...cut(pieceOf(below, width), rows, width)];
}

function nearest(lines: readonly [Line, ...Line[]], row: number): Line {
  return lines.reduce((best, one) => (Math.abs(one.row - row) < Math.abs(best.row - row) ? one : best));
}

function piecesOf({ width, dark }: Ink): Piece[] {
  const pieces: Piece[] = [];
  const seen = new Uint8Array(dark.length);
  for (let start = 0; start < dark.length; start++) {
    if (seen[start] === 1 || (dark[start] ?? 0) < least.dark) continue;
    const pixels = [start];
    seen[start] = 1;
    for (const at of pixels)
      for (const next of around(at, width)) {
        if (seen[next] !== 0 || (dark[next] ?? 0) < least.dark) continue;
        seen[next] = 1;
        pixels.push(next);
      }
    pieces.push(pieceOf(pixels, width));
  }
  return pieces;
}

function pieceOf(pixels: readonly number[], width: number): Piece {
  let [left, right, top, bottom] = [width, 0, Number.POSITIVE_INFINITY, 0];
  for (const at of pixels) {
    const [x, y] = [at % width, Math.floor(at / width)];
    left = Math.min(left, x);
    right = Math.max(right, x + 1);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y + 1);
  }
  return { pixels, left, right, top, bottom };
}

/** The eight pixels around one. Beyond an edge they lie at the other edge, or nowhere. */
function around(at: number, width: number): number[] {
  return [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1].map((by) => at + by);
}
