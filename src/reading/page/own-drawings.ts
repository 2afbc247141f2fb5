import { PDFBool, type PDFDocument, PDFName } from "pdf-lib";
import type { Difference } from "../facts.ts";
import { ourMarksOn } from "../our-marks.ts";
import type { WalkedPage } from "../pdf/walked-pages.ts";
import { formOf } from "../pdf/walked-pdf.ts";
import { areaOn, type BlankForm, pixelsOf } from "./blank-form.ts";
import { differingFields } from "./compare-fields.ts";
import type { ReadSheet } from "./compare-pages.ts";
import type { Glyphs } from "./glyphs.ts";
import { inkOf } from "./ink.ts";
import { withRendered } from "./pdfium.ts";
import { grown, pngOf } from "./picture.ts";
import { isEmpty } from "./shows.ts";
import { pageOf, partOn, shifted } from "./widget-places.ts";

/** Pixels of the picture of a field. */
const mostPixels = 40_000;

/**
 * Fields whose own drawings show other words than they hold. The file tells viewers to draw them anew, but not all
 * viewers do. A drawing that is missing, or as empty as the blank form's, says nothing.
 */
export async function otherDrawings(
  sheet: ReadSheet,
  form: BlankForm,
  walkedPages: readonly WalkedPage[],
  glyphs: Glyphs,
): Promise<Difference[] | undefined> {
  return withRendered(await asDrawn(sheet.walked), (pdf) =>
    form.pages.flatMap((blank, i) => {
      const page = pageOf(blank, i, sheet.facts);
      if (page > pdf.pageCount) return [];
      const { part, view, x, y } = partOn(page, blank, sheet);
      const walked = walkedPages[page - 1];
      const without = walked === undefined ? [] : ourMarksOn(walked.dict);
      const picture = pdf.render({ page, part, without, ...pixelsOf(blank.box) });
      return differingFields(picture, blank, { ...sheet.facts, redrawn: false }, glyphs).flatMap(
        ({ kind, field, box }): Difference[] => {
          const area = areaOn(blank, box);
          if (kind === "tick" || isEmpty(inkOf(picture, blank.looks.empty, area))) return [];
          return [
            {
              what: "field",
              page,
              field,
              box: shifted(box, x - view[0], y - view[1]),
              picture: pngOf(picture, grown(area, 24), mostPixels),
            },
          ];
        },
      );
    }),
  );
}

/** The file as it is seen in viewers that use the drawings in it. */
async function asDrawn(pdf: PDFDocument): Promise<Uint8Array> {
  const form = formOf(pdf.catalog);
  form?.delete(PDFName.of("NeedAppearances"));
  const bytes = await pdf.save({
    updateFieldAppearances: false,
    useObjectStreams: false,
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
  form?.set(PDFName.of("NeedAppearances"), PDFBool.True);
  return bytes;
}
