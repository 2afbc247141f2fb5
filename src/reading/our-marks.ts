import { createHash } from "node:crypto"; // a pure function of bytes
import { PDFArray, PDFDict, type PDFDocument, PDFName, PDFNumber, PDFRawStream, PDFRef } from "pdf-lib";
import type { Box } from "./facts.ts";
import { overlap } from "./pdf/boxes.ts";
import { type Operand, type Operator, operatorsIn } from "./pdf/content-operators.ts";
import { contentOf, dictsIn, entryOf, listOf, textOf } from "./pdf/pdf-value.ts";
import { contentOfPage, type WalkedPage } from "./pdf/walked-pages.ts";

/** How the names of all annotations begin that a marked copy has. ISO 32000-1:2008 table 164: NM. */
export const markPrefix = "burin-mark";
/** How the link is named that covers a page of our list; behind it stands what is on that page, as `digestOf` tells it. */
export const listPrefix = `${markPrefix} list `;

/** What a mark says to whoever clicks at it: the numbers of its problems, which the last page explains. */
export function outlineWords(numbers: readonly number[]): string {
  return `Number ${numbers.join(", ")}: see the end.`;
}
const outlineSays = /^Number \d[\d, ]*: see the end\.$/;
const numberSays = /^\d[\d, ]*$/;

/** What the bar at the upper edge of a page can say. */
export const notices = {
  fail: "Correct the numbered fields, save, and send again. What is wrong: at the end.",
  person: "One of us is looking at the numbered fields. Why: at the end.",
  confirm: "Confirm the numbered fields, or correct them and send again. Why: at the end.",
  unplaced: "What is to be done with this sheet: see the end.",
} as const;

/** Operators of the drawing of numbers or words in a bar with round ends. */
const barDrawing = "J G w m l S RG w m l S BT g Tf Td Tj ET";

/** An outline: how wide its line is in points, and how strong its tint, which darkens and covers nothing. */
export const outlineLook = {
  thickness: 2,
  states: { Tint: { ca: 0.1, BM: "Multiply" }, Full: { ca: 1, BM: "Normal" } },
} as const;

/** Bytes of a drawing of ours, and of a page of our list. */
const mostBytes = { mark: 4_000, list: 200_000 };

/**
 * Whether an annotation is a mark of a marked copy of ours that somebody sent back: an outline, or the number
 * beside it. Its name proves nothing. It is ours if it draws what ours draw and says what ours say, and no more.
 */
export function isOurMark(annotation: PDFDict): boolean {
  return markIn(annotation) !== undefined;
}

/** A mark of ours; undefined for what is none. */
function markIn(annotation: PDFDict): "outline" | "number" | "notice" | undefined {
  if (!textOf(entryOf(annotation, "NM")).startsWith(markPrefix)) return undefined;
  const look = lookOf(annotation);
  if (look === undefined || entryOf(annotation, "RC") !== undefined) return undefined;
  const says = textOf(entryOf(annotation, "Contents"));
  if (isOutline(look)) return outlineSays.test(says) ? "outline" : undefined;
  const { operators } = look;
  if (operators.map(({ name }) => name).join(" ") !== barDrawing) return undefined;
  // ISO 32000-1:2008 §7.8.2: the operand of Tj is the text that shows.
  const shown = operators.find(({ name }) => name === "Tj")?.operands[0];
  if (shown !== `(${says}`) return undefined;
  if (numberSays.test(says)) return "number";
  return Object.values<string>(notices).includes(says) ? "notice" : undefined;
}

/**
 * Which annotations of a page are marks of ours, by their places in its list. A number stands at an outline, and a
 * notice covers no field.
 */
export function ourMarksOn(page: PDFDict): number[] {
  const all = listOf(entryOf(page, "Annots"));
  const marks = all.map((one) => (one instanceof PDFDict ? markIn(one) : undefined));
  if (marks.every((mark) => mark === undefined)) return [];
  const boxes = all.map((one) => (one instanceof PDFDict ? boxOf(entryOf(one, "Rect")) : undefined));
  const outlines = boxes.filter((_, i) => marks[i] === "outline");
  const widgets = boxes.filter((_, i) => {
    const one = all[i];
    return one instanceof PDFDict && entryOf(one, "Subtype") === PDFName.of("Widget");
  });
  return marks.flatMap((mark, i) => {
    const box = boxes[i];
    if (mark === undefined || box === undefined) return [];
    const isPlaced =
      mark === "outline" ||
      (mark === "number"
        ? outlines.some((outline) => outline !== undefined && isAtCorner(box, outline))
        : !widgets.some((widget) => widget !== undefined && overlap(widget, box)));
    return isPlaced ? [i] : [];
  });
}

/** Points between a number and the corner of its outline; more where the edge of the page is near. */
const reach = 20;

function isAtCorner([left, bottom, right, top]: Box, outline: Box): boolean {
  return [outline[0], outline[2]].some(
    (x) =>
      x >= left - reach &&
      x <= right + reach &&
      [outline[1], outline[3]].some((y) => y >= bottom - reach && y <= top + reach),
  );
}

function boxOf(rectangle: unknown): Box | undefined {
  if (!(rectangle instanceof PDFArray) || rectangle.size() !== 4) return undefined;
  const { x, y, width, height } = rectangle.asRectangle();
  return [x, y, x + width, y + height];
}

/** What an annotation looks like. */
interface Look {
  readonly operators: readonly Operator[];
  readonly resources: PDFDict;
  readonly size: readonly [number, number];
}

