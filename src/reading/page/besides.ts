import { PDFArray, PDFDict, PDFName, PDFNumber, PDFRawStream } from "pdf-lib";
import type { Box, Difference } from "../facts.ts";
import { isOurList, ourMarksOn } from "../our-marks.ts";
import { areaOf, overlap } from "../pdf/boxes.ts";
import { dictsIn, entryOf, listOf, rectangleOf, textOf } from "../pdf/pdf-value.ts";
import type { WalkedPage } from "../pdf/walked-pages.ts";
import type { BlankForm } from "./blank-form.ts";
import type { ReadSheet } from "./compare-pages.ts";
import { annotationKey, fontsOn, isWidget } from "./held.ts";
import { type Held, inTheFile, runs } from "./in-the-file.ts";
import { drawsBeyond } from "./nesting.ts";
import { largest } from "./page-edges.ts";
import { patchesIn } from "./patches.ts";
import type { RenderedPdf } from "./pdfium.ts";
import { aroundAll, grown, type Picture, pngOf, wholeOf } from "./picture.ts";
import { extrasOf, lineOf, nameOf } from "./widget-extras.ts";

/** So many annotations are told one by one. */
const mostTold = 8;
/** Further pages that are looked at. One word says how many more there are. */
const mostFurther = 3;
/** Pixels of a picture: of a whole page, and of a part. */
const mostOfPage = 90_000;
const mostPixels = 40_000;

/** What a file has besides the form and its fields: annotations, further pages, files, layers, programs. */
export function besides(
  pdf: RenderedPdf,
  sheet: ReadSheet,
  form: BlankForm,
  pages: readonly WalkedPage[],
  own: ReadonlySet<number>,
): Difference[] {
  const values = new Map(sheet.facts.fields.map((field) => [field.name, field.values]));
  const lines = [...values.values()].flat().flatMap((value) => value.split("\n"));
  const further = Array.from({ length: pdf.pageCount }, (_, i) => i + 1).filter(
    (page) => !own.has(page) && !isList(pages[page - 1]),
  );
  return [
    ...[...own].flatMap((page) => {
      const walked = pages[page - 1];
      return walked === undefined ? [] : unlike(form, fontsOn(walked, page));
    }),
    ...[...own].flatMap((page) => annotationsOn(pdf, page, pages[page - 1], sheet, form, values)),
    ...further.slice(0, mostFurther).flatMap((page) => furtherPage(pdf, page, pages[page - 1])),
    ...(further.length > mostFurther ? [{ what: "page", page: further[mostFurther] ?? 0 } as const] : []),
    // Pages that one reader finds and the other does not.
    ...(pages.length > pdf.pageCount ? [{ what: "page", page: pdf.pageCount + 1 } as const] : []),
    ...unlike(form, inTheFile(sheet.walked, pages, new Set(lines.map((line) => line.trim())))),
  ];
}

/** What the blank form does not have, each once. */
function unlike({ held }: BlankForm, found: readonly Held[]): Difference[] {
  const more = found.filter(({ key }) => key === undefined || !held.keys.has(key));
  return [...new Map(more.map(({ difference }) => [JSON.stringify(difference), difference])).values()];
}

function isList(page: WalkedPage | undefined): boolean {
  return page !== undefined && isOurList(page);
}

/** ISO 32000-1:2008 table 165: hidden, not shown on the screen. */
const hiddenFlags = (1 << 1) | (1 << 5);

/** Annotations that the blank form does not have. Even a hidden one may say something. */
function annotationsOn(
  pdf: RenderedPdf,
  page: number,
  walked: WalkedPage | undefined,
  sheet: ReadSheet,
  form: BlankForm,
  values: ReadonlyMap<string, readonly string[]>,
): Difference[] {
  if (walked === undefined) return [];
  const ours = new Set(ourMarksOn(walked.dict));
  const count = new Map<string, number>();
  const all = listOf(entryOf(walked.dict, "Annots"));
  const strangers = all.flatMap((annotation, i): Difference[] => {
    // No annotation is a stream, but some viewers draw one that is.
    if (annotation instanceof PDFRawStream) return [{ what: "laid", page }];
    if (!(annotation instanceof PDFDict) || ours.has(i)) return [];
    const box = boxOf(annotation);
    if (!isWidget(annotation)) {
      const difference: Difference = { what: "laid", page, ...box, ...saying(contentsOf(annotation)) };
      return isSilent(annotation, all) ? [] : unlike(form, [{ difference, key: annotationKey(annotation) }]);
    }
    const field = nameOf(annotation);
    const nth = (count.get(field) ?? 0) + 1;
    count.set(field, nth);
    if (nth <= (form.held.widgets.get(field) ?? 0))
      return unlike(form, extrasOf(annotation, field, values.get(field) ?? [], sheet.walked)).map((one) => ({
        ...one,
        page,
        ...box,
      }));
    if (runs(annotation, "A") || lineOf(annotation).some((one) => runs(one, "AA")))
      return [{ what: "program", page, field, ...box }];
    const flags = entryOf(annotation, "F");
    const hidden = flags instanceof PDFNumber && (flags.asNumber() & hiddenFlags) !== 0;
    const text = valueOf(annotation, sheet);
    // A signature that does not show is the sender's own, and says nothing of the order.
    if (text === "" && (hidden || areaOf(box.box) === 0)) return [];
    return [{ what: "laid", page, ...box, ...saying(text) }];
  });
  if (strangers.length === 0) return [];
  const told = strangers.slice(0, mostTold);
  const size = pdf.sizeOf(page);
  // Finer than a screen shows it, since somebody reads it.
  const [width, height] = size.map((side) => Math.round(Math.min(1.5 * side, 2000))) as [number, number];
  const picture = pdf.render({ page, width, height, layers: "all" });
  const view = sheet.pages[page - 1]?.view ?? [0, 0, width, height];
  return told.map(({ box = [0, 0, 0, 0], ...one }) => ({
    ...one,
    box: [box[0] - view[0], box[1] - view[1], box[2] - view[0], box[3] - view[1]],
    ...pictured(picture, box, view),
  }));
}

