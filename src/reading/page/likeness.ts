import { type DrawnGlyph, type Setting, softGlyph } from "./drawn-glyph.ts";
import type { Glyph } from "./glyphs.ts";
import { alikeWithin, blurred, columns, extentOf, type Ink, inkedPart, room, strongPart } from "./ink.ts";
import { draw, measure, type Placed } from "./set-line.ts";

/** How well an ink matches a text. */
export interface Likeness {
  /** How like itself the worst letter or digit is, 0 to 1; and the worst sign. */
  readonly worst: number;
  readonly worstSign: number;
  /** By how much more a capital or digit is like one that looks alike than like itself; and a small letter. */
  readonly mistaken: number;
  readonly mistakenSmall: number;
  /** The part of all ink that no character explains. */
  readonly more: number;
  /** Width against height of the ink, divided by that of the text in Helvetica. 1 if they are the same. */
  readonly stretch: number;
  /** The size of the font, in pixels. */
  readonly size: number;
}

/**
 * Compares ink with a line of text, wherever it stands in the area and however large it is. `size` is the form's own
 * size in pixels, for texts too small to tell theirs. `cut` is the size of a text whose right end is not seen.
 * Undefined if there is no ink, or nothing to compare with.
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
  const begin = wide < 0.3 ? (extent.left + extent.right - across * wide) / 2 : beginOf(ink, extent);
  const setting: Setting = {
    x: begin - text.left * across,
    y: middle + ((text.top + text.bottom) / 2) * up,
    across,
    up,
  };
  // Without ink there is nothing to compare.
  const inked =
    cut === undefined ? inkedPart(ink) : { left: 0, top: 0, right: ink.width, bottom: ink.height };
  const seen = blurred(strongPart(ink, inked, extent.peak));
  const within = { ...setting, x: setting.x - inked.left, y: setting.y - inked.top };
  const wanted = blurred(draw(line, within, seen));
  let [worst, worstSign, mistaken, mistakenSmall] = [1, 1, -1, -1];
  for (const placed of line) {
    const { glyph, pen, isSign, isSmall } = placed;
    const left = Math.floor(within.x + (pen + glyph.ink.left) * across) - 1;
    const right = Math.ceil(within.x + (pen + glyph.ink.right) * across) + 1;
    if (cut !== undefined && right > ink.width) break;
    const like = alikeWithin(seen, wanted, left, right);
    const isDoubted = like < surely && like > hopeless;
    const by = isDoubted ? moreLikeRival(seen, placed, within, like) : -1;
    // Programs draw each letter where a pixel begins, up to half a pixel from its place. A capital that may be another
    // is not looked for there.
    const near =
      isDoubted && (isSmall || by < unlike)
        ? Math.max(like, likeAnother(seen, placed, glyph, within, places))
        : like;
    if (isSign) worstSign = Math.min(worstSign, near);
    else worst = Math.min(worst, near);
    if (isSmall) mistakenSmall = Math.max(mistakenSmall, by);
    else mistaken = Math.max(mistaken, by);
  }
  const stretch = wide < 0.3 || high < 0.3 ? 1 : across / up;
  const isMarked = inGaps(seen, line, within) || isStruck(seen, wanted);
  const more = isMarked ? 1 : unexplained(seen, wanted, cut !== undefined);
  return { worst, worstSign, mistaken, mistakenSmall, more, stretch, size: up };
}

/** Where ink begins, as a part of a pixel: how dark the first columns are tells how much of them it covers. */
function beginOf(ink: Ink, { left, peak }: { readonly left: number; readonly peak: number }): number {
  const darkest = (x: number): number => Math.max(0, ...columns(ink, x, x + 1).dark) / peak;
  return left + 1 - darkest(left) - darkest(left - 1);
}

/**
 * A gap between words: its least width, as a part of the font's size, and what is left out at its ends, in pixels.
 */
const gap = { least: 0.24, ends: 1.5 };
/** The ink of a dot at the size of a form, summed over its pixels. */
const dot = 2;

/** Whether something stands between two words, even something as small as a dot. */
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

/**
 * A measured size; the form's own size if the two are the same as far as pixels tell. `parts` is the measured length,
 * as a part of the font's size.
 */
function snapped(measured: number, size: number, parts: number): number {
  return Math.abs(measured - size) * parts <= 1.2 ? size : measured;
}

/** A letter so like itself is not compared with another. */
const surely = 0.985;
/** A capital with no rival nearer than this is no other. */
const unlike = -0.03;
/** A letter less like itself than this is not compared either: it is not that letter. */
const hopeless = 0.7;

/**
 * A rival is looked at closely if the letter is no more like itself than `like`, and the rival is less like it by no
 * more than `less`.
 */
const close = { like: 0.95, less: 0.06 };
/** Places that are tried then, in pixels from where the letter should stand. A line is measured only to a pixel. */
const places = { across: [-0.75, -0.25, 0.25, 0.75], up: [-0.5, 0, 0.5] };
const here = { across: [0], up: [0] };