/** The look of an annotation that has one alone, at its own size, in Helvetica Bold and without pictures. */
function lookOf(annotation: PDFDict): Look | undefined {
  const looks = entryOf(annotation, "AP");
  const look = looks instanceof PDFDict && looks.keys().length === 1 ? entryOf(looks, "N") : undefined;
  if (!(look instanceof PDFRawStream)) return undefined;
  const resources = entryOf(look.dict, "Resources");
  if (!(resources instanceof PDFDict) || !hasOurFont(resources, ["HeBo"])) return undefined;
  return safely(() => {
    const [left, bottom, width, height] = boxOf(entryOf(look.dict, "BBox")) ?? [];
    const [x = 0, y = 0, right = 0, top = 0] = boxOf(entryOf(annotation, "Rect")) ?? [];
    if (left !== 0 || bottom !== 0 || width === undefined || height === undefined) return undefined;
    // Upright or on its side, as the page is turned.
    const [across, up] = [right - x, top - y];
    const isWhole = [
      [width, height],
      [height, width],
    ].some(([w = 0, h = 0]) => Math.abs(w - across) < 1 && Math.abs(h - up) < 1);
    if (!isWhole) return undefined;
    const operators = [...operatorsIn(contentOf(look, mostBytes.mark))];
    return { operators, resources, size: [width, height] as const };
  });
}

/** Whether a look is an outline's: a tint that covers nothing, and a line around it. */
function isOutline({ operators, resources, size: [width, height] }: Look): boolean {
  const { thickness, states } = outlineLook;
  const frame = [thickness / 2, thickness / 2, width - thickness, height - thickness]
    .map(hundredth)
    .join(" ");
  const drawing = operators.map(({ name, operands }) => {
    // Colours and dashes are as the problem is.
    const isFree = name === "rg" || name === "RG" || name === "d";
    return [...(isFree ? [] : operands.map(hundredth)), name].join(" ");
  });
  const own = `/Tint gs,rg,${frame} re,f,/Full gs,RG,${thickness} w,1 j,d,${frame} re,S`;
  if (drawing.join(",") !== own) return false;
  const found = entryOf(resources, "ExtGState");
  return Object.entries(states).every(([name, wanted]) => {
    const state = found instanceof PDFDict ? entryOf(found, name) : undefined;
    if (!(state instanceof PDFDict)) return false;
    const keys = state.keys().filter((key) => key !== PDFName.of("Type"));
    const strength = entryOf(state, "ca");
    return (
      keys.length === 2 &&
      strength instanceof PDFNumber &&
      hundredth(strength.asNumber()) === wanted.ca &&
      textOf(entryOf(state, "BM")) === wanted.BM
    );
  });
}

/** As programs round numbers in saving. */
function hundredth(operand: Operand): Operand {
  return typeof operand === "number" ? Math.round(operand * 100) / 100 : operand;
}

/** Whether all fonts are Helvetica as every viewer has it, by its own letters. ISO 32000-1:2008 table 111 */
function hasOurFont(resources: PDFDict, names: readonly string[]): boolean {
  const fonts = entryOf(resources, "Font");
  const drawings = entryOf(resources, "XObject");
  if (!(fonts instanceof PDFDict) || (drawings instanceof PDFDict && drawings.keys().length > 0))
    return false;
  return names.every((name) => {
    const font = entryOf(fonts, name);
    if (!(font instanceof PDFDict)) return false;
    const encoding = entryOf(font, "Encoding");
    return (
      /^Helvetica(-Bold)?$/.test(textOf(entryOf(font, "BaseFont"))) &&
      entryOf(font, "Subtype") === PDFName.of("Type1") &&
      entryOf(font, "FontDescriptor") === undefined &&
      entryOf(font, "ToUnicode") === undefined &&
      (encoding === undefined || encoding instanceof PDFName)
    );
  });
}

/** Whether a page is one of the list at the end of a marked copy, and nobody has added to it. */
export function isOurList(page: WalkedPage): boolean {
  const [link, ...others] = dictsIn(page.dict, "Annots");
  if (link === undefined || others.length > 0) return false;
  const name = textOf(entryOf(link, "NM"));
  if (!name.startsWith(listPrefix) || entryOf(link, "Subtype") !== PDFName.of("Link")) return false;
  if (entryOf(link, "AP") !== undefined || entryOf(link, "Contents") !== undefined) return false;
  if (page.resources === undefined || !hasOurFont(page.resources, ["Plain", "Bold"])) return false;
  const digest = safely(() => digestOf(page));
  return digest !== undefined && name === `${listPrefix}${digest}`;
}

/** What tells whether a page is as it was drawn, however a program has packed it since. Throws for a page too large. */
export function digestOf(page: WalkedPage): string {
  const hash = createHash("sha256");
  for (const { name, operands } of operatorsIn(contentOfPage(page, mostBytes.list)))
    hash.update(JSON.stringify([name, ...operands.map(hundredth)]));
  return hash.digest("hex").slice(0, 32);
}

function safely<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch {
    return undefined; // what cannot be unpacked is none of ours
  }
}

/** An annotation by the name that pdf.js gives it; undefined where it is no object of its own. */
export function annotationAt(pdf: PDFDocument, id: string): PDFDict | undefined {
  const [, number, generation = 0] = /^(\d+)R(\d*)$/.exec(id) ?? [];
  if (number === undefined) return undefined;
  const annotation = pdf.context.lookup(PDFRef.of(Number(number), Number(generation)));
  return annotation instanceof PDFDict ? annotation : undefined;
}
