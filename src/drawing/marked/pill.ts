import { Encodings, Font, FontNames } from "pdf-lib/standard-fonts";
import { partsOf } from "../blank/canvas.ts";
import { rounded } from "../proof/shapes.ts";

/** Points. */
export const pillText = 9;
const rim = 1.2;

/**
 * Text in a bar with round ends and a light rim, as operators for a drawing of that size. The font is Helvetica Bold,
 * named HeBo. The text has no brackets and no letters beyond WinAnsi.
 */
export function pill(text: string, [width, height]: readonly [number, number], colour: string): string {
  // A line that has round ends.
  const line = `${height / 2} ${height / 2} m ${rounded(width - height / 2)} ${height / 2} l S`;
  // Capitals of Helvetica are 0.718 of its size high.
  const start = `${rounded((width - pillWidth(text)) / 2)} ${rounded((height - 0.718 * pillText) / 2)}`;
  return [
    `1 J 1 G ${height} w ${line} ${rgb(colour)} RG ${rounded(height - 2 * rim)} w ${line}`,
    `BT 1 g /HeBo ${pillText} Tf ${start} Td (${text}) Tj ET`,
  ].join(" ");
}

const bold = Font.load(FontNames.HelveticaBold);

/** Width of the text alone. */
export function pillWidth(text: string): number {
  const units = Array.from(text, (character) => {
    const { name } = Encodings.WinAnsi.encodeUnicodeCodePoint(character.codePointAt(0) ?? 0);
    return bold.getWidthOfGlyph(name) ?? 0;
  });
  return (units.reduce((sum, one) => sum + one, 0) * pillText) / 1000;
}

/** The operands of a colour operator. */
export function rgb(colour: string): string {
  return partsOf(colour).map(rounded).join(" ");
}
