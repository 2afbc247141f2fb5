import { type DrawnGlyph, type Setting, softGlyph } from "./drawn-glyph.ts";
import { alikeWithin, blurred, columns, extentOf, type Ink, inkedPart, room, strongPart } from "./ink.ts";
import { draw, measure, type Placed } from "./set-line.ts";

/** How well ink is that of a text. */
export interface Likeness {
  /** Of the letter or digit that is least like itself, 0 to 1, and of the sign. */
  readonly worst: number;
  readonly worstSign: number;
  /** By how much a letter is more like one that looks alike than like itself; 0 where none is. */
  readonly mistaken: number;
  /** Parts of all ink that no character explains. */
  readonly more: number;
  /** Width against height of the ink, by that of the text in Helvetica: 1 where they are the same. */
  readonly stretch: number;
}

/**
 * Compares ink with a line of text, wherever in the area it stands and however large. `size` is the form's own
 * size in pixels, for texts too small to tell theirs. `cut` is the size of a text of which the right end is not seen.
 * Undefined where there is no ink, or nothing to compare with.
 */

export function likeness(
  ink: Ink,
  line: readonly Placed[],
  size: number,
  cut?: number,
): Likeness | undefined {
  const extent = extentOf(ink);
  if (extent === undefined || line.length === 0) return undefined;
  const text = measure(line);
  const [wide, high] = [text.right - text.left, text.top - text.bottom];
  const up = snapped(high < 0.3 ? size : (extent.bottom - extent.top) / high, size, high);
  const across = cut ?? snapped(wide < 0.3 ? up : (extent.right - extent.left) / wide, size, wide);
  const middle = (extent.top + extent.bottom) / 2;
  const begin = wide < 0.3 ? (extent.left + extent.right - across * wide) / 2 : extent.left;
  const setting: Setting = {
    x: begin - text.left * across,
    y: middle + ((text.top + text.bottom) / 2) * up,
    across,
    up,
  };
  // Where there is none, there is nothing to compare.
  const inked =
    cut === undefined ? inkedPart(ink) : { left: 0, top: 0, right: ink.width, bottom: ink.height };
  const seen = blurred(strongPart(ink, inked, extent.peak));
  const here = { ...setting, x: setting.x - inked.left, y: setting.y - inked.top };
  const wanted = blurred(draw(line, here, seen));
  let [worst, worstSign, mistaken] = [1, 1, 0];
  for (const placed of line) {
    const { glyph, pen, isSign } = placed;
    const left = Math.floor(here.x + (pen + glyph.ink.left) * across) - 1;
    const right = Math.ceil(here.x + (pen + glyph.ink.right) * across) + 1;
    if (cut !== undefined && right > ink.width) break;
    const like = alikeWithin(seen, wanted, left, right);
    if (isSign) worstSign = Math.min(worstSign, like);
    else worst = Math.min(worst, like);
    if (like < surely && like > hopeless) mistaken = Math.max(mistaken, likeRival(seen, placed, here) - like);
  }
  const stretch = wide < 0.3 || high < 0.3 ? 1 : across / up;
  const isMarked = inGaps(seen, line, here) || isStruck(seen, wanted);
  const more = isMarked ? 1 : unexplained(seen, wanted, cut !== undefined);
  return { worst, worstSign, mistaken, more, stretch };
}

/** Of a gap between words: how wide it is at least, as a part of the font's size, and what is left out at its ends, in pixels. */
const gap = { least: 0.24, ends: 1.5 };
/** The ink of a dot at the size of a form, added up over its pixels. */
const dot = 2;

/** Whether something stands between two words, be it as small as a dot. */
function inGaps(seen: Ink, line: readonly Placed[], { x, across }: Setting): boolean {
  return line.some(({ glyph, pen }, i) => {
    const next = line[i + 1];
    if (next === undefined || next.pen - pen - glyph.advance < gap.least) return false;
    const left = Math.ceil(x + (pen + glyph.ink.right) * across + gap.ends);
    const right = Math.floor(x + (next.pen + next.glyph.ink.left) * across - gap.ends);
    if (left >= right) return false;
    return columns(seen, left, right).dark.reduce((sum, one) => sum + one, 0) >= dot;
  });
}

