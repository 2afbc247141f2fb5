import type { PDFDocument } from "pdf-lib";
import type { Box, Difference, PdfFacts, WidgetFacts } from "../facts.ts";
import { ourMarksOn } from "../our-marks.ts";
import { areaOf, overlap } from "../pdf/boxes.ts";
import type { AnnotatedPage } from "../pdf/pdfjs-annotations.ts";
import { firstPages, type WalkedPage } from "../pdf/walked-pages.ts";
import { besides } from "./besides.ts";
import { areaOn, type BlankForm, type BlankPage, type BlankWidget, boxOn, pixelsOf } from "./blank-form.ts";
import { differingFields } from "./compare-fields.ts";
import { type Glyphs, helveticaGlyphs } from "./glyphs.ts";
import { patchesIn, toldApart } from "./patches.ts";
import { type RenderedPdf, withRendered } from "./pdfium.ts";
import { type Area, aroundAll, grown, isEmpty, type Picture, pngOf, shared, wholeOf } from "./picture.ts";

/** A sheet as the readers found it. */
export interface ReadSheet {
  readonly facts: Pick<PdfFacts, "fields" | "widgets">;
  readonly pages: readonly AnnotatedPage[];
  readonly pageCount: number;
  readonly walked: PDFDocument;
  /** Its viewer draws the fields anew. */
  readonly redrawn: boolean;
}

/** Differences that are told of one sheet: whoever sees so many looks at all of it. */
const mostTold = 8;
/** Pages that are looked at; a sheet has one or two. */
const mostPages = 20;
/** The part of a page's fields that may lie elsewhere before it is another page. */
const mostMoved = 0.3;
/** Pixels of the picture of a difference: of a part of the page, and of all of it. */
const mostPixels = 40_000;
const mostOfPage = 90_000;

/**
 * Compares a sheet's pages, as they are seen, with its edition's blank form and with what the fields hold. What
 * is on neither, or on one alone, is a difference. Undefined where PDFium cannot open the file. Throws for pages
 * beyond its means.
 */
export async function comparePages(
  bytes: Uint8Array,
  sheet: ReadSheet,
  form: BlankForm,
): Promise<Difference[] | undefined> {
  const glyphs = await helveticaGlyphs();
  const walkedPages = firstPages(sheet.walked, mostPages);
  return withRendered(bytes, (pdf) => {
    const found: Difference[] = [];
    const seen = new Set<number>();
    for (const [i, blank] of form.entries()) {
      const page = pageOf(blank, i, sheet);
      if (seen.has(page) || page > pdf.pageCount || page > mostPages) {
        found.push({ what: "less", page });
        continue;
      }
      seen.add(page);
      found.push(...onPage(pdf, page, blank, sheet, walkedPages[page - 1], glyphs));
    }
    found.push(...besides(pdf, sheet, form, walkedPages, seen));
    return found.slice(0, mostTold);
  });
}

/** The page of a sheet that a page of its blank became: the one on which most of its fields are. */
function pageOf({ widgets }: BlankPage, index: number, { facts }: ReadSheet): number {
  const names = new Set(widgets.map(({ field }) => field));
  const count = new Map<number, number>();
  for (const { field, page } of facts.widgets)
    if (names.has(field)) count.set(page, (count.get(page) ?? 0) + 1);
  const [most] = [...count].toSorted(([, a], [, b]) => b - a);
  return most?.[0] ?? index + 1;
}

function onPage(
  pdf: RenderedPdf,
  page: number,
  blank: BlankPage,
  sheet: ReadSheet,
  walked: WalkedPage | undefined,
  glyphs: Glyphs,
): Difference[] {
  const view = sheet.pages[page - 1]?.view ?? blank.box;
  const own = sheet.facts.widgets
    .filter((widget) => widget.page === page)
    .map((widget) => ({ ...widget, box: shifted(widget.box, view[0], view[1]) }));
  const [x, y] = shiftOf(blank.widgets, own);
  const moved = movedFields(blank.widgets, own, [x, y]);
  if (moved.length > mostMoved * own.length) return [{ what: "other", page }];
  const part = shifted(blank.box, x, y);
  const without = walked === undefined ? [] : ourMarksOn(walked.dict);
  const size = pixelsOf(blank.box);
  // From the corner of what the page shows, as the readers tell places.
  const seenAs = (box: Box): Box => shifted(box, x - view[0], y - view[1]);
  const picture = pdf.render({ page, part, without, ...size, over: sheetPixels(size) });
  const { empty } = sheet.redrawn ? blank.redrawn : blank.looks;
  const frames = blank.widgets.map(({ box }) => areaOn(blank, box));
  // With what others laid over the page, and our marks, as a person sees it.
  let whole: Picture | undefined;
  const shown = (area: Area): Uint8Array => {
    whole ??= pdf.render({ page, part, ...size, layers: "all" });
    return pngOf(whole, grown(area, 24), area.right - area.left > whole.width / 2 ? mostOfPage : mostPixels);
  };
  const fields = differingFields(picture, blank, { ...sheet.facts, redrawn: sheet.redrawn }, glyphs);
  const patches = patchesIn(picture, empty, frames);
  const under = (patch: Area): BlankWidget[] =>
    fields.filter(({ box }) => !isEmpty(shared(grown(areaOn(blank, box), near), patch)));
  // A stroke through a field or two is told of those; what crosses many, once.
  const isWide = fields.length > mostUnder && patches.some((patch) => under(patch).length > 0);
  const inFields = (isWide ? [] : fields).map(
    ({ box, field }): Difference => ({
      what: "field",
      page,
      box: seenAs(box),
      field,
      picture: shown(areaOn(blank, box)),
    }),
  );
  const apart = patches.filter((patch) => under(patch).length === 0);
  const outside = (isWide ? [aroundAll(patches)] : toldApart(apart)).map(
    (area): Difference => ({ what: "more", page, box: seenAs(boxOn(blank, area)), picture: shown(area) }),
  );
  return [
    ...oncePerField(inFields),
    ...outside,
    ...moved.map(
      (widget): Difference => ({
        what: "moved",
        page,
        field: widget.field,
        box: shifted(widget.box, -view[0], -view[1]),
      }),
    ),
    ...beyond(pdf, page, view, part, picture, empty),
  ];
}

