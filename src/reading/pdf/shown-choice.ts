import { PDFDict, type PDFDocument, PDFName, PDFRawStream } from "pdf-lib";
import { annotationAt } from "../our-marks.ts";
import { type Operator, operatorsIn } from "./content-operators.ts";
import { contentOf, entryOf } from "./pdf-value.ts";

/** The drawing of a single choice has no more bytes than these. */
const mostBytes = 65_536;

/**
 * The text in the drawing of a list that opens, which pdf.js does not tell. `id` is pdf.js's name of the widget.
 * Undefined if there is no drawing, or if its font has other codes than those of Latin letters.
 */
export function shownChoice(pdf: PDFDocument, id: string): string | undefined {
  const widget = annotationAt(pdf, id);
  const looks = widget && entryOf(widget, "AP");
  const look = looks instanceof PDFDict ? entryOf(looks, "N") : undefined;
  if (!(look instanceof PDFRawStream)) return undefined;
  try {
    const operators = [...operatorsIn(contentOf(look, mostBytes))];
    const fonts = operators.filter(({ name }) => name === "Tf").map(({ operands }) => String(operands[0]));
    return fonts.every((font) => isLatin(look, font.slice(1))) ? drawnText(operators) : undefined;
  } catch {
    return undefined; // a drawing that cannot be decoded says nothing for or against the value
  }
}

function drawnText(operators: readonly Operator[]): string {
  return operators
    .filter(({ name }) => ["Tj", "TJ", "'", '"'].includes(name))
    .flatMap(({ operands }) => operands.filter((one) => typeof one === "string" && one.startsWith("(")))
    .map((text) => String(text).slice(1))
    .join(" ");
}

// ISO 32000-1:2008 §9.6.6: a font with codes of its own has an encoding dictionary or a map to Unicode, or is a
// composite font.
function isLatin({ dict }: PDFRawStream, name: string): boolean {
  const resources = entryOf(dict, "Resources");
  const fonts = resources instanceof PDFDict ? entryOf(resources, "Font") : undefined;
  const font = fonts instanceof PDFDict ? entryOf(fonts, name) : undefined;
  return (
    font instanceof PDFDict &&
    entryOf(font, "ToUnicode") === undefined &&
    !(entryOf(font, "Encoding") instanceof PDFDict) &&
    entryOf(font, "Subtype") !== PDFName.of("Type0")
  );
}
