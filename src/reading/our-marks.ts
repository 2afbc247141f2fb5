import { PDFDict, type PDFDocument, PDFName, PDFRef } from "pdf-lib";
import { dictsIn, entryOf, textOf } from "./pdf/pdf-value.ts";

/** How the names of all annotations begin that a marked copy has. ISO 32000-1:2008 table 164: NM. */
export const markPrefix = "burin-mark";

/** What the page of a marked copy is known by that lists the problems. */
export const listName = `${markPrefix} list`;

/** Whether a page is one that a marked copy of ours has added. */
export function isOurPage(page: PDFDict): boolean {
  return dictsIn(page, "Annots").some((one) => textOf(entryOf(one, "NM")) === listName);
}

/**
 * Whether an annotation is a mark of a marked copy of ours that somebody sent back: an outline, or the number
 * beside it. A number that was written over is none any more, since somebody meant it to be read.
 */
export function isOurMark(annotation: PDFDict): boolean {
  if (!textOf(entryOf(annotation, "NM")).startsWith(markPrefix)) return false;
  const subtype = entryOf(annotation, "Subtype");
  if (subtype === PDFName.of("FreeText")) return /^[\d, ]*$/.test(textOf(entryOf(annotation, "Contents")));
  return subtype === PDFName.of("Square");
}

/** An annotation by the name that pdf.js gives it; undefined where it is no object of its own. */
export function annotationAt(pdf: PDFDocument, id: string): PDFDict | undefined {
  const [, number, generation = 0] = /^(\d+)R(\d*)$/.exec(id) ?? [];
  if (number === undefined) return undefined;
  const annotation = pdf.context.lookup(PDFRef.of(Number(number), Number(generation)));
  return annotation instanceof PDFDict ? annotation : undefined;
}