/** Pixels from a field within which a stroke is one through it, and how many fields are told of one by one. */
const near = 12;
const mostUnder = 3;

let kept = new Int32Array(0);

/** Room for the picture of a sheet's page; a process compares one at a time. */
function sheetPixels({ width, height }: Pick<Picture, "width" | "height">): Int32Array {
  if (kept.length !== width * height) kept = new Int32Array(width * height);
  return kept;
}

/** Round buttons of one field that show another choice are one difference. */
function oncePerField(differences: readonly Difference[]): Difference[] {
  return [...new Map(differences.toReversed().map((one) => [one.field, one])).values()].toReversed();
}

function shifted([left, bottom, right, top]: Box, x: number, y: number): Box {
  return [left + x, bottom + y, right + x, top + y];
}

/** How far the fields of a page lie from where the blank form has them: the middle of all. */
function shiftOf(
  widgets: readonly BlankWidget[],
  own: readonly WidgetFacts[],
): readonly [x: number, y: number] {
  const byField = Map.groupBy(own, ({ field }) => field);
  const shifts = widgets.flatMap(({ field, box }) => {
    const [one, ...more] = byField.get(field) ?? [];
    return one === undefined || more.length > 0 ? [] : [[one.box[0] - box[0], one.box[1] - box[1]] as const];
  });
  const middle = (all: readonly number[]): number =>
    Math.round((all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0) * 2) / 2;
  return [middle(shifts.map(([x]) => x)), middle(shifts.map(([, y]) => y))];
}

/** Points by which a program may move a field in saving it. */
const slack = 1.5;

/** Fields that show, and lie elsewhere than the blank form has one of that name. */
function movedFields(
  widgets: readonly BlankWidget[],
  own: readonly WidgetFacts[],
  [x, y]: readonly [number, number],
): WidgetFacts[] {
  const byField = Map.groupBy(widgets, ({ field }) => field);
  return own.filter(({ field, box, hidden }) => {
    const places = byField.get(field);
    if (places === undefined || hidden) return false;
    const at = shifted(box, -x, -y);
    return !places.some((place) => place.box.every((side, i) => Math.abs(side - (at[i] ?? 0)) <= slack));
  });
}

/** What is cut off of the form, and what a page shows beyond it. */
function beyond(
  pdf: RenderedPdf,
  page: number,
  view: Box,
  part: Box,
  picture: Picture,
  empty: Picture,
): Difference[] {
  const off = view.map((side, i) => side - (part[i] ?? 0)) as [number, number, number, number];
  if (off.every((side) => Math.abs(side) <= slack)) return [];
  const found: Difference[] = [];
  const scale = picture.width / (part[2] - part[0]);
  const kept: Area = {
    left: off[0] * scale,
    right: picture.width + off[2] * scale,
    top: -off[3] * scale,
    bottom: picture.height - off[1] * scale,
  };
  if (hasPrint(empty, kept)) found.push({ what: "less", page });
  if (off[0] < -slack || off[1] < -slack || off[2] > slack || off[3] > slack) {
    // At one pixel a point, and no more of it than a large sheet of paper has.
    const [width, height] = [Math.min(2000, view[2] - view[0]), Math.min(2000, view[3] - view[1])].map(
      Math.round,
    ) as [number, number];
    const all = pdf.render({ page, part: view, width, height });
    const [sx, sy] = [width / (view[2] - view[0]), height / (view[3] - view[1])];
    const inner: Area = {
      left: Math.floor((part[0] - view[0]) * sx) - 1,
      right: Math.ceil((part[2] - view[0]) * sx) + 1,
      top: Math.floor((view[3] - part[3]) * sy) - 1,
      bottom: Math.ceil((view[3] - part[1]) * sy) + 1,
    };
    const white: Picture = { width, height, pixels: new Int32Array(width * height).fill(-1) };
    const patches = patchesIn(all, white, [inner]);
    if (patches.length > 0) found.push({ what: "more", page, picture: pngOf(all, wholeOf(all), mostPixels) });
  }
  return found;
}

/** Whether the blank form has anything outside an area of its picture. */
function hasPrint({ width, height, pixels }: Picture, { left, top, right, bottom }: Area): boolean {
  const paper = 0xffffff;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (x >= left && x < right && y >= top && y < bottom) continue;
      if (((pixels[y * width + x] ?? paper) & paper) !== paper) return true;
    }
  return false;
}

/** Whether a box lies over a field. */
export function liesOver(box: Box, { box: other }: Pick<BlankWidget, "box">): boolean {
  return areaOf(box) > 0 && overlap(box, other);
}
