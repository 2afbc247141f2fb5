import { createHash } from "node:crypto"; // a pure function of bytes
import { PDFDict, type PDFDocument, PDFName, PDFNumber, PDFRef } from "pdf-lib";
import type { Box } from "./facts.ts";
import { hasOurFont, hundredth, isOutline, lookOf, safely } from "./our-look.ts";
import { overlap } from "./pdf/boxes.ts";
import { operatorsIn } from "./pdf/content-operators.ts";
import { dictsIn, entryOf, listOf, rectangleOf, textOf } from "./pdf/pdf-value.ts";
import { contentOfPage, type WalkedPage } from "./pdf/walked-pages.ts";

/** How the names of all annotations of a marked copy begin. ISO 32000-1:2008 table 164: NM. */
export const markPrefix = "burin-mark";
/**
 * How the name of the link that covers a page of our list begins. Then follows the digest of that page (`digestOf`).
 */
export const listPrefix = `${markPrefix} list `;

/** What a mark says when it is clicked: the numbers of its problems. The last page explains them. */
export function outlineWords(numbers: readonly number[]): string {
  return `Number ${numbers.join(", ")}: see the end.`;
}
/** What the link that covers a page of our list says. */
export const linkWords = "Back to the sheet";
const outlineSays = /^Number \d[\d, ]*: see the end\.$/;
const numberSays = /^\d[\d, ]*$/;

/** What the bar at the upper edge of a page can say. */
export const notices = {
  fail: "Correct the numbered fields, save, and send again. What is wrong: at the end.",
  person: "One of us is looking at the numbered fields. Why: at the end.",
  confirm: "Confirm the numbered fields, or correct them and send again. Why: at the end.",
  unplaced: "What is to be done with this sheet: see the end.",
} as const;

/** Operators that draw numbers or words in a bar with round ends. */
const barDrawing = "J G w m l S RG w m l S BT g Tf Td Tj ET";

/** Bytes that a page of our list has at most. */
const mostBytes = 200_000;

/**
 * Whether an annotation is a mark of our own, in a marked copy that somebody sent back: an outline, or the number
 * beside it. Its name proves nothing. It is ours if it draws what ours draw and says what ours say, and no more.
 */
export function isOurMark(annotation: PDFDict): boolean {
  return markIn(annotation) !== undefined;
}

/** A mark of ours; undefined for what is none. */
function markIn(annotation: PDFDict): "outline" | "number" | "notice" | undefined {
  if (!textOf(entryOf(annotation, "NM")).startsWith(markPrefix)) return undefined;
  const look = lookOf(annotation);
  if (look === undefined || saysMore(annotation)) return undefined;
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
 * Entries that may say or run something in an annotation and that ours do not have. ISO 32000-1:2008 tables 164, 170,
 * 173, 188
 */
const foreign = ["RC", "T", "Subj", "A", "AA", "PA", "OC", "IRT"];

/** Whether an annotation has something that ours do not have. The window that a viewer has given it counts too. */
function saysMore(annotation: PDFDict): boolean {
  const popup = entryOf(annotation, "Popup");
  return (
    foreign.some((key) => entryOf(annotation, key) !== undefined) ||
    (popup instanceof PDFDict &&
      ["Contents", "AP", ...foreign].some((key) => entryOf(popup, key) !== undefined))
  );
}

/**
 * Which annotations of a page are marks of ours, by their places in its list. A number must stand at an outline: alone
 * it may cover the beginning of a legend. A notice must cover no field.
 */
export function ourMarksOn(page: PDFDict): number[] {
  const all = listOf(entryOf(page, "Annots"));
  const marks = all.map((one) => (one instanceof PDFDict ? markIn(one) : undefined));
  if (marks.every((mark) => mark === undefined)) return [];
  const boxes = all.map((one) => (one instanceof PDFDict ? rectangleOf(entryOf(one, "Rect")) : undefined));
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
        ? outlines.some((one) => one !== undefined && isAtCorner(box, one))
        : !widgets.some((one) => one !== undefined && overlap(one, box)));
    return isPlaced ? [i] : [];
  });
}

/** A number is so many points from the corner of its outline at most. It may be more near the edge of the page. */
const reach = 20;

function isAtCorner([left, bottom, right, top]: Box, outline: Box): boolean {
  return [outline[0], outline[2]].some(
    (x) =>
      x >= left - reach &&
      x <= right + reach &&
      [outline[1], outline[3]].some((y) => y >= bottom - reach && y <= top + reach),
  );
}

/** Whether a page is one of the list at the end of a marked copy, and nobody has added to it. */
export function isOurList(page: WalkedPage): boolean {
  const [link, ...others] = dictsIn(page.dict, "Annots");
  if (link === undefined || others.length > 0) return false;
  const name = textOf(entryOf(link, "NM"));
  if (!name.startsWith(listPrefix) || entryOf(link, "Subtype") !== PDFName.of("Link")) return false;
  if (["AP", "BS"].some((key) => entryOf(link, key) !== undefined) || saysMore(link)) return false;
  // Lists of older programs say nothing.
  if (!["", linkWords].includes(textOf(entryOf(link, "Contents")))) return false;
  if (listOf(entryOf(link, "Border")).some((side) => !(side instanceof PDFNumber) || side.asNumber() !== 0))
    return false;
  if (page.resources === undefined || !hasOurFont(page.resources, ["Plain", "Bold"])) return false;
  const digest = safely(() => digestOf(page));
  return digest !== undefined && name === `${listPrefix}${digest}`;
}

/**
 * A digest of a page. It is the same as long as the page is as it was drawn, however a program has packed it since.
 * Throws for a page that is too large.
 */
export function digestOf(page: WalkedPage): string {
  const hash = createHash("sha256");
  for (const { name, operands } of operatorsIn(contentOfPage(page, mostBytes)))
    hash.update(JSON.stringify([name, ...operands.map(hundredth)]));
  return hash.digest("hex").slice(0, 32);
}

/** An annotation by the name that pdf.js gives it. Undefined if it is no object of its own. */
export function annotationAt(pdf: PDFDocument, id: string): PDFDict | undefined {
  const [, number, generation = 0] = /^(\d+)R(\d*)$/.exec(id) ?? [];
  if (number === undefined) return undefined;
  const annotation = pdf.context.lookup(PDFRef.of(Number(number), Number(generation)));
  return annotation instanceof PDFDict ? annotation : undefined;
}
