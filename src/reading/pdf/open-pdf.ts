import type { PDFDocument } from "pdf-lib";
import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Box, Difference, FileFacts, PageFacts, PageMark, PdfFacts, WidgetFacts } from "../facts.ts";
import { type FormField, isFillable } from "../form.ts";
import { annotationAt, isOurList, isOurMark } from "../our-marks.ts";
import { comparePages } from "../page/compare-pages.ts";
import { explainedBy } from "../page/explained.ts";
import { blankOf, type KnownForms, printFor } from "../page/known-forms.ts";
import { printOf } from "../page/print.ts";
import { marksOf, widgetsOf } from "./annotation-facts.ts";
import { type Attached, attachedTo, leftIn, takenOut } from "./attached.ts";
import { moved } from "./boxes.ts";
import { compareForms } from "./compare.ts";
import { readPageText } from "./page-text.ts";
import { isDrawn, paintedOn } from "./painted.ts";
import { wantsPassword, withPdf } from "./pdf.ts";
import { type AnnotatedPage, readAnnotations } from "./pdfjs-annotations.ts";
import { readFormByPdfjs } from "./pdfjs-form.ts";
import { hasSameObjects } from "./same-objects.ts";
import { shownChoice } from "./shown-choice.ts";
import { textWithin } from "./text-marks.ts";
import { readFormByWalking } from "./walked-form.ts";
import { firstPages } from "./walked-pages.ts";
import { openForWalking, type Traits, traitsOf } from "./walked-pdf.ts";
import { filesIn, isWhole } from "./whole.ts";

/** Pages that are looked at. A sheet has one or two, and others may come with it. */
const mostPages = { ofForm: 20, ofOthers: 4 };

/** A page with at least so many characters is read and not looked at. */
const leastText = 30;

/** What pdf.js finds, and what our own walk finds. */
interface Drawn {
  readonly fields: readonly FormField[];
  readonly pages: readonly AnnotatedPage[];
  readonly pageCount: number;
}
interface Walked {
  readonly fields: readonly FormField[];
  readonly traits: Traits;
  readonly attached: readonly Attached[];
  readonly pdf: PDFDocument;
}

/**
 * Bytes of a PDF → what is in it. Fields come first. `early` gets them before the pages are looked at, since a
 * hostile file makes that take longer than it may. A form is compared with its blank if that is among the known
 * `forms`. Never throws, whatever the bytes.
 */
export async function openPdf(
  bytes: Uint8Array,
  early?: (facts: PdfFacts) => Promise<void>,
  forms?: KnownForms,
): Promise<FileFacts> {
  const walked = await walk(bytes);
  let facts: PdfFacts | undefined;
  const explained = walked && forms && (await explain(bytes, walked, forms));
  try {
    return await withPdf(bytes, async (pdf) => {
      const known = walked && explained && (await plainSheet(bytes, pdf, walked, explained));
      if (known !== undefined) return known;
      const pages = await readAnnotations(pdf);
      const drawn = { fields: await readFormByPdfjs(pdf, pages), pages, pageCount: pdf.numPages };
      // The file counts as damaged until it is known to be whole. Files inside count as left there until they are
      // out.
      if (walked !== undefined)
        await early?.({ ...factsOf(drawn, walked, false), ...attachedAs(leftIn(walked.attached)) });
      const whole = isWhole(bytes);
      if (walked === undefined && !whole) return { kind: "damaged-pdf" };
      const found = factsOf(drawn, walked, whole);
      const attached = attachedAs(takenOut(walked?.attached ?? []));
      const together = filesIn(bytes);
      facts = { ...found, ...attached, ...(together === 1 ? {} : { together }) };
      await early?.(facts);
      if (walked === undefined) return facts;
      const differences = forms && (await compare(bytes, facts, pages, walked, forms));
      // If nothing differs there is nothing to be read on the pages.
      if (differences?.length === 0) return { ...facts, differences, pages: pages.map(plainPage) };
      const read = await readPages(facts, pdf, pages, walked.pdf);
      return { ...facts, pages: read, ...(differences === undefined ? {} : { differences }) };
    });
  } catch (error) {
    // Only the pages are endless or broken here.
    if (facts !== undefined) return facts;
    // A reader's error tells the sender nothing but that the file must be saved again.
    if (wantsPassword(error)) return { kind: "locked-pdf" };
    const together = filesIn(bytes);
    // A single reading of half a file is worth nothing but that there are several.
    if (walked === undefined || (!isWhole(bytes) && together === 1)) return { kind: "damaged-pdf" };
    const found = factsOf(undefined, walked, together === 1);
    return {
      ...found,
      ...attachedAs(takenOut(walked.attached)),
      ...(together === 1 ? {} : { together }),
    };
  }
}

/** A sheet whose pages need not be looked at: where its fields are and what they show. */
interface Explained {
  readonly widgets: readonly WidgetFacts[];
  readonly views: readonly Box[];
}

/** Undefined unless a file says of its pages just what the blank of its form says, and draws its fields plainly. */
async function explain(
  bytes: Uint8Array,
  { pdf, fields, traits, attached }: Walked,
  forms: KnownForms,
): Promise<Explained | undefined> {
  if (traits.xfa || traits.portfolio || traits.redrawn || attached.length > 0) return undefined;
  const blank = await printFor(fields, forms);
  const print = blank && printOf(pdf);
  const widgets = print && explainedBy(print, fields, blank);
  return widgets && hasSameObjects(bytes, pdf) ? { widgets, views: print.views } : undefined;
}

