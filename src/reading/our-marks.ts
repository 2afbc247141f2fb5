import { createHash } from "node:crypto"; // a pure function of bytes
import { PDFDict, type PDFDocument, PDFName, PDFNumber, PDFRawStream, PDFRef } from "pdf-lib";
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

/** Operators of the drawing of an outline, and of numbers or words in a bar with round ends. */
const outlineDrawing = "gs rg re f gs RG w j d re S";
const barDrawing = "J G w m l S RG w m l S BT g Tf Td Tj ET";

/** Bytes of a drawing of ours, and of a page of our list. */
const mostBytes = { mark: 4_000, list: 200_000 };

/**
 * Whether an annotation is a mark of a marked copy of ours that somebody sent back: an outline, or the number
 * beside it. Its name proves nothing. It is ours if it draws what ours draw and says what ours say, and no more.
 */
export function isOurMark(annotation: PDFDict): boolean {
  if (!textOf(entryOf(annotation, "NM")).startsWith(markPrefix)) return false;
  const drawing = operatorsOfLook(annotation);
  if (drawing === undefined || saysMore(annotation)) return false;
  const names = drawing.map(({ name }) => name).join(" ");
  const says = textOf(entryOf(annotation, "Contents"));
  if (names === outlineDrawing) return outlineSays.test(says);
  if (names !== barDrawing) return false;
  // ISO 32000-1:2008 §7.8.2: the operand of Tj is the text that shows.
  const shown = drawing.find(({ name }) => name === "Tj")?.operands[0];
  const isNotice = Object.values<string>(notices).includes(says);
  return shown === `(${says}` && (isNotice || numberSays.test(says));
}

/** What may speak or run in an annotation besides its contents, and ours do not have. ISO 32000-1:2008 tables 164, 170, 173, 188 */
const foreign = ["RC", "T", "Subj", "A", "AA", "PA", "OC", "IRT"];

/** Whether an annotation has something that ours do not, be it in the window that a viewer has given it. */
function saysMore(annotation: PDFDict): boolean {
  const popup = entryOf(annotation, "Popup");
  return (
    foreign.some((key) => entryOf(annotation, key) !== undefined) ||
    (popup instanceof PDFDict &&
      ["Contents", "AP", ...foreign].some((key) => entryOf(popup, key) !== undefined))
  );
}

/** Which annotations of a page are marks of ours, by their places in its list. */
export function ourMarksOn(page: PDFDict): number[] {
  return listOf(entryOf(page, "Annots")).flatMap((annotation, i) =>
    annotation instanceof PDFDict && isOurMark(annotation) ? [i] : [],
  );
}

/** The operators of an annotation's look, where it has one look alone, in Helvetica Bold and without pictures. */
function operatorsOfLook(annotation: PDFDict): Operator[] | undefined {
  const looks = entryOf(annotation, "AP");
  const look = looks instanceof PDFDict && looks.keys().length === 1 ? entryOf(looks, "N") : undefined;
  if (!(look instanceof PDFRawStream)) return undefined;
  const resources = entryOf(look.dict, "Resources");
  if (!(resources instanceof PDFDict) || !hasOurFont(resources, ["HeBo"])) return undefined;
  return safely(() => [...operatorsIn(contentOf(look, mostBytes.mark))]);
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
  if (["AP", "Contents", "BS"].some((key) => entryOf(link, key) !== undefined) || saysMore(link))
    return false;
  if (listOf(entryOf(link, "Border")).some((side) => !(side instanceof PDFNumber) || side.asNumber() !== 0))
    return false;
  if (page.resources === undefined || !hasOurFont(page.resources, ["Plain", "Bold"])) return false;
  const digest = safely(() => digestOf(page));
  return digest !== undefined && name === `${listPrefix}${digest}`;
}

/** What tells whether a page is as it was drawn, however a program has packed it since. Throws for a page too large. */
export function digestOf(page: WalkedPage): string {
  const plain = (operand: Operand): Operand =>
    typeof operand === "number" ? Math.round(operand * 100) / 100 : operand;
  const hash = createHash("sha256");
  for (const { name, operands } of operatorsIn(contentOfPage(page, mostBytes.list)))
    hash.update(JSON.stringify([name, ...operands.map(plain)]));
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
