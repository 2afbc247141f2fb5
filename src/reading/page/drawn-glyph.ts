import { drawn, type Glyph } from "./glyphs.ts";
import { blurred, type Ink } from "./ink.ts";

/**
 * Where a line was drawn: the start of its pen and its baseline in pixels, and the size of its font across and up.
 */
export interface Setting {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly up: number;
}

/** A letter's ink, and where its upper left corner lies. */
export interface DrawnGlyph {
  readonly ink: Ink;
  readonly left: number;
  readonly top: number;
}

/** A letter's ink, drawn with the pen at a place. */
export function drawGlyph(glyph: Glyph, setting: Setting): DrawnGlyph {
  return placed(glyph, setting, sharp);
}

/** The same, blurred. Blurring needs one pixel more on every side. */
export function softGlyph(glyph: Glyph, setting: Setting): DrawnGlyph {
  return placed(glyph, setting, soft);
}

/**
 * Letters that were drawn before: by their size across and up, then by their place within a pixel. There are few such
 * places.
 */
type Made = WeakMap<Glyph, Map<number, Map<number, DrawnGlyph[]>>>;
const sharp: Made = new WeakMap();
const soft: Made = new WeakMap();
/** So many sizes of a letter are kept. A form has few. */
const mostSizes = 16;

function placed(glyph: Glyph, { x, y, across, up }: Setting, made: Made): DrawnGlyph {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const [right, down] = [quarters(x - column), quarters(y - row)];
  const known = drawnBefore(glyph, across, up, made);
  const place = right * 5 + down;
  const letter = (known[place] ??= make(
    glyph,
    { x: right / 4, y: down / 4, across, up },
    made === soft ? 1 : 0,
  ));
  return { ink: letter.ink, left: column + letter.left, top: row + letter.top };
}

function drawnBefore(glyph: Glyph, across: number, up: number, made: Made): DrawnGlyph[] {
  const byAcross = made.get(glyph) ?? new Map<number, Map<number, DrawnGlyph[]>>();
  made.set(glyph, byAcross);
  if (byAcross.size > mostSizes) byAcross.clear();
  const byUp = byAcross.get(across) ?? new Map<number, DrawnGlyph[]>();
  byAcross.set(across, byUp);
  if (byUp.size > mostSizes) byUp.clear();
  const known = byUp.get(up) ?? [];
  byUp.set(up, known);
  return known;
}

/** A part of a pixel in quarters. Nothing finer shows. */
function quarters(part: number): number {
  return Math.round(part * 4);
}

/** Draws a letter. `blur` is how many pixels around it the blur takes. */
function make(glyph: Glyph, { x, y, across, up }: Setting, blur: number): DrawnGlyph {
  const left = Math.floor(x + glyph.ink.left * across) - 1 - blur;
  const top = Math.floor(y - glyph.ink.top * up) - 1 - blur;
  const width = Math.ceil(x + glyph.ink.right * across) + 1 + blur - left;
  const height = Math.ceil(y - glyph.ink.bottom * up) + 1 + blur - top;
  const dark = new Float32Array(width * height);
  const [byX, byY] = [drawn.size / across, drawn.size / up];
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const start = drawn.left + (left + i - x) * byX;
      const from = drawn.baseline + (top + j - y) * byY;
      dark[j * width + i] = within(glyph, start, from, start + byX, from + byY) / (byX * byY);
    }
  const ink = { width, height, dark };
  return { ink: blur === 0 ? ink : blurred(ink), left, top };
}

/** The ink of a glyph within a rectangle of its cell. */
function within(glyph: Glyph, left: number, top: number, right: number, bottom: number): number {
  return (
    inkBefore(glyph, right, bottom) -
    inkBefore(glyph, left, bottom) -
    inkBefore(glyph, right, top) +
    inkBefore(glyph, left, top)
  );
}

/** The ink of a glyph above and to the left of a point of its cell. */
function inkBefore({ sums, side }: Glyph, x: number, y: number): number {
  const last = side - 1;
  const cx = Math.max(0, Math.min(last, x));
  const cy = Math.max(0, Math.min(last, y));
  const x0 = Math.floor(cx);
  const y0 = Math.floor(cy);
  const x1 = Math.min(last, x0 + 1);
  const y1 = Math.min(last, y0 + 1);
  const upper = (sums[y0 * side + x0] ?? 0) * (x0 + 1 - cx) + (sums[y0 * side + x1] ?? 0) * (cx - x0);
  const lower = (sums[y1 * side + x0] ?? 0) * (x0 + 1 - cx) + (sums[y1 * side + x1] ?? 0) * (cx - x0);
  return upper * (y0 + 1 - cy) + lower * (cy - y0);
}
