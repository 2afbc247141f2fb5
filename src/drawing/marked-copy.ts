import { EncryptedPDFError, ParseSpeeds, PDFDict, PDFDocument, PDFName } from "pdf-lib";
import type { FileFacts } from "../reading/facts.ts";
import { saysYes } from "../reading/filled.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { openPdf } from "../reading/pdf/open-pdf.ts";
import { entryOf } from "../reading/pdf/pdf-value.ts";
import { formOf } from "../reading/pdf/walked-pdf.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { SheetValues } from "./fill-sheet.ts";
import { problemList } from "./marked/list.ts";
import { markInto } from "./marked/mark-into.ts";
import { headOf, type MarkedProblem } from "./marked/problem.ts";
import { pdfOf } from "./proof/pdf.ts";
import type { Drawing } from "./proof/shapes.ts";

/** What is filled in on a marked copy for its sender to check, and what the list says of it. */
export interface Mending {
  readonly values: SheetValues;
  readonly says: readonly string[];
}

/** A marked copy. It is mended if that can be proved on the file as it is. */
export interface Marked {
  readonly copy?: Uint8Array;
  readonly mended?: true;
}

/** How a sheet is marked: what is filled in, the forms that its pages are compared with, and what is read of it. */
interface Marking {
  readonly mending?: Mending;
  readonly forms?: KnownForms | undefined;
  readonly before?: FileFacts;
}

/** Marks a sheet, and mends it if there is something to mend. If the mended copy cannot be, it is marked alone. */
export async function markSheet(
  bytes: Uint8Array,
  sheet: Sheet,
  problems: readonly MarkedProblem[],
  mending: Mending | undefined,
  forms: KnownForms | undefined,
): Promise<Marked> {
  const before = await openPdf(bytes, undefined, forms);
  const mended =
    mending === undefined || forms === undefined
      ? undefined
      : await markedCopy(bytes, sheet, problems, { before, mending, forms });
  if (mended !== undefined) return { copy: mended, mended: true };
  const copy = await markedCopy(bytes, sheet, problems, { before, forms });
  return copy === undefined ? {} : { copy };
}

/**
 * The sender's own sheet, to be corrected and sent again. Each faulty field is outlined and numbered, and a last page
 * lists the problems. The file's own bytes all stay. Marks are added at its end, and replace those of an earlier
 * marking. A change would spoil a file that is signed, locked or has an XFA form. Such a file is left alone, and the
 * list comes by itself. Undefined if the file cannot be read for certain, or would not read the same afterwards.
 * Never throws, whatever the bytes.
 */
export async function markedCopy(
  bytes: Uint8Array,
  sheet: Sheet,
  problems: readonly MarkedProblem[],
  { mending, forms, ...known }: Marking = {},
): Promise<Uint8Array | undefined> {
  const before = known.before ?? (await openPdf(bytes, undefined, forms));
  if (before.kind === "locked-pdf") return mending ? undefined : listAlone(sheet, problems);
  // A file that was repaired in reading would come back as if it had never been damaged.
  if (before.kind !== "pdf" || before.recovered || !beginsAsPdf(bytes)) return undefined;
  const document = await openForMarking(bytes);
  if (document === undefined || document === "sealed")
    return document && !mending ? listAlone(sheet, problems) : undefined;
  try {
    const { values = {}, says = [] } = mending ?? {};
    const list = listOf(sheet, problems, "marked", says);
    const marked = await markInto(document, sheet, problems, list, values);
    const after = await openPdf(marked, undefined, forms);
    return readsAsBefore(before, after, values) ? marked : undefined;
  } catch {
    return undefined; // we cannot add to its pages, or to its tree of pages
  }
}

/** What is to be done with a copy that has the marks in it, or with a list that comes by itself. */
const instructions = {
  marked: (todo: string) => [
    `${todo} the numbered fields on the sheet itself, save the file and send it again.`,
    "The outlines, the numbers and this page may stay where they are: they are not read as part of the order.",
  ],
  alone: (todo: string) => [
    "Your file is signed, locked or of a kind that must not be changed, so nothing was drawn into it.",
    `${todo} the fields named here in the file you have, and send it again.`,
  ],
} as const;

