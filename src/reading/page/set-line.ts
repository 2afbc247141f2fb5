import { advanceOf, drawn, type Glyph, type Glyphs } from "./glyphs.ts";
import type { Ink } from "./ink.ts";
import { rivalsOf } from "./rivals.ts";

/** A character of a line: where its pen stands, as a part of the font's size. */
export interface Placed {
  readonly isSign: boolean;
  /** A small letter, as legends have none. */
  readonly isSmall: boolean;
  /** Characters that look like it. */
  readonly rivals: () => readonly Glyph[];
  readonly glyph: Glyph;
  readonly pen: number;
}

/** A line of text as it would be set in Helvetica; undefined where it has characters that Helvetica has not. */
export function setLine(text: string, glyphs: Glyphs): Placed[] | undefined {
  const placed: Placed[] = [];
  let pen = 0;
  for (const character of text) {
    const glyph = glyphs.get(character);
    if (glyph !== undefined) {
      placed.push({
        glyph,
        pen,
        isSmall: /\p{Ll}/u.test(character),
        isSign: !/[\p{L}\p{N}&#+%@]/u.test(character),
        rivals: () => rivalsOf(character, glyphs),
      });
      pen += glyph.advance;
    } else if (/^[ \u00a0\t]$/.test(character)) pen += advanceOf(32);
    else return undefined;
  }
  return placed;
}

/** What a line's ink covers, as parts of the font's size. */
export function measure(line: readonly Placed[]): Glyph["ink"] {
  let [left, right, bottom, top] = [Number.POSITIVE_INFINITY, 0, Number.POSITIVE_INFINITY, -1];
  for (const { glyph, pen } of line) {
    left = Math.min(left, pen + glyph.ink.left);
    right = Math.max(right, pen + glyph.ink.right);
    bottom = Math.min(bottom, glyph.ink.bottom);
    top = Math.max(top, glyph.ink.top);
  }
  return { left, right, bottom, top };
}

/** Where a line was drawn: its pen's begin and its baseline in pixels, and the size of its font across and up. */
export interface Setting {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly up: number;
}

/**
 * Compares ink with a line of text, wherever in the area it stands and however large. `size` is the form's own
 * size in pixels, for texts too small to tell theirs. `cut` is the size of a text of which the right end is not seen.
 * Undefined where there is no ink, or nothing to compare with.
 */

/** The ink of a line as it would be drawn. */
export function draw(line: readonly Placed[], { x, y, across, up }: Setting, { width, height }: Ink): Ink {
  const dark = new Float32Array(width * height);
  for (const { glyph, pen } of line) {
    const begin = x + pen * across;
    const [column, row] = [Math.floor(begin), Math.floor(y)];
    const { ink, left, top } = drawGlyph(glyph, across, up, quarter(begin - column), quarter(y - row));
    for (let j = Math.max(0, -top - row); j < ink.height && row + top + j < height; j++)
      for (let i = Math.max(0, -left - column); i < ink.width && column + left + i < width; i++) {
        const at = (row + top + j) * width + column + left + i;
        dark[at] = Math.min(1, (dark[at] ?? 0) + (ink.dark[j * ink.width + i] ?? 0));
      }
  }
  return { width, height, dark };
}

/** Finer than a quarter of a pixel nothing shows. */
function quarter(part: number): number {
  return Math.round(part * 4) / 4;
}

/** A letter's ink, and where its upper left corner lies from the pixel of the pen. */
interface DrawnGlyph {
  readonly ink: Ink;
  readonly left: number;
  readonly top: number;
}

/** Letters that were drawn before: a form has few sizes. */
const drawnGlyphs = new WeakMap<Glyph, Map<string, DrawnGlyph>>();

const mostDrawn = 64;

function drawGlyph(glyph: Glyph, across: number, up: number, x: number, y: number): DrawnGlyph {
  const key = `${across} ${up} ${x} ${y}`;
  const known = drawnGlyphs.get(glyph) ?? new Map<string, DrawnGlyph>();
  drawnGlyphs.set(glyph, known);
  const before = known.get(key);
  if (before !== undefined) return before;
  const left = Math.floor(x + glyph.ink.left * across) - 1;
  const top = Math.floor(y - glyph.ink.top * up) - 1;
  const width = Math.ceil(x + glyph.ink.right * across) + 1 - left;
  const height = Math.ceil(y - glyph.ink.bottom * up) + 1 - top;
  const dark = new Float32Array(width * height);
  const [byX, byY] = [drawn.size / across, drawn.size / up];
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const start = drawn.left + (left + i - x) * byX;
      const from = drawn.baseline + (top + j - y) * byY;
      dark[j * width + i] = within(glyph, start, from, start + byX, from + byY) / (byX * byY);
    }
  const made = { ink: { width, height, dark }, left, top };
  if (known.size >= mostDrawn) known.clear();
  known.set(key, made);
  return made;
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