/** By how much more the ink is like a rival of a letter than like the letter. `like` is how like the letter it is. */
function moreLikeRival(seen: Ink, placed: Placed, setting: Setting, like: number): number {
  const { glyph } = placed;
  const rivals = placed.rivals();
  const alike = (one: Glyph, tried: typeof places): number => likeAnother(seen, placed, one, setting, tried);
  const first = rivals.map((rival) => alike(rival, here));
  const rival = Math.max(0, ...first);
  const nearest = rivals.filter((_, i) => (first[i] ?? 0) >= like - close.less);
  if (like > close.like || nearest.length === 0) return rival - like;
  // Both are taken as they fit best.
  const closely = nearest.map((one) => alike(one, places));
  return Math.max(rival, ...closely) - Math.max(like, alike(glyph, places));
}

/** How like another character the ink is where a letter stands. */
function likeAnother(
  seen: Ink,
  { glyph, pen }: Placed,
  other: Glyph,
  { x, y, across, up }: Setting,
  tried: typeof places,
): number {
  const [own, ink] = [glyph.ink, other.ink];
  const wide = Math.max(own.right, own.left + ink.right - ink.left);
  const left = Math.max(0, Math.floor(x + (pen + own.left) * across) - 1);
  const right = Math.min(seen.width, Math.ceil(x + (pen + wide) * across) + 1);
  const all = inkSquared(seen, left, right);
  // The rival is tried with its left edge at the letter's, and over its middle. It is tried as wide as the line, and
  // as wide as it is high.
  const begins = [own.left, (own.left + own.right - ink.right + ink.left) / 2];
  const widths = tried !== here && Math.abs(across / up - 1) > 0.01 ? [across, up] : [across];
  let best = 0;
  for (const begin of new Set(begins))
    for (const width of widths)
      for (const dx of tried.across)
        for (const dy of tried.up) {
          const from = x + (pen + begin) * across - ink.left * width + dx;
          const drawn = softGlyph(other, { x: from, y: y + dy, across: width, up });
          best = Math.max(best, likeLetter(seen, drawn, left, right, all));
        }
  return best;
}

function inkSquared({ dark, width, height }: Ink, left: number, right: number): number {
  let sum = 0;
  for (let y = 0; y < height; y++)
    for (let at = y * width + left; at < y * width + right; at++) sum += (dark[at] ?? 0) ** 2;
  return sum;
}

/** The same as `alikeWithin`, for a letter that is all that is wanted there. */
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

/**
 * A stroke along a row. It covers so many pixels beside the letters, and such a part of them. They are so much darker
 * than they should be, and should be no darker than `pale`.
 */
const stroke = { pixels: 8, part: 0.7, dark: 0.15, pale: 0.15 };
/**
 * A white line across the upright strokes of letters: how many pixels the strokes go on up and down, how dark they
 * are, and what is left of them and of their row.
 */
const stem = { on: 3, dark: 0.45, ink: 1.2, part: 0.55, ofRow: 0.65 };
/**
 * A row of letters that is rubbed out: the part that is left, its least ink, and how far it lies from the letters'
 * edges, in pixels.
 */
const rubbed = { part: 0.35, ink: 1, edge: 3 };

/** Whether a thin line, dark or white, runs through a whole text. */
function isStruck(seen: Ink, wanted: Ink): boolean {
  const { width, height } = wanted;
  const { left, top, right, bottom } = inkedPart(wanted);
  for (let y = 0; y < height; y++) {
    let [beside, inked, all, both, upright, kept, inside, stays] = [0, 0, 0, 0, 0, 0, 0, 0];
    for (let x = left + room; x < right - room; x++) {
      const [is, should] = [seen.dark[y * width + x] ?? 0, wanted.dark[y * width + x] ?? 0];
      if (should < stroke.pale) beside++;
      if (should < stroke.pale && is >= should + stroke.dark) inked++;
      all += should;
      both += Math.min(is, should);
      const inner = innerAt(wanted, x, y);
      inside += inner;
      stays += Math.min(is, inner);
      if (!isUpright(wanted, x, y)) continue;
      upright += should;
      kept += Math.min(is, should);
    }
    if (upright >= stem.ink && kept < stem.part * upright && both < stem.ofRow * all) return true;
    if (beside >= stroke.pixels && inked >= stroke.part * beside) return true;
    const isInside = y >= top + room + rubbed.edge && y < bottom - room - rubbed.edge;
    if (isInside && inside >= rubbed.ink && stays < rubbed.part * inside) return true;
  }
  return false;
}

/**
 * How dark a pixel is that has ink above and below it. At the feet of letters, half a pixel of height decides: the edge
 * of the ink lies there, above the foot of a "y".
 */
function innerAt({ width, dark }: Ink, x: number, y: number): number {
  const at = y * width + x;
  return Math.min(dark[at] ?? 0, dark[at - width] ?? 0, dark[at + width] ?? 0);
}

/** Whether a letter is equally dark above and below a pixel, so that the exact row does not matter. */
function isUpright({ width, height, dark }: Ink, x: number, y: number): boolean {
  if (y < stem.on || y + stem.on >= height) return false;
  for (let j = y - stem.on; j <= y + stem.on; j++) if ((dark[j * width + x] ?? 0) < stem.dark) return false;
  return true;
}

/** The part of the seen ink that lies where none is wanted. */
function unexplained(seen: Ink, wanted: Ink, isCut: boolean): number {
  let [more, all] = [0, 0];
  // A text that is cut off may end in half a character.
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
