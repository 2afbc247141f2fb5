import { PDFBool, PDFDict, type PDFDocument, PDFNumber, PDFRawStream } from "pdf-lib";
import type { Box } from "../facts.ts";
import { isOurList, ourMarksOn } from "../our-marks.ts";
import { areaOf } from "../pdf/boxes.ts";
import { listOf, rectangleOf, textOf } from "../pdf/pdf-value.ts";
import { firstPages, type WalkedPage } from "../pdf/walked-pages.ts";
import { formOf } from "../pdf/walked-pdf.ts";
import { contentKey } from "./content-key.ts";
import { isWidget } from "./held.ts";
import { entriesInWords, presentIn } from "./plain-object.ts";
import { lineOf, nameOf } from "./widget-extras.ts";

/** A widget without what is filled in. */
export interface PrintedWidget {
  /** Everything else that the file says of it, in words. */
  readonly words: string;
  readonly dict: PDFDict;
  readonly name: string;
  readonly kind: "text" | "choice" | "tick" | "other";
  readonly box: Box;
  readonly hidden: boolean;
}

export interface PrintedPage {
  /** What shows of it. */
  readonly view: Box;
  readonly words: string;
  readonly content: string;
  readonly widgets: readonly PrintedWidget[];
}

/** A form as its file says it, without what is filled in. The same words show the same. */
export interface Print {
  /** What the file says of itself, and of its form. */
  readonly words: string;
  readonly pages: readonly PrintedPage[];
  /** What shows of each page, those of our own lists among them. */
  readonly views: readonly Box[];
}

/** Entries that do not change what a page shows. ISO 32000-1:2008 tables 28, 30, 164, 218, 220 */
const leftOut = {
  catalog: new Set([
    "/Type",
    "/Version",
    "/Pages",
    "/AcroForm",
    "/Metadata",
    "/StructTreeRoot",
    "/MarkInfo",
    "/Lang",
    "/ViewerPreferences",
  ]),
  form: new Set(["/Fields", "/NeedAppearances"]),
  page: new Set([
    "/Type",
    "/Parent",
    "/Contents",
    "/Resources",
    "/Annots",
    "/StructParents",
    "/Tabs",
    "/LastModified",
  ]),
  list: new Set([
    "/Type",
    "/Parent",
    "/Contents",
    "/Resources",
    "/Annots",
    "/MediaBox",
    "/CropBox",
    "/StructParents",
    "/Tabs",
    "/LastModified",
  ]),
  widget: new Set(["/Type", "/P", "/Parent", "/V", "/AP", "/AS", "/M", "/StructParent"]),
  /** Which choice is chosen, once more, and which one stands at the top of a list. */
  choice: new Set(["/Type", "/P", "/Parent", "/V", "/AP", "/AS", "/M", "/StructParent", "/I", "/TI"]),
  /** Nothing is filled in. */
  other: new Set(["/Type", "/P", "/Parent", "/M", "/StructParent"]),
  field: new Set(["/Type", "/Parent", "/Kids", "/V"]),
};

/** So many pages are looked at. */
const mostPages = 20;

/** The print of a file. Undefined if anything in it may show otherwise from one viewer to the next. */
export function printOf(pdf: PDFDocument): Print | undefined {
  try {
    const { catalog } = pdf;
    const form = formOf(catalog);
    const all = firstPages(pdf, mostPages + 1);
    if (form === undefined || all.length > mostPages || isRedrawn(form)) return undefined;
    return {
      words: `${entriesInWords(catalog, leftOut.catalog)}\n${entriesInWords(form, leftOut.form)}`,
      pages: all.flatMap((page) => (isPlainList(page) ? [] : [pageOf(page)])),
      views: all.map(viewOf),
    };
  } catch {
    return undefined;
  }
}

function isRedrawn(form: PDFDict): boolean {
  const redrawn = presentIn(form, "NeedAppearances");
  return redrawn !== undefined && redrawn !== PDFBool.False;
}

