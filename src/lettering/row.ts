import type { FontCode } from "../catalogue/engraving.ts";
import { capUnits, charactersOf, glyphsOf } from "./glyph.ts";
import { distanceBetween, extentOf, type Stroke } from "./stroke.ts";

/** How a row is cut. Distances are millimetres. */
export interface Cut {
  readonly font: FontCode;
  /** Height of a capital. */
  readonly cap: number;
  readonly tracking: number;
  /** Diameter of the cutter: how wide a stroke is. */
  readonly cutter: number;
}

/**
 * Width of one row in millimetres, from the left end of its first letter's advance to the right end of its
 * last one's: cap height / 21 · Σ advance + tracking · (letters − 1). The cutter is left out.
 */
export function widthOf(text: string, { font, cap, tracking }: Cut): number {
  const glyphs = glyphsOf(text, font);
  const units = glyphs.reduce((sum, { advance }) => sum + advance, 0);
  return (cap / capUnits) * units + tracking * Math.max(0, glyphs.length - 1);
}

/** The strokes of a row in millimetres, letter by letter. It begins at x = 0 and stands on y = 0; y runs downwards. */
export function lettersOf(text: string, { font, cap, tracking }: Cut): Stroke[][] {
  const scale = cap / capUnits;
  let start = 0;
  return glyphsOf(text, font).map(({ advance, strokes }) => {
    const left = start;
    start += advance * scale + tracking;
    return strokes.map((line) => line.map(([x, y]) => [left + x * scale, -y * scale] as const));
  });
}

/**
 * How far the middle of the cut stands right of the middle of the row's width. Letters have unequal space beside
 * them. A blank at an end is meant, and counts as width.
 */
export function offCentre(text: string, { font, cap }: Cut): number {
  const glyphs = glyphsOf(text, font);
  const [first, last] = [glyphs[0], glyphs.at(-1)];
  if (first === undefined || last === undefined) return 0;
  const { left = 0 } = extentOf(first.strokes) ?? {};
  const { right = last.advance } = extentOf(last.strokes) ?? {};
  return ((left - (last.advance - right)) / 2) * (cap / capUnits);
}

/**
 * Two neighbours in a row, and the uncut material between them in millimetres. It is 0 or less if they run together.
 */
export interface Pair {
  readonly letters: string;
  readonly gap: number;
}

/** Neighbouring letters of a row that stand nearer than the given gap. Words stand farther apart than that. */
export function pairsNearer(text: string, cut: Cut, gap: number): Pair[] {
  const [characters, letters] = [charactersOf(text), lettersOf(text, cut)];
  return letters.slice(1).flatMap((strokes, i) => {
    const between = distanceBetween(letters[i] ?? [], strokes) - cut.cutter;
    return between < gap ? [{ letters: characters.slice(i, i + 2).join(""), gap: between }] : [];
  });
}
