import { PDFDict, PDFName, PDFNumber, type PDFRawStream } from "pdf-lib";
import type { Box } from "../facts.ts";
import { type Operand, operatorsIn } from "../pdf/content-operators.ts";
import { contentOf, entryOf, rectangleOf } from "../pdf/pdf-value.ts";
import { advanceOf } from "./glyphs.ts";

/** A field's drawing has no more bytes than these. */
const mostBytes = 20_000;
/** The least size of type in points, and how far from black it may be. */
const leastSize = 6;
const palest = 0.3;
/** How far a line reaches above and below its base, as parts of its size. Helvetica's own figures. */
const rise = 0.73;
const fall = 0.21;
/** Rounding, in points. */
const close = 0.02;

/** The entries that a drawing of the plainest kind may have. ISO 32000-1:2008 table 95 */
const entries = new Set([
  "/Type",
  "/Subtype",
  "/FormType",
  "/BBox",
  "/Matrix",
  "/Resources",
  "/Length",
  "/Filter",
]);

/** What a field's drawing is set with. `q` keeps it and `Q` brings it back. */
interface Setting {
  readonly clip: Box;
  readonly size: number;
  readonly leading: number;
  /** How many numbers make a colour. */
  readonly parts: 1 | 3;
  readonly isDark: boolean;
}

/** A line of text in a drawing. */
interface Line {
  readonly text: string;
  readonly y: number;
  readonly size: number;
}

/**
 * The lines of text that a field's drawing shows, if it is of the plainest kind: nothing but upright Helvetica in a dark
 * colour, the whole of which lies within the field. Undefined for any other drawing. `size` is the field's own.
 */
export function linesShown(look: PDFRawStream, size: readonly [number, number]): string[] | undefined {
  try {
    return isPlainForm(look, size) ? linesIn(look, [0, 0, ...size]) : undefined;
  } catch {
    return undefined; // a drawing that cannot be decoded
  }
}

function isPlainForm({ dict, contents }: PDFRawStream, [width, height]: readonly [number, number]): boolean {
  const box = rectangleOf(entryOf(dict, "BBox"));
  const matrix = entryOf(dict, "Matrix");
  const length = entryOf(dict, "Length");
  return (
    dict.keys().every((key) => entries.has(key.asString())) &&
    entryOf(dict, "Subtype") === PDFName.of("Form") &&
    box !== undefined &&
    [0, 0, width, height].every((side, i) => Math.abs(side - (box[i] ?? Number.NaN)) <= close) &&
    (matrix === undefined ? !dict.has(PDFName.of("Matrix")) : String(matrix) === "[ 1 0 0 1 0 0 ]") &&
    // Readers differ in where a stream ends that does not end where it says.
    length instanceof PDFNumber &&
    length.asNumber() === contents.length &&
    ["undefined", "/FlateDecode", "[ /FlateDecode ]"].includes(String(entryOf(dict, "Filter")))
  );
}

