import {
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFName,
  type PDFPageLeaf,
  type PDFRef,
  PDFString,
} from "pdf-lib";
import {
  digestOf,
  isOurList,
  isOurMark,
  linkWords,
  listPrefix,
  markPrefix,
  notices,
} from "../../reading/our-marks.ts";
import { entryOf } from "../../reading/pdf/pdf-value.ts";
import { firstPages, type WalkedPage } from "../../reading/pdf/walked-pages.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { fillInto, type SheetValues } from "../fill-sheet.ts";
import { gravestKind } from "../kinds.ts";
import { drawOn } from "../proof/pdf.ts";
import type { Drawing } from "../proof/shapes.ts";
import { addAnnotation, addTag, openStructure } from "../tagged/structure.ts";
import { type Marking, noticeMark, numberMark, outlineMark, startMarking } from "./annotation.ts";
import { framesOn } from "./frames.ts";
import { shownPage } from "./page.ts";
import { looks, type MarkedProblem } from "./problem.ts";
import { appendPage, removePage } from "./tree.ts";

/** Pages that are looked at; a sheet has one or two. */
const mostPages = 20;

/**
 * Marks a document that was opened for an incremental update, fills in `values`, and adds the pages of `list`. Returns
 * the whole file. Throws on a document that cannot be added to.
 */
export async function markInto(
  document: PDFDocument,
  sheet: Sheet,
  problems: readonly MarkedProblem[],
  list: readonly Drawing[],
  values: SheetValues = {},
): Promise<Uint8Array> {
  const { context } = document;
  const { originalBytes } = context.pdfFileDetails;
  const { snapshot } = context;
  // With a snapshot the library would search the whole document for every entry that is set, in saving too.
  delete context.snapshot;
  const [pages, lists] = pagesOf(document);
  const structure = openStructure(document, markPrefix);
  const tags = structure && {
    structure,
    above: addTag(structure, structure.top, "Sect", { name: markPrefix }),
  };
  const marking = startMarking(document, tags);
  const changed = [
    ...fillInto(document, values),
    ...markPages(marking, pages, sheet, problems),
    ...lists.flatMap(removePage),
    ...addList(marking, list, pages),
    ...(structure?.changes ?? []),
  ];
  if (snapshot === undefined || originalBytes === undefined)
    throw new Error("the document was not opened for an update");
  snapshot.markRefsForSave(changed.map((dict) => refOf(dict)));
  const added = await document.saveIncremental(snapshot, {
    // A program that reads a file without packed objects may not know them.
    useObjectStreams: context.pdfFileDetails.useObjectStreams,
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
  const whole = new Uint8Array(originalBytes.length + added.length);
  whole.set(originalBytes);
  whole.set(added, originalBytes.length);
  return whole;
}

/** The pages of the sender, and those that an earlier marking added. */
function pagesOf(document: PDFDocument): [own: PDFDict[], lists: PDFDict[]] {
  const [lists = [], own = []] = [isOurList, (page: WalkedPage) => !isOurList(page)].map((is) =>
    firstPages(document, mostPages).filter(is),
  );
  return [own.map(({ dict }) => dict), lists.map(({ dict }) => dict)];
}

/** Sets the marks of each page, and takes off what is left of earlier ones. Returns the pages that have changed. */
function markPages(
  marking: Marking,
  pages: readonly PDFDict[],
  sheet: Sheet,
  problems: readonly MarkedProblem[],
): PDFDict[] {
  const { document, tags } = marking;
  const frames = pages.map((page, i) => framesOn(page, i + 1, sheet, problems));
  const look = looks[gravestKind(problems)];
  const withFrames = frames.findIndex((some) => some.length > 0);
  const notice = withFrames < 0 ? notices.unplaced : look.notice;
  // The first page with an outline, or else the first page.
  const first = Math.max(0, withFrames);
  return pages.flatMap((page, i) => {
    const shown = shownPage(page);
    const here = frames[i] ?? [];
    const all = annotationsOf(page);
    const others = all.filter((one) => !isMark(document.context.lookup(one)));
    if (here.length === 0 && i !== first && others.length === all.length) return [];
    const marked = [
      ...here.map((frame) => outlineMark(marking, shown, frame)),
      ...others,
      ...here.map((frame) => numberMark(marking, shown, frame)),
      ...(i === first ? [noticeMark(marking, shown, notice, look.colour)] : []),
    ];
    page.set(PDFName.of("Annots"), document.context.obj(marked));
    for (const one of marked) if (!others.includes(one)) tagged(tags, "Annot", refOf(page), one);
    return [page];
  });
}

function isMark(annotation: unknown): boolean {
  return annotation instanceof PDFDict && isOurMark(annotation);
}

/** Puts the pages of the list after all others. Returns what has changed. */
function addList(
  { document, typefaces, tags }: Marking,
  list: readonly Drawing[],
  pages: readonly PDFDict[],
): PDFDict[] {
  const { context } = document;
  return list.flatMap((drawing) => {
    const { page, changed } = appendPage(document);
    const { node, ref } = page;
    drawOn(page, drawing, typefaces, tags);
    // This page must not inherit what the sender's pages have in common.
    node.set(PDFName.of("CropBox"), node.MediaBox());
    node.set(PDFName.of("Rotate"), context.obj(0));
    // ISO 14289-1:2014 §7.18.3
    node.set(PDFName.of("Tabs"), PDFName.of("S"));
    const link = backLink(document, node, pages[0]);
    node.set(PDFName.of("Annots"), context.obj([link]));
    tagged(tags, "Link", ref, link);
    return changed;
  });
}

/** A click anywhere leads back to the sheet. */
function backLink({ context }: PDFDocument, list: PDFPageLeaf, page: PDFDict | undefined): PDFRef {
  const link = context.obj({
    Type: "Annot",
    Subtype: "Link",
    NM: PDFString.of(`${listPrefix}${digestOf({ dict: list, resources: undefined })}`),
    Rect: list.MediaBox(),
    Border: [0, 0, 0],
    Contents: PDFString.of(linkWords),
    ...(page === undefined ? {} : { Dest: [refOf(page), "Fit"] }),
  });
  return context.register(link);
}

/** Puts an annotation into the tree of tags, if the document has one. ISO 14289-1:2014 §7.18.1, §7.18.5 */
function tagged(tags: Marking["tags"], role: "Annot" | "Link", page: PDFRef, annotation: PDFRef): void {
  if (tags === undefined) return;
  const { structure, above } = tags;
  addAnnotation(structure, addTag(structure, above, role), page, annotation);
}

function annotationsOf(page: PDFDict): PDFRef[] {
  const annotations = entryOf(page, "Annots");
  return annotations instanceof PDFArray ? (annotations.asArray() as PDFRef[]) : [];
}

/** The reference of a dictionary. Throws for one that is no object of its own, since it cannot be replaced. */
function refOf(dict: PDFDict): PDFRef {
  const ref = dict.context.getObjectRef(dict);
  if (ref === undefined) throw new Error("a page is no object of its own");
  return ref;
}
