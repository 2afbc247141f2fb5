import { type DrawnGlyph, type Setting, softGlyph } from "./drawn-glyph.ts";
import type { Glyph } from "./glyphs.ts";
import type { Ink } from "./ink.ts";
import type { Placed } from "./set-line.ts";

/**
 * A rival is looked at closely if the letter is no more like itself than `like`, and the rival is less like it by no
 * more than `less`.
 */
const close = { like: 0.95, less: 0.06 };
/** Places that are tried then, in pixels from where the letter should stand. A line is measured only to a pixel. */
const places = { across: [-0.75, -0.25, 0.25, 0.75], up: [-0.5, 0, 0.5] };
const here = { across: [0], up: [0] };

/** By how much more the ink is like a rival of a letter than like the letter. `like` is how like the letter it is. */
export function moreLikeRival(seen: Ink, placed: Placed, setting: Setting, like: number): number {
  const rivals = placed.rivals();
  const alike = (one: Glyph, tried: typeof places): number => likeAnother(seen, placed, one, setting, tried);
  const first = rivals.map((rival) => alike(rival, here));
  const rival = Math.max(0, ...first);
  const nearest = rivals.filter((_, i) => (first[i] ?? 0) >= like - close.less);
  if (like > close.like || nearest.length === 0) return rival - like;
  // Both are taken as they fit best.
  const closely = nearest.map((one) => alike(one, places));
  return Math.max(rival, ...closely) - Math.max(like, likeItself(seen, placed, setting));
}

/** How like itself a letter is, up to half a pixel from its place. */
export function likeItself(seen: Ink, placed: Placed, setting: Setting): number {
  return likeAnother(seen, placed, placed.glyph, setting, places);
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