function linesIn(look: PDFRawStream, box: Box): string[] | undefined {
  const content = contentOf(look, mostBytes);
  // Brackets and comments are not told apart from what stands within them.
  if (/[[\]{}%]|<<|>>/.test(content)) return undefined;
  const isPlainFont = fontsOf(look.dict);
  let now: Setting = { clip: box, size: 0, leading: 0, parts: 1, isDark: true };
  const kept: Setting[] = [];
  let path: Box | undefined;
  let isClip = false;
  // Where the line begins, while there is a text.
  let pen: { readonly x: number; readonly y: number } | undefined;
  const lines: Line[] = [];
  for (const { name, operands } of operatorsIn(content)) {
    const n = operands.every((one) => typeof one === "number") ? operands : [];
    const [a = Number.NaN, b = Number.NaN, c = Number.NaN, d = Number.NaN] = n;
    // A path is drawn or clipped with at once.
    if (path !== undefined && !(isClip ? name === "n" : name === "W" || name === "W*")) return undefined;
    switch (`${name} ${operands.length}`) {
      case "BMC 1":
        if (operands[0] !== "/Tx") return undefined;
        break;
      case "EMC 0":
        break;
      case "q 0":
        if (pen !== undefined) return undefined;
        kept.push(now);
        break;
      case "Q 0": {
        const before = kept.pop();
        if (pen !== undefined || before === undefined) return undefined;
        now = before;
        break;
      }
      case "re 4":
        if (pen !== undefined || n.length === 0 || c < 0 || d < 0) return undefined;
        path = [a, b, a + c, b + d];
        break;
      case "W 0":
      case "W* 0":
        if (path === undefined) return undefined;
        isClip = true;
        break;
      case "n 0":
        if (path === undefined) return undefined;
        now = { ...now, clip: common(now.clip, path) };
        path = undefined;
        isClip = false;
        break;
      case "BT 0":
        if (pen !== undefined) return undefined;
        pen = { x: 0, y: 0 };
        break;
      case "ET 0":
        if (pen === undefined) return undefined;
        pen = undefined;
        break;
      // A line's width and colour change nothing where no line is drawn.
      case "w 1":
      case "G 1":
      case "RG 3":
        break;
      case "cs 1":
        if (operands[0] !== "/DeviceRGB" && operands[0] !== "/DeviceGray") return undefined;
        // §8.6.5.1: the colour is black then.
        now = { ...now, parts: operands[0] === "/DeviceRGB" ? 3 : 1, isDark: true };
        break;
      case "g 1":
      case "rg 3":
        now = { ...now, parts: name === "g" ? 1 : 3, isDark: isDark(n) };
        break;
      case "sc 1":
      case "sc 3":
        if (now.parts !== operands.length) return undefined;
        now = { ...now, isDark: isDark(n) };
        break;
      case "Tf 2":
        if (!isPlainFont(operands[0])) return undefined;
        now = { ...now, size: Number(operands[1]) };
        break;
      case "Tm 6":
        if (pen === undefined || n.slice(0, 4).join(" ") !== "1 0 0 1") return undefined;
        pen = { x: n[4] ?? Number.NaN, y: n[5] ?? Number.NaN };
        break;
      case "Td 2":
        if (pen === undefined || n.length === 0) return undefined;
        pen = { x: pen.x + a, y: pen.y + b };
        break;
      case "TL 1":
        if (n.length === 0) return undefined;
        now = { ...now, leading: a };
        break;
      case "T* 0":
        if (pen === undefined) return undefined;
        pen = { ...pen, y: pen.y - now.leading };
        break;
      // No space between letters or words, letters as wide as they are, on the line, filled.
      case "Tc 1":
      case "Tw 1":
      case "Ts 1":
      case "Tr 1":
        if (a !== 0) return undefined;
        break;
      case "Tz 1":
        if (a !== 100) return undefined;
        break;
      case "Tj 1": {
        const text = plainText(operands[0]);
        if (pen === undefined || text === undefined) return undefined;
        if (text === "") break;
        const last = lines.at(-1);
        const isBelow = last === undefined || last.y - pen.y >= now.size * 0.9;
        if (!isBelow || !isSeen(text, pen, now)) return undefined;
        lines.push({ text, y: pen.y, size: now.size });
        break;
      }
      default:
        return undefined;
    }
  }
  const isEnded = pen === undefined && path === undefined;
  const isEven = lines.every(({ size }) => size === lines[0]?.size);
  return isEnded && isEven ? lines.map(({ text }) => text) : undefined;
}

function isDark(colour: readonly number[]): boolean {
  return colour.length > 0 && colour.every((part) => part >= 0 && part <= palest);
}

/** Whether a line is dark, large enough, and wholly within what is drawn. */
function isSeen(text: string, { x, y }: { readonly x: number; readonly y: number }, now: Setting): boolean {
  const { clip, size } = now;
  const [left, bottom, right, top] = clip;
  return (
    now.isDark &&
    size >= leastSize &&
    x >= left - close &&
    x + widthOf(text) * size <= right + close &&
    y - fall * size >= bottom - close &&
    y + rise * size <= top + close
  );
}

function widthOf(text: string): number {
  let width = 0;
  for (let i = 0; i < text.length; i++) width += advanceOf(text.charCodeAt(i));
  return width;
}

/** A text of ASCII alone, which every encoding of Latin letters shows alike, but for two quotation marks. */
function plainText(operand: Operand | undefined): string | undefined {
  if (typeof operand !== "string" || !operand.startsWith("(")) return undefined;
  const text = operand.slice(1);
  return /^[ -&(-_a-~]*$/.test(text) ? text : undefined;
}

function common(one: Box, other: Box): Box {
  return [
    Math.max(one[0], other[0]),
    Math.max(one[1], other[1]),
    Math.min(one[2], other[2]),
    Math.min(one[3], other[3]),
  ];
}

/** Whether a name of the drawing's own resources is plain Helvetica. */
function fontsOf(dict: PDFDict): (name: Operand | undefined) => boolean {
  const resources = entryOf(dict, "Resources");
  if (!(resources instanceof PDFDict)) return () => false;
  const isPlain = resources.keys().every((key) => ["/Font", "/ProcSet"].includes(key.asString()));
  const fonts = entryOf(resources, "Font");
  return (name) => {
    if (!isPlain || !(fonts instanceof PDFDict) || typeof name !== "string") return false;
    const font = entryOf(fonts, name.slice(1));
    return font instanceof PDFDict && isHelvetica(font);
  };
}

const helveticas = new WeakMap<PDFDict, boolean>();

/** Whether a font is the Helvetica that every viewer has, with the codes of Latin letters. ISO 32000-1:2008 table 111 */
export function isHelvetica(font: PDFDict): boolean {
  const known = helveticas.get(font);
  if (known !== undefined) return known;
  const is =
    font
      .keys()
      .every((key) => ["/Type", "/Subtype", "/BaseFont", "/Encoding", "/Name"].includes(key.asString())) &&
    entryOf(font, "Subtype") === PDFName.of("Type1") &&
    entryOf(font, "BaseFont") === PDFName.of("Helvetica") &&
    (!font.has(PDFName.of("Encoding")) || entryOf(font, "Encoding") === PDFName.of("WinAnsiEncoding"));
  helveticas.set(font, is);
  return is;
}
