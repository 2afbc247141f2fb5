import type { FontCode } from "../catalogue/engraving.ts";
import { accented, standsAbove } from "./accents.ts";
import { romanSimplex } from "./roman-simplex.ts";
import { type Stroke, strokesFrom } from "./stroke.ts";

/** One character in the units of its font. x counts from the left end of the advance, y upwards from the baseline. */
export interface Glyph {
  readonly advance: number;
  readonly strokes: readonly Stroke[];
}

/** Height of a capital in the units of every font here. */
export const capUnits = 21;

/** How wide each font is drawn, as a part of Roman Simplex. */
const widths = { RS: 1, RN: 0.85 } as const satisfies Record<FontCode, number>;

/** A crossed box. It stands in drawings and widths for a character that the font cannot cut. */
const noGlyph: Glyph = { advance: 20, strokes: strokesFrom("3,0 3,21 17,21 17,0 3,0 17,21; 3,21 17,0") };

const letters = new Map(
  Object.entries(romanSimplex).map(([letter, [advance, strokes]]): [string, Glyph] => [
    letter,
    { advance, strokes: strokesFrom(strokes) },
  ]),
);

/** The glyphs of a text, one for each character; a letter and its accent are one. */
export function glyphsOf(text: string, font: FontCode): Glyph[] {
  return charactersOf(text).map((character) => narrowed(glyphOf(character) ?? noGlyph, widths[font]));
}

/** The characters of a text as they are cut. A letter and its accent are one, however they were typed. */
export function charactersOf(text: string): string[] {
  return [...text.normalize("NFC")];
}

/** Letters with accents are put together from the letter and the accent. */
function glyphOf(character: string): Glyph | undefined {
  const [letter = "", ...accents] = character.normalize("NFD");
  const plain = letters.get(letter);
  if (plain === undefined) return undefined;
  // The first stroke of i and j is the dot.
  const isDotless = "ij".includes(letter) && accents.some(standsAbove);
  const strokes = accents.reduce<readonly Stroke[] | undefined>(
    (drawn, accent) => drawn && accented(drawn, accent),
    isDotless ? plain.strokes.slice(1) : plain.strokes,
  );
  return strokes && { advance: plain.advance, strokes };
}

function narrowed({ advance, strokes }: Glyph, width: number): Glyph {
  return {
    advance: advance * width,
    strokes: strokes.map((line) => line.map(([x, y]) => [x * width, y] as const)),
  };
}