/** The form's own size, where what was measured is that as far as pixels tell. `parts` were measured, of the font's size. */
function snapped(measured: number, size: number, parts: number): number {
  return Math.abs(measured - size) * parts <= 1.2 ? size : measured;
}

/** From here on no other letter is looked for. */
const surely = 0.985;
/** And below this none needs to be: it is not that letter. */
const hopeless = 0.7;

/** How like the most similar rival of a letter the ink is, where that letter stands. */
function likeRival(seen: Ink, { glyph, pen, rivals }: Placed, setting: Setting): number {
  const { x, across } = setting;
  const left = Math.max(0, Math.floor(x + (pen + glyph.ink.left) * across) - 1);
  let best = 0;
  for (const rival of rivals()) {
    const wide = Math.max(glyph.ink.right, glyph.ink.left + rival.ink.right - rival.ink.left);
    const right = Math.min(seen.width, Math.ceil(x + (pen + wide) * across) + 1);
    const all = inkSquared(seen, left, right);
    // Side by side at the left edge, and one over the other.
    const begins = [
      glyph.ink.left - rival.ink.left,
      (glyph.ink.left + glyph.ink.right - rival.ink.left - rival.ink.right) / 2,
    ];
    for (const begin of begins) {
      const drawn = softGlyph(rival, { ...setting, x: x + (pen + begin) * across });
      best = Math.max(best, likeLetter(seen, drawn, left, right, all));
    }
  }
  return best;
}

function inkSquared({ dark, width, height }: Ink, left: number, right: number): number {
  let sum = 0;
  for (let y = 0; y < height; y++)
    for (let at = y * width + left; at < y * width + right; at++) sum += (dark[at] ?? 0) ** 2;
  return sum;
}

/** What `alikeWithin` tells, of a letter that is known to be all that is wanted there. */
function likeLetter(
  seen: Ink,
  { ink, left, top }: DrawnGlyph,
  from: number,
  to: number,
  all: number,
): number {
  let [product, squared] = [0, 0];
  for (let y = Math.max(0, -top); y < ink.height && top + y < seen.height; y++)
    for (let x = Math.max(0, from - left); x < ink.width && left + x < to; x++) {
      const one = ink.dark[y * ink.width + x] ?? 0;
      product += one * (seen.dark[(top + y) * seen.width + left + x] ?? 0);
      squared += one * one;
    }
  return all === 0 || squared === 0 ? 0 : product / Math.sqrt(all * squared);
}

/** A stroke along a row: pixels beside the letters that it has at least, the part of them that is inked, and how dark they are and were to be. */
const stroke = { pixels: 8, part: 0.7, dark: 0.15, pale: 0.15 };
/** A row of letters rubbed out: what is left of it, its least ink, and how far from the letters' edges it lies, in pixels. */
const rubbed = { part: 0.35, ink: 1, edge: 3 };

/** Whether a thin line, dark or white, runs through a whole text. */
function isStruck(seen: Ink, wanted: Ink): boolean {
  const { width, height } = wanted;
  const { left, top, right, bottom } = inkedPart(wanted);
  for (let y = 0; y < height; y++) {
    let [beside, inked, all, both] = [0, 0, 0, 0];
    for (let x = left + room; x < right - room; x++) {
      const [is, should] = [seen.dark[y * width + x] ?? 0, wanted.dark[y * width + x] ?? 0];
      if (should < stroke.pale) beside++;
      if (should < stroke.pale && is >= should + stroke.dark) inked++;
      all += should;
      both += Math.min(is, should);
    }
    if (beside >= stroke.pixels && inked >= stroke.part * beside) return true;
    const isInside = y >= top + room + rubbed.edge && y < bottom - room - rubbed.edge;
    if (isInside && all >= rubbed.ink && both < rubbed.part * all) return true;
  }
  return false;
}

/** The part of what is seen that lies where nothing is wanted. */
function unexplained(seen: Ink, wanted: Ink, isCut: boolean): number {
  let [more, all] = [0, 0];
  // What is cut off may leave half a character.
  const end = isCut ? seen.width - seen.height : seen.width;
  for (let y = 0; y < seen.height; y++)
    for (let x = 0; x < end; x++) {
      const at = y * seen.width + x;
      const one = seen.dark[at] ?? 0;
      all += one;
      if ((wanted.dark[at] ?? 0) < 0.02) more += one;
    }
  return all === 0 ? 0 : more / all;
}
