import { bandsOf } from "./bands.ts";
import type { BlankWidget } from "./blank-form.ts";
import { scale } from "./blank-form.ts";
import type { Glyphs } from "./glyphs.ts";
import { alike, countDark, extentOf, type Ink, strayDark } from "./ink.ts";
import { type Likeness, likeness } from "./likeness.ts";
import { measure, setLine } from "./set-line.ts";

/**
 * How much alike counts as the same. Found on sheets that programs filled in and on forged ones:
 * tests/bench/pages.ts.
 */
export const limits = {
  /**
   * How like itself the worst letter or digit must be, and the worst sign. Programs draw quotation marks in their own
   * ways.
   */
  character: 0.8,
  sign: 0.5,
  /** By how much more a capital or digit may be like another than like itself, and a small letter. */
  mistaken: 0.01,
  mistakenSmall: 0.03,
  /** Least size of a font in pixels. A smaller one is seen as dots. */
  size: 5,
  /** The most of all ink, as a part, that no character explains. */
  more: 0.08,
  /** Least width against height, by Helvetica. */
  stretch: 0.82,
  /** How like its own mark a ticked box must be. */
  tick: 0.7,
  /** Dark pixels that a ticked box may have away from its mark. */
  stray: 6,
  /** How many pixels may be dark in an empty field, and how dark counts. */
  speck: 3,
  faint: 0.12,
} as const;

/** So many characters of a value are looked for, far more than any frame has room for. */
const mostCharacters = 4_000;

/** Whether a field shows the values that it holds, and nothing else. `ticked` is the ink of its mark. */
export function shows(
  ink: Ink,
  widget: BlankWidget,
  values: readonly string[],
  ticked: () => Ink,
  glyphs: Glyphs,
): boolean {
  if (widget.kind === "tick")
    return values.includes(widget.state ?? "") ? showsTick(ink, ticked()) : isEmpty(ink);
  const text = values
    .map((value) => widget.shows.get(value) ?? value)
    .join("\n")
    .slice(0, mostCharacters);
  if (text.trim() === "") return isEmpty(ink);
  const size = widget.size * scale || ink.height * 0.7;
  const lines = text.split("\n").map((line) => line.trim());
  return widget.manyLines
    ? showsLines(ink, lines, size, glyphs)
    : showsLine(ink, lines.join(" "), size, glyphs);
}

export function isEmpty(ink: Ink): boolean {
  return countDark(ink, limits.faint) <= limits.speck && (ink.coloured ?? 0) <= limits.speck;
}

function showsTick(ink: Ink, ticked: Ink): boolean {
  return alike(ink, ticked) >= limits.tick && strayDark(ink, ticked, stray) <= limits.stray;
}

/** A dark pixel beside a mark: how dark it is, how far from the mark, and how dark a mark is. */
const stray = { least: 0.15, off: 2, mark: 0.1 };

/** Pixels at the edge of a frame in which nothing is drawn. */
const edge = 5;

/** Whether one line shows. Its right end may lie beyond the frame. */
function showsLine(ink: Ink, text: string, size: number, glyphs: Glyphs): boolean {
  const line = setLine(text, glyphs);
  const extent = extentOf(ink);
  // A text in other letters cannot be compared. It is only seen that there is one.
  if (line === undefined) return extent !== undefined;
  if (extent === undefined) return false;
  const room = ink.width - extent.left;
  const { right, left } = measure(line);
  const isCut = extent.right >= ink.width - edge && (right - left) * size > room;
  // If a text is cut off, only the rest tells how large its letters are.
  const seen = isCut ? line.filter(({ pen }) => (pen - left) * size < room - edge) : line;
  const sizes = isCut ? sizesNear(size, (extent.bottom - extent.top) / heightOf(seen)) : [undefined];
  return sizes.some((cut) => passes(likeness(ink, seen, size, cut)));
}

/** The form's own size. If a program chose another, the sizes that the height of the letters allows. */
function sizesNear(size: number, up: number): number[] {
  return [size, ...[0, 1, -1, 2, -2, 3, -3].map((step) => up * (1 + step / 100))];
}

function heightOf(line: NonNullable<ReturnType<typeof setLine>>): number {
  const { top, bottom } = measure(line);
  return top - bottom;
}

function passes(found: Likeness | undefined): boolean {
  return (
    found !== undefined &&
    found.worst >= limits.character &&
    found.worstSign >= limits.sign &&
    found.mistaken <= limits.mistaken &&
    found.mistakenSmall <= limits.mistakenSmall &&
    found.size >= limits.size &&
    found.more <= limits.more &&
    found.stretch >= limits.stretch &&
    found.stretch <= 1 / limits.stretch
  );
}

/** Whether several lines show. Programs break lines where they like. Text below the frame may be missing. */
function showsLines(ink: Ink, lines: readonly string[], size: number, glyphs: Glyphs): boolean {
  const bands = bandsOf(ink, size);
  const words = lines.flatMap((line) => line.split(/\s+/)).filter((word) => word !== "");
  if (bands.length === 0) return false;
  let next = 0;
  for (const band of bands) {
    const count = wordsIn(band, words.slice(next), size, glyphs);
    if (count === undefined) return true;
    if (count === 0) return false;
    next += count;
  }
  const last = bands.at(-1) as Ink & { readonly bottom: number };
  return next >= words.length || last.bottom > ink.height - 2 * size;
}

/** How many of the words a line shows. 0 if it shows others, undefined if they cannot be compared. */
function wordsIn(band: Ink, words: readonly string[], size: number, glyphs: Glyphs): number | undefined {
  const extent = extentOf(band);
  if (extent === undefined) return 0;
  const wide = extent.right - extent.left;
  const counts: { count: number; off: number }[] = [];
  // No line has more words than pixels.
  for (let count = 1; count <= Math.min(words.length, 60); count++) {
    const line = setLine(words.slice(0, count).join(" "), glyphs);
    if (line === undefined) return undefined;
    const { left, right, top, bottom } = measure(line);
    const up = (extent.bottom - extent.top) / (top - bottom);
    const off = Math.abs(Math.log(((right - left) * up) / wide));
    counts.push({ count, off });
    if ((right - left) * Math.min(up, size) > 2 * wide) break;
  }
  // Of a line that is low, a pixel more or less of height is as much as a short word.
  const likely = counts.toSorted((a, b) => a.off - b.off).slice(0, 3);
  return (
    likely.find(({ count }) => showsLine(band, words.slice(0, count).join(" "), size, glyphs))?.count ?? 0
  );
}