/** The part of a page around a box, as a picture for whoever looks. */
function pictured(picture: Picture, box: Box | undefined, view: Box): { readonly picture?: Uint8Array } {
  if (box === undefined || !overlap(box, view)) return {};
  const [left, bottom, right, top] = box;
  const [sx, sy] = [picture.width / (view[2] - view[0]), picture.height / (view[3] - view[1])];
  const area = {
    left: Math.round((left - view[0]) * sx) - 20,
    right: Math.round((right - view[0]) * sx) + 20,
    top: Math.round((view[3] - top) * sy) - 20,
    bottom: Math.round((view[3] - bottom) * sy) + 20,
  };
  return { picture: pngOf(picture, area, mostPixels) };
}

function saying(text: string): { readonly text?: string } {
  return text === "" ? {} : { text: text.slice(0, 200) };
}

function boxOf(annotation: PDFDict): { readonly box: Box } {
  return { box: rectangleOf(entryOf(annotation, "Rect")) ?? [0, 0, 0, 0] };
}

/**
 * What an annotation says, plain or formatted. The window of a comment says what the comment says. ISO 32000-1:2008
 * tables 164, 170 and 183
 */
function contentsOf(annotation: PDFDict): string {
  const comment = entryOf(annotation, "Subtype") === PDFName.of("Popup") && entryOf(annotation, "Parent");
  return commentOf(comment instanceof PDFDict ? comment : annotation);
}

function commentOf(annotation: PDFDict): string {
  const plain = textOf(entryOf(annotation, "Contents")).trim();
  return plain !== ""
    ? plain
    : textOf(entryOf(annotation, "RC"))
        .replaceAll(/<[^>]*>/g, " ")
        .trim();
}

/**
 * Whether an annotation says nothing: a link without a border, or the window of a comment that is told by itself.
 * `all` are on the page.
 */
function isSilent(annotation: PDFDict, all: readonly unknown[]): boolean {
  if (commentOf(annotation) !== "" || entryOf(annotation, "AP") !== undefined) return false;
  const subtype = entryOf(annotation, "Subtype");
  const comment = entryOf(annotation, "Parent");
  if (subtype === PDFName.of("Popup")) return !(comment instanceof PDFDict) || all.includes(comment);
  if (subtype !== PDFName.of("Link") || runs(annotation, "A")) return false;
  const border = entryOf(annotation, "Border");
  const style = entryOf(annotation, "BS");
  const width =
    style instanceof PDFDict
      ? entryOf(style, "W")
      : border instanceof PDFArray
        ? border.lookup(2)
        : undefined;
  return width instanceof PDFNumber && width.asNumber() === 0;
}

/** The value of a field that the form does not have, or its name. */
function valueOf(widget: PDFDict, { facts }: ReadSheet): string {
  const name = nameOf(widget);
  const read = facts.fields.find((field) => field.name === name)?.values.join(", ");
  const look = entryOf(widget, "MK");
  return (
    read ||
    textOf(entryOf(widget, "V")) ||
    (look instanceof PDFDict ? textOf(entryOf(look, "CA")) : "")
  ).trim();
}

/** A page that the form does not have, unless nothing is on it. */
function furtherPage(pdf: RenderedPdf, page: number, walked: WalkedPage | undefined): Difference[] {
  const [across, up] = pdf.sizeOf(page);
  const isBeyond = Math.max(across, up) > largest || (walked !== undefined && drawsBeyond(walked));
  const [width, height] = [across, up].map((side) => Math.max(1, Math.round(Math.min(side, largest)))) as [
    number,
    number,
  ];
  const picture = pdf.render({ page, width, height, layers: "all" });
  const white: Picture = { width, height, pixels: new Int32Array(width * height).fill(-1) };
  const annotations =
    walked === undefined ? [] : dictsIn(walked.dict, "Annots").filter((one, _, all) => !isSilent(one, all));
  const patches = patchesIn(picture, white, []);
  if (annotations.length === 0 && patches.length === 0 && !isBeyond) return [];
  const inked = patches.length === 0 ? wholeOf(picture) : grown(aroundAll(patches), 20);
  const text = annotations
    .map(contentsOf)
    .filter((one) => one !== "")
    .join("; ");
  return [{ what: "page", page, ...saying(text), picture: pngOf(picture, inked, mostOfPage) }];
}
