import type { Setting } from "./drawn-glyph.ts";
import { alikeWithin, blurred, columns, extentOf, type Ink, inkedPart, strongPart } from "./ink.ts";
import { likeItself, moreLikeRival } from "./like-rival.ts";
import { draw, measure, type Placed } from "./set-line.ts";
import { isStruck } from "./struck.ts";

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
    const end = Math.ceil(within.x + (pen + glyph.ink.right) * across) + 1;
    const right = cut === undefined ? end : Math.min(end, ink.width);
    if (right - left < visible * (end - left)) break;
    const like = alikeWithin(seen, wanted, left, right);
    const isDoubted = like < surely && like > hopeless;
    const by = isDoubted ? moreLikeRival(seen, placed, within, like) : -1;
    // Programs draw each letter where a pixel begins, up to half a pixel from its place. A capital that may be another
    // is not looked for there.
    const near =
      isDoubted && (isSmall || by < unlike) ? Math.max(like, likeItself(seen, placed, within)) : like;
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

/** Of a letter that is cut off, the part that tells which it is. */
const visible = 0.6;
/** A letter so like itself is not compared with another. */
const surely = 0.985;
/** A capital with no rival nearer than this is no other. */
const unlike = -0.03;
/** A letter less like itself than this is not compared either: it is not that letter. */
const hopeless = 0.7;

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