/**
 * What is in a sheet that is explained. The first reader is still asked for the fields, and for nothing else. Undefined
 * if it finds others.
 */
async function plainSheet(
  bytes: Uint8Array,
  pdf: PDFDocumentProxy,
  walked: Walked,
  { widgets, views }: Explained,
): Promise<PdfFacts | undefined> {
  if (pdf.numPages !== views.length || filesIn(bytes) !== 1) return undefined;
  const drawn = { fields: await readFormByPdfjs(pdf, []), pages: [], pageCount: pdf.numPages };
  // Its tables were read to their end, and its packed objects have their checksums.
  const facts = factsOf(drawn, walked, true);
  const isSure = !facts.recovered && facts.fields.every(({ unsure }) => unsure === undefined);
  return isSure
    ? { ...facts, widgets, differences: [], pages: views.map((view) => plainPage({ view })) }
    : undefined;
}

function attachedAs(attached: PdfFacts["attached"]): Pick<PdfFacts, "attached"> {
  return attached === undefined ? {} : { attached };
}

/** Where the pages differ from the blank of their form. Undefined if there is no blank. */
async function compare(
  bytes: Uint8Array,
  facts: PdfFacts,
  pages: readonly AnnotatedPage[],
  { pdf: walked, traits: { redrawn } }: Walked,
  forms: KnownForms,
): Promise<Difference[] | undefined> {
  const blank = await blankOf(facts.fields, forms);
  if (blank === undefined) return undefined;
  const sheet = { facts, pages, pageCount: facts.pageCount, walked, redrawn };
  const differences = await comparePages(bytes, sheet, blank);
  if (differences === undefined) throw new Error("PDFium cannot open the file");
  return differences;
}

/** A page with nothing on it but a form and its fields. */
function plainPage({ view: [left, bottom, right, top] }: Pick<AnnotatedPage, "view">): PageFacts {
  return { width: right - left, height: top - bottom, text: "", marks: [] };
}

async function walk(bytes: Uint8Array): Promise<Walked | undefined> {
  try {
    const pdf = await openForWalking(bytes);
    return { pdf, fields: readFormByWalking(pdf), traits: traitsOf(pdf), attached: attachedTo(pdf) };
  } catch {
    return undefined;
  }
}

/** What is known before the pages are looked at. Both readers tell it, or the one that could read the file. */
function factsOf(drawn: Drawn | undefined, walked: Walked | undefined, whole: boolean): PdfFacts {
  const { xfa, needsRendering, portfolio, redrawn } = walked?.traits ?? unknown;
  const fields =
    drawn && walked ? compareForms(drawn.fields, walked.fields) : (drawn?.fields ?? walked?.fields ?? []);
  const shown = walked && !redrawn ? (id: string) => shownChoice(walked.pdf, id) : undefined;
  return {
    kind: "pdf",
    fields,
    widgets: drawn?.pages.flatMap((page, i) => widgetsOf(page, i + 1, shown)) ?? [],
    pageCount: drawn?.pageCount ?? 0,
    // ISO 32000-1:2008 §12.7.8: an XFA form without NeedsRendering has an ordinary form beside it.
    dynamic: xfa && (needsRendering || fields.length === 0),
    portfolio,
    recovered: !whole || namesIn(drawn?.fields) !== namesIn(walked?.fields),
  };
}

/**
 * The names of the fields that a reader sees; "none" if it cannot read the file. A reader that skips a broken object
 * sees fewer.
 */
function namesIn(fields: readonly FormField[] | undefined): string {
  return fields === undefined
    ? "none"
    : JSON.stringify(
        fields
          .filter(isFillable)
          .map(({ name }) => name)
          .toSorted(),
      );
}

const unknown: Traits = { xfa: false, needsRendering: false, portfolio: false, redrawn: false };

/** What the first pages show. Throws where one of them is beyond all bounds. */
async function readPages(
  { fields, widgets }: PdfFacts,
  pdf: PDFDocumentProxy,
  annotated: readonly AnnotatedPage[],
  walked: PDFDocument,
): Promise<PageFacts[]> {
  const most = fields.some(isFillable) ? mostPages.ofForm : mostPages.ofOthers;
  const firsts = firstPages(walked, most);
  const painted = firsts.map(paintedOn);
  const pages: PageFacts[] = [];
  for (const [i, page] of annotated.slice(0, most).entries()) {
    const [left, bottom, right, top] = page.view;
    const annotations = page.annotations.filter(({ id }) => {
      const annotation = annotationAt(walked, id);
      return annotation === undefined || !isOurMark(annotation);
    });
    const frames = widgets.filter((widget) => widget.page === i + 1).map(({ box }) => box);
    const shift = (marks: readonly PageMark[]): PageMark[] =>
      marks.map((mark) => ({ ...mark, box: moved(mark.box, -left, -bottom) }));
    const texts = await textWithin(
      await pdf.getPage(i + 1),
      frames.map((frame) => moved(frame, left, bottom)),
    );
    const text = await readPageText(pdf, i + 1);
    const walkedPage = firsts[i];
    pages.push({
      width: right - left,
      height: top - bottom,
      text,
      ...(text.length < leastText && walkedPage !== undefined && isDrawn(walkedPage) ? { drawn: true } : {}),
      ...(walkedPage !== undefined && isOurList(walkedPage) ? { ours: true } : {}),
      marks: [...marksOf({ ...page, annotations }), ...shift(painted[i] ?? []), ...shift(texts)],
    });
  }
  return pages;
}
