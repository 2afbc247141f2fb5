import { Encodings, Font, FontNames } from "pdf-lib/standard-fonts";
import { palette, partsOf } from "./canvas.ts";

// Viewers know the standard fonts. So a filled field needs only their widths, and no font of its own.
const helvetica = Font.load(FontNames.Helvetica);

/** Space between the edge of a field and its text, in points. Viewers that redraw a field leave the same. */
const margin = 2;
/** Height of a capital and distance of lines, as parts of the font size. */
const capital = 0.718;
const leading = 1.2;

/**
 * The drawing of a text field or list that holds `text`, as PDF operators for a stream as large as the field
 * (`width`, `height` in points). `style` is the field's default appearance, such as "/Helv 10 Tf 0 g". A character
 * that the form's font lacks is drawn as "?". That does not change the field's value.
 */
export function textAppearance(
  text: string,
  field: {
    readonly width: number;
    readonly height: number;
    readonly manyLines: boolean;
    readonly style: string;
  },
): string {
  const { width, height, manyLines, style } = field;
  const size = Number(/([\d.]+) Tf/.exec(style)?.[1]);
  const typed = text.split(/\r\n|\r|\n/);
  const lines = manyLines ? typed.flatMap((line) => wrap(line, size, width - 2 * margin)) : [typed.join(" ")];
  const first = manyLines ? height - margin - size : (height - capital * size) / 2;
  const shown = lines.map((line) => `<${codesOf(line)}> Tj`).join(` 0 -${leading * size} Td `);
  const clip = `1 1 ${width - 2} ${height - 2} re W n`;
  return `/Tx BMC q ${clip} BT ${style} ${margin} ${first.toFixed(2)} Td ${shown} ET Q EMC`;
}

/** The default appearance of a field: its font, the size in points (0 lets the viewer choose), and ink. */
export function inkStyle(size: number, font: "Helv" | "ZaDb" = "Helv"): string {
  return `/${font} ${size} Tf ${colour(palette.ink)} rg`;
}

/** Marks for a square of `size` points, and the ZapfDingbats letter that looks like each. */
export const tickMark = {
  letter: "4",
  drawn: (size: number): string => {
    const [left, foot, right] = [
      [0.22, 0.5],
      [0.42, 0.26],
      [0.8, 0.78],
    ].map((point) => numbers(point, size));
    return `q ${colour(palette.accent)} RG 1.7 w 1 J 1 j ${left} m ${foot} l ${right} l S Q`;
  },
};

export const dotMark = {
  letter: "l",
  // A line without length and with round ends is a disc.
  drawn: (size: number): string => {
    const centre = numbers([0.5, 0.5], size);
    return `q ${colour(palette.accent)} RG ${numbers([0.54], size)} w 1 J ${centre} m ${centre} l S Q`;
  },
};

function numbers(parts: readonly number[], size: number): string {
  return parts.map((part) => (part * size).toFixed(2)).join(" ");
}

function colour(hex: string): string {
  return partsOf(hex)
    .map((part) => part.toFixed(3))
    .join(" ");
}

/** Whether a field for one line shows a text as it is typed. */
export function canShow(text: string): boolean {
  return Array.from(text).every((character) =>
    Encodings.WinAnsi.canEncodeUnicodeCodePoint(character.codePointAt(0) ?? 0),
  );
}

/** Width of one line in points. */
export function textWidth(text: string, size: number): number {
  const width = glyphsOf(text).reduce((sum, { name }) => sum + (helvetica.getWidthOfGlyph(name) ?? 0), 0);
  return (width * size) / 1000;
}

function codesOf(text: string): string {
  return glyphsOf(text)
    .map(({ code }) => code.toString(16).padStart(2, "0"))
    .join("");
}

function glyphsOf(text: string): { code: number; name: string }[] {
  const { WinAnsi } = Encodings;
  const questionMark = 0x3f;
  return Array.from(text, (character) => {
    const point = character.codePointAt(0) ?? 0;
    return WinAnsi.encodeUnicodeCodePoint(WinAnsi.canEncodeUnicodeCodePoint(point) ? point : questionMark);
  });
}

/** Breaks a line at its blanks; a word wider than the field stays whole. */
export function wrap(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
