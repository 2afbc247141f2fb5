import { ParseSpeeds, PDFBool, PDFDict, PDFDocument } from "pdf-lib";
import { countAssignments } from "./assignments.ts";
import { decodeNamesOnce } from "./names-once.ts";
import { entryOf } from "./pdf-value.ts";
import { takePacksQuickly } from "./quick-packs.ts";

decodeNamesOnce();
countAssignments();
takePacksQuickly();

/** Opens a PDF for walking over its objects. Throws on files that cannot be opened. */
export function openForWalking(bytes: Uint8Array): Promise<PDFDocument> {
  return PDFDocument.load(bytes, {
    password: "", // opens files that restrict only what may be done with them
    updateMetadata: false,
    throwOnInvalidObject: false,
    parseSpeed: ParseSpeeds.Fastest,
  });
}

/** What a file says of itself as a whole. ISO 32000-1:2008 tables 28 and 218. */
export interface Traits {
  readonly xfa: boolean;
  /** An XFA form that is laid out only when it is opened. */
  readonly needsRendering: boolean;
  readonly portfolio: boolean;
  /** Viewers are to draw the fields anew, whatever they look like in the file. */
  readonly redrawn: boolean;
}

export function traitsOf({ catalog }: PDFDocument): Traits {
  const form = formOf(catalog);
  return {
    xfa: form !== undefined && entryOf(form, "XFA") !== undefined,
    needsRendering: entryOf(catalog, "NeedsRendering") === PDFBool.True,
    portfolio: entryOf(catalog, "Collection") instanceof PDFDict,
    redrawn: form !== undefined && entryOf(form, "NeedAppearances") === PDFBool.True,
  };
}

/** The form of a document; undefined where it has none. */
export function formOf(catalog: PDFDict): PDFDict | undefined {
  const form = entryOf(catalog, "AcroForm");
  return form instanceof PDFDict ? form : undefined;
}