/** Whether a page is one of our own lists. Throws for one with anything more, such as a program. */
function isPlainList(page: WalkedPage): boolean {
  if (!isOurList(page)) return false;
  looksAbove(page.dict);
  if (!["", "/Rotate 0"].includes(entriesInWords(page.dict, leftOut.list)))
    throw new Error("a list with something more");
  return true;
}

/** Throws for a page that has something from the tree of pages. */
function looksAbove(dict: PDFDict): void {
  // ISO 32000-1:2008 §7.7.3.4: a page may have from above what it does not say itself.
  for (let above = presentIn(dict, "Parent"); above !== undefined; ) {
    if (!(above instanceof PDFDict) || above.keys().some((key) => !ofTree.has(key.asString())))
      throw new Error("a page has something from above");
    above = presentIn(above, "Parent");
  }
}

function pageOf(page: WalkedPage): PrintedPage {
  const { dict } = page;
  looksAbove(dict);
  const contents = listOf(presentIn(dict, "Contents"));
  if (!contents.every((one) => one instanceof PDFRawStream && isPlainStream(one)))
    throw new Error("no plain content");
  const content = contentKey(page);
  const annotations = listOf(presentIn(dict, "Annots"));
  const ours = new Set(ourMarksOn(dict));
  if (content === undefined) throw new Error("an endless page");
  return {
    view: viewOf(page),
    words: entriesInWords(dict, leftOut.page),
    content,
    widgets: annotations.flatMap((one, i) => (ours.has(i) ? [] : [widgetOf(one)])),
  };
}

const ofTree = new Set(["/Type", "/Kids", "/Count", "/Parent"]);

/** What shows of a page. The first reader cuts the one box off at the other, so there is one. */
function viewOf({ dict }: WalkedPage): Box {
  const view = rectangleOf(presentIn(dict, "MediaBox"));
  const crop = presentIn(dict, "CropBox");
  if (view === undefined || (crop !== undefined && String(rectangleOf(crop)) !== String(view)))
    throw new Error("a page without a plain box");
  return view;
}

/** Whether a stream is packed in one way at most and ends where it says. */
function isPlainStream({ dict, contents }: PDFRawStream): boolean {
  const length = presentIn(dict, "Length");
  return (
    dict.keys().every((key) => ["/Length", "/Filter"].includes(key.asString())) &&
    length instanceof PDFNumber &&
    length.asNumber() === contents.length &&
    ["undefined", "/FlateDecode", "[ /FlateDecode ]"].includes(String(presentIn(dict, "Filter")))
  );
}

/** ISO 32000-1:2008 table 165: hidden, not shown on the screen. */
const hiddenFlags = (1 << 1) | (1 << 5);

function widgetOf(dict: unknown): PrintedWidget {
  if (!(dict instanceof PDFDict) || !isWidget(dict)) throw new Error("an annotation that is no field");
  const [, ...above] = lineOf(dict);
  const box = rectangleOf(presentIn(dict, "Rect"));
  if (box === undefined) throw new Error("a field without a place");
  const flags = presentIn(dict, "F");
  const kind = kindOf([dict, ...above]);
  const own = kind === "choice" || kind === "other" ? leftOut[kind] : leftOut.widget;
  return {
    words: [entriesInWords(dict, own), ...above.map((one) => entriesInWords(one, leftOut.field))].join(
      "\nabove\n",
    ),
    dict,
    name: nameOf(dict),
    kind,
    box,
    hidden: areaOf(box) === 0 || (flags instanceof PDFNumber && (flags.asNumber() & hiddenFlags) !== 0),
  };
}

// ISO 32000-1:2008 tables 226 and 230
const pushButton = 1 << 16;
const combo = 1 << 17;

function kindOf(line: readonly PDFDict[]): PrintedWidget["kind"] {
  const nearest = (key: string) => line.map((one) => presentIn(one, key)).find((one) => one !== undefined);
  const flags = nearest("Ff");
  const has = (flag: number): boolean => flags instanceof PDFNumber && (flags.asNumber() & flag) !== 0;
  switch (textOf(nearest("FT"))) {
    case "Tx":
      return "text";
    case "Ch":
      return has(combo) ? "choice" : "other";
    case "Btn":
      return has(pushButton) ? "other" : "tick";
    default:
      return "other";
  }
}
