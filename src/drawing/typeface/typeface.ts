import { type PDFContext, type PDFDocument, PDFHexString, type PDFRef } from "pdf-lib";
import { Encodings } from "pdf-lib/standard-fonts";
import { bold, plain } from "./arimo.ts";

/** A typeface that a document carries with it, so that every viewer shows the same letters. */
export interface Typeface {
  readonly ref: PDFRef;
  /** Width of a line, in the unit of its size. */
  readonly widthOf: (text: string, size: number) => number;
  /** The operand of Tj. A character that WinAnsi lacks is shown as "?". */
  readonly codesOf: (text: string) => PDFHexString;
}

export interface Typefaces {
  readonly plain: Typeface;
  readonly bold: Typeface;
}

export function embedTypefaces({ context }: Pick<PDFDocument, "context">): Typefaces {
  return { plain: embedded(context, plain), bold: embedded(context, bold) };
}

type Letters = typeof plain | typeof bold;

const firstCode = 32;
const questionMark = 0x3f;

function embedded(context: PDFContext, letters: Letters): Typeface {
  const widths = letters.widths.split(" ").map(Number);
  return {
    ref: fontIn(context, letters, widths),
    widthOf: (text, size) =>
      (codesIn(text).reduce((sum, code) => sum + (widths[code - firstCode] ?? 0), 0) * size) / 1000,
    codesOf: (text) => PDFHexString.of(Buffer.from(codesIn(text)).toString("hex").toUpperCase()),
  };
}

function codesIn(text: string): number[] {
  return Array.from(text, (character) => codeOf(character.codePointAt(0) ?? 0) ?? questionMark);
}

function codeOf(point: number): number | undefined {
  const { WinAnsi } = Encodings;
  return WinAnsi.canEncodeUnicodeCodePoint(point) ? WinAnsi.encodeUnicodeCodePoint(point).code : undefined;
}

/** A simple font with its program and what its codes mean. ISO 32000-1:2008 §9.6.3, §9.8, §9.10.3 */
function fontIn(context: PDFContext, letters: Letters, widths: readonly number[]): PDFRef {
  const { name, length, box, stem, packed } = letters;
  const program = context.stream(Buffer.from(packed, "base64"), {
    Filter: "FlateDecode",
    Length1: length,
  });
  const descriptor = context.obj({
    Type: "FontDescriptor",
    FontName: name,
    Flags: 1 << 5, // table 123: letters of the standard Latin set
    FontBBox: [...box],
    ItalicAngle: 0,
    Ascent: 905,
    Descent: -212,
    CapHeight: 716,
    StemV: stem,
    FontFile2: context.register(program),
  });
  const font = context.obj({
    Type: "Font",
    Subtype: "TrueType",
    BaseFont: name,
    Encoding: "WinAnsiEncoding",
    FirstChar: firstCode,
    LastChar: firstCode + widths.length - 1,
    Widths: [...widths],
    FontDescriptor: context.register(descriptor),
    ToUnicode: context.register(context.flateStream(meanings())),
  });
  return context.register(font);
}

/** Which character each code is. ISO 32000-1:2008 §9.10.3 */
function meanings(): string {
  const lines = Encodings.WinAnsi.supportedCodePoints
    .map((point) => [codeOf(point) ?? questionMark, point] as const)
    .toSorted(([a], [b]) => a - b)
    .map(([code, point]) => `<${hex(code, 2)}> <${hex(point, 4)}>`);
  // A section has 100 lines at most.
  const sections = Array.from({ length: Math.ceil(lines.length / 100) }, (_, i) => {
    const some = lines.slice(100 * i, 100 * (i + 1));
    return `${some.length} beginbfchar\n${some.join("\n")}\nendbfchar`;
  });
  return [
    "/CIDInit /ProcSet findresource begin 12 dict begin begincmap",
    "/CMapName /Burin-WinAnsi def /CMapType 2 def",
    "1 begincodespacerange <00> <FF> endcodespacerange",
    ...sections,
    "endcmap CMapName currentdict /CMap defineresource pop end end",
  ].join("\n");
}

function hex(number: number, digits: number): string {
  return number.toString(16).padStart(digits, "0");
}
