import type { PDFDocument } from "pdf-lib";
import type { Box, Difference, PdfFacts } from "../facts.ts";
import { ourMarksOn } from "../our-marks.ts";
import type { AnnotatedPage } from "../pdf/pdfjs-annotations.ts";
import { firstPages, type WalkedPage } from "../pdf/walked-pages.ts";
import { besides } from "./besides.ts";
import { areaOn, type BlankForm, type BlankPage, type BlankWidget, boxOn, pixelsOf } from "./blank-form.ts";
import { differingFields } from "./compare-fields.ts";
import { contentKey } from "./content-key.ts";
import { type Glyphs, helveticaGlyphs } from "./glyphs.ts";
import { drawsBeyond } from "./nesting.ts";
import { otherDrawings } from "./own-drawings.ts";
import { beyond } from "./page-edges.ts";
import { patchesIn, toldApart } from "./patches.ts";
import { type RenderedPdf, withRendered } from "./pdfium.ts";
import { type Area, aroundAll, grown, isEmpty, type Picture, pngOf, shared } from "./picture.ts";
import { movedFields, pageOf, partOn, shifted } from "./widget-places.ts";

/** A sheet as the readers found it. */
export interface ReadSheet {
  readonly facts: Pick<PdfFacts, "fields" | "widgets">;
  readonly pages: readonly AnnotatedPage[];
  readonly pageCount: number;
  readonly walked: PDFDocument;
  /** Its viewer draws the fields anew. */
  readonly redrawn: boolean;
}

/** So many differences are told of one sheet. Whoever sees so many looks at all of it. */
const mostTold = 8;
/** Pages that are looked at. A sheet has one or two. */
const mostPages = 20;
/** If a larger part of a page's fields lies elsewhere, it is another page. */
const mostMoved = 0.3;
/** Pixels of the picture of a difference: on a part of the page, and on all of it. */
const mostPixels = 40_000;
const mostOfPage = 90_000;

/**
 * Compares a sheet's pages, as they are seen, with its edition's blank form and with what the fields hold. What a
 * page shows and neither has is a difference, and so is what they have and the page does not show. Undefined if
 * PDFium cannot open the file. Throws for pages that are too much for it.
 */
export async function comparePages(
  bytes: Uint8Array,
  sheet: ReadSheet,
  form: BlankForm,
): Promise<Difference[] | undefined> {
  const glyphs = await helveticaGlyphs();
  const walkedPages = firstPages(sheet.walked, mostPages);
  const differences = await withRendered(bytes, (pdf) => {
    const found: Difference[] = [];
    const seen = new Set<number>();
    for (const [i, blank] of form.pages.entries()) {
      const page = pageOf(blank, i, sheet.facts);
      if (seen.has(page) || page > pdf.pageCount || page > mostPages) {
        found.push({ what: "less", page });
        continue;
      }
      seen.add(page);
      found.push(...onPage(pdf, page, blank, sheet, walkedPages[page - 1], glyphs));
    }
    found.push(...besides(pdf, sheet, form, walkedPages, seen));
    return found;
  });
  const drawn = differences && sheet.redrawn ? await otherDrawings(sheet, form, walkedPages, glyphs) : [];
  return differences && drawn && oncePerField([...differences, ...drawn]).slice(0, mostTold);
}

function onPage(
  pdf: RenderedPdf,
  page: number,
  blank: BlankPage,
  sheet: ReadSheet,
  walked: WalkedPage | undefined,
  glyphs: Glyphs,
): Difference[] {
  const { view, own, part, x, y } = partOn(page, blank, sheet);
  const moved = movedFields(blank.widgets, own, [x, y]);
  if (moved.length > mostMoved * own.length) return [{ what: "other", page }];
  const without = walked === undefined ? [] : ourMarksOn(walked.dict);
  const size = pixelsOf(blank.box);
  // Measured from the corner of what the page shows, as the readers tell places.
  const seenAs = (box: Box): Box => shifted(box, x - view[0], y - view[1]);
  // Content with the blank's key need not be drawn.
  const isSame = x === 0 && y === 0 && walked !== undefined && contentKey(walked) === (blank.key ?? "");
  if (walked !== undefined && drawsBeyond(walked, isSame))
    throw new Error("drawings are beyond PDFium's means");
  const known = isSame ? { known: { picture: blank.looks.empty, objects: blank.objects } } : {};
  const picture = pdf.render({ page, part, without, ...size, over: sheetPixels(size), ...known });
  const { empty } = sheet.redrawn ? blank.redrawn : blank.looks;
  const frames = blank.widgets.map(({ box }) => areaOn(blank, box));
  // Drawn with what others laid over the page and with our marks, as a person sees it.
  let whole: Picture | undefined;
  const shown = (area: Area): Uint8Array => {
    whole ??= pdf.render({ page, part, ...size, layers: "all" });
    return pngOf(whole, grown(area, 24), area.right - area.left > whole.width / 2 ? mostOfPage : mostPixels);
  };
  const fields = differingFields(picture, blank, { ...sheet.facts, redrawn: sheet.redrawn }, glyphs);
  const patches = patchesIn(picture, empty, frames);
  const under = (patch: Area): BlankWidget[] =>
    fields.filter(({ box }) => !isEmpty(shared(grown(areaOn(blank, box), near), patch)));
  // A stroke through one field or two is told at those. One that crosses many is told once.
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
    ...inFields,
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

/** A stroke within so many pixels of a field goes through it. So many fields are told one by one. */
const near = 12;
const mostUnder = 3;

let kept = new Int32Array(0);

/** Room for the picture of a sheet's page. A process compares one page at a time. */
function sheetPixels({ width, height }: Pick<Picture, "width" | "height">): Int32Array {
  if (kept.length !== width * height) kept = new Int32Array(width * height);
  return kept;
}

/** Tells a field that shows something else once, even if several round buttons or two drawings show it. */
function oncePerField(differences: readonly Difference[]): Difference[] {
  const told = new Set<string>();
  return differences.filter(({ what, field = "" }) => {
    if (what !== "field") return true;
    const isNew = !told.has(field);
    told.add(field);
    return isNew;
  });
}