function listOf(
  sheet: Sheet,
  problems: readonly MarkedProblem[],
  how: keyof typeof instructions,
  says: readonly string[] = [],
): Drawing[] {
  return problemList(sheet, problems, [...instructions[how](headOf(problems).todo), ...says]);
}

function listAlone(sheet: Sheet, problems: readonly MarkedProblem[]): Promise<Uint8Array> {
  return pdfOf(listOf(sheet, problems, "alone"), headOf(problems).title);
}

/** The document. "sealed" if it must not be changed. Undefined if it cannot be opened. */
async function openForMarking(bytes: Uint8Array): Promise<PDFDocument | "sealed" | undefined> {
  try {
    // Opened without a password. Whoever set one, even if only against changes, wants none.
    const document = await PDFDocument.load(bytes, {
      updateMetadata: false,
      forIncrementalUpdate: true,
      parseSpeed: ParseSpeeds.Fastest,
    });
    return isSealed(document) ? "sealed" : document;
  } catch (error) {
    return error instanceof EncryptedPDFError ? "sealed" : undefined;
  }
}

/**
 * Whether a change would spoil the document. It is signed or certified, has rights that a change takes away, or is
 * laid out by XFA, which would not show the marks.
 */
function isSealed({ catalog, context }: PDFDocument): boolean {
  const form = formOf(catalog);
  if (entryOf(catalog, "Perms") !== undefined || (form && entryOf(form, "XFA") !== undefined)) return true;
  return context.enumerateIndirectObjects().some(([, object]) => {
    if (!(object instanceof PDFDict)) return false;
    // ISO 32000-1:2008 table 252: what a signature covers. Table 232: a signed field has a value.
    const isField = object.get(PDFName.of("FT")) === PDFName.of("Sig");
    return entryOf(object, "ByteRange") !== undefined || (isField && entryOf(object, "V") !== undefined);
  });
}

/**
 * Whether the header comes first. Some readers count what stands before it and others do not, so nothing could be
 * added.
 */
function beginsAsPdf(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.subarray(0, 5)).toString("latin1") === "%PDF-";
}

/**
 * Whether all is read as it was: every field, what it shows, and what others wrote on the pages. What was filled in
 * must be read so, and show so beside the blank form.
 */
function readsAsBefore(before: FileFacts, after: FileFacts, values: SheetValues): boolean {
  const filled = Object.entries(values);
  if (readingOf(before, values) !== readingOf(after, values) || after.kind !== "pdf") return false;
  const read = new Map(after.fields.map((field) => [field.name, field]));
  return (
    (filled.length === 0 || after.differences !== undefined) &&
    after.widgets.every(({ field, shown = "" }) => {
      const value = values[field];
      return typeof value !== "string" || shown === "" || shown.trim() === value.trim();
    }) &&
    filled.every(([name, value]) => {
      const { values: [first, ...more] = [], unsure } = read.get(name) ?? {};
      const isRead = value === true ? first !== undefined && saysYes(first) : first === value;
      return isRead && more.length === 0 && unsure === undefined;
    })
  );
}

/** What is read of a file, without the fields that are filled in. */
function readingOf(facts: FileFacts, values: SheetValues): string {
  if (facts.kind !== "pdf") return facts.kind;
  const { fields, widgets, pages, differences, recovered } = facts;
  const marks = pages?.map((page) => page.marks).filter((some) => some.length > 0);
  const seen = differences?.map(({ what, page, box, field, text }) => ({ what, page, box, field, text }));
  return JSON.stringify({
    fields: fields.filter(({ name }) => !(name in values)),
    widgets: widgets.filter(({ field }) => !(field in values)),
    marks,
    seen,
    recovered,
  });
}
