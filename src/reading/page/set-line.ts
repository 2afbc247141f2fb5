import { drawGlyph, type Setting } from "./drawn-glyph.ts";
import { advanceOf, type Glyph, type Glyphs } from "./glyphs.ts";
import type { Ink } from "./ink.ts";
import { rivalsOf } from "./rivals.ts";

/** A character of a line, and where its pen stands, as a part of the font's size. */
export interface Placed {
  readonly isSign: boolean;
  /** A small letter, as legends have none. */
  readonly isSmall: boolean;
  /** Characters that look like it. */
  readonly rivals: () => readonly Glyph[];
  readonly glyph: Glyph;
  readonly pen: number;
}

/** A line of text as it would be set in Helvetica. Undefined if Helvetica lacks one of its characters. */
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
    } else if (" \u00a0\t".includes(character)) pen += advanceOf(32);
    else return undefined;
  }
  return placed;
}

/** The area of a line's ink, in parts of the font's size. */
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

/** The ink of a line as it would be drawn. */
export function draw(line: readonly Placed[], { x, y, across, up }: Setting, { width, height }: Ink): Ink {
  const dark = new Float32Array(width * height);
  for (const { glyph, pen } of line) {
    const { ink, left, top } = drawGlyph(glyph, { x: x + pen * across, y, across, up });
    for (let j = Math.max(0, -top); j < ink.height && top + j < height; j++)
      for (let i = Math.max(0, -left); i < ink.width && left + i < width; i++) {
        const at = (top + j) * width + left + i;
        dark[at] = Math.min(1, (dark[at] ?? 0) + (ink.dark[j * ink.width + i] ?? 0));
      }
  }
  return { width, height, dark };
}
