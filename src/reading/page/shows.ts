import type { BlankWidget } from "./blank-form.ts";
import { scale } from "./blank-form.ts";
import type { Glyphs } from "./glyphs.ts";
import { alike, countDark, extentOf, type Ink, part } from "./ink.ts";
import { type Likeness, likeness } from "./likeness.ts";
import { measure, setLine } from "./set-line.ts";

/** What counts as the same. Found on sheets that programs filled in and sheets that were forged: tests/bench/pages.ts. */
export const limits = {
  /** Of the letter or digit that is least like itself, and of the sign: programs draw quotation marks as each likes. */
  character: 0.8,
  sign: 0.5,
  /** By how much a letter may be more like another than like itself. */
  mistaken: 0.03,
  /** Of all ink, the part that no character explains. */
  more: 0.08,
  /** Width against height, by Helvetica. */
  stretch: 0.82,
  /** How like its own mark a ticked box must be. */
  tick: 0.7,
  /** Pixels that may be dark in an empty field, and how dark they are then. */
  speck: 3,
  faint: 0.12,
} as const;

/** Characters of a value that are looked for: far more than any frame has room for. */
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
    : showsLine(ink, lines.join(" ").trim(), size, glyphs);
}

function isEmpty(ink: Ink): boolean {
  return countDark(ink, limits.faint) <= limits.speck;
}

function showsTick(ink: Ink, ticked: Ink): boolean {
  return alike(ink, ticked) >= limits.tick;
}

/** Pixels at the edge of a frame in which nothing is drawn. */
const edge = 5;

/** One line, of which the right end may lie beyond the frame. */
function showsLine(ink: Ink, text: string, size: number, glyphs: Glyphs): boolean {
  const line = setLine(text, glyphs);
  const extent = extentOf(ink);
  // A text in other letters cannot be compared; that it shows is all that can be told.
  if (line === undefined) return extent !== undefined;
  if (extent === undefined || line.length === 0) return false;
  const room = ink.width - extent.left;
  const { right, left } = measure(line);
  const isCut = extent.right >= ink.width - edge && (right - left) * size > room;
  // Of what is cut off, only what is left tells how large the letters are.
  const seen = isCut ? line.filter(({ pen }) => (pen - left) * size < room - edge) : line;
  const sizes = isCut ? sizesNear(size, (extent.bottom - extent.top) / heightOf(seen)) : [undefined];
  return sizes.some((cut) => passes(likeness(ink, seen, size, cut)));
}

/** The form's own size and, where a program chose another, those that the height of its letters leaves open. */
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
    found.more <= limits.more &&
    found.stretch >= limits.stretch &&
    found.stretch <= 1 / limits.stretch
  );
}

/** Several lines, which programs break where each of them likes. What lies below the frame may be missing. */
function showsLines(ink: Ink, lines: readonly string[], size: number, glyphs: Glyphs): boolean {
  const bands = bandsOf(ink);
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

/** How many of the words stand on a line; 0 where it shows others, undefined where they cannot be compared. */
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

/** The lines of a text: what has no ink above or below. */
function bandsOf(ink: Ink): (Ink & { readonly bottom: number })[] {
  const extent = extentOf(ink);
  if (extent === undefined) return [];
  const isInked = Array.from({ length: ink.height }, (_, y) => {
    for (let x = 0; x < ink.width; x++)
      if ((ink.dark[y * ink.width + x] ?? 0) >= extent.peak / 2) return true;
    return false;
  });
  const bands: { top: number; bottom: number }[] = [];
  isInked.forEach((inked, y) => {
    const last = bands.at(-1);
    if (!inked) return;
    // The dot of an i stands off its letter.
    if (last !== undefined && y - last.bottom <= 2) last.bottom = y + 1;
    else bands.push({ top: y, bottom: y + 1 });
  });
  return bands.map(({ top, bottom }) => {
    const from = Math.max(0, top - 2);
    return { ...part(ink, from, Math.min(ink.height, bottom + 2)), bottom };
  });
}
