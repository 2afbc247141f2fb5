import { PDFDict, type PDFDocument, PDFName } from "pdf-lib";
import { entryOf, listOf } from "../pdf/pdf-value.ts";
import type { WalkedPage } from "../pdf/walked-pages.ts";
import { objectKey } from "./content-key.ts";
import { guessedOn } from "./fonts.ts";
import { type Held, inTheFile, keyed, runs } from "./in-the-file.ts";
import { extrasOf, nameOf } from "./widget-extras.ts";

/** What a blank form has besides its print. No sheet on it is blamed for that. */
export interface BlankHeld {
  /** Keys of files, layers, programs, annotations, tips and the like. */
  readonly keys: ReadonlySet<string>;
  /** How many widgets show each field, buttons and signatures among them. */
  readonly widgets: ReadonlyMap<string, number>;
}

export function heldByBlank(pdf: PDFDocument, pages: readonly WalkedPage[]): BlankHeld {
  const widgets = new Map<string, number>();
  const keys = inTheFile(pdf, pages, new Set()).map(({ key }) => key);
  for (const page of pages) {
    keys.push(...fontsOn(page, 0).map(({ key }) => key));
    for (const annotation of listOf(entryOf(page.dict, "Annots"))) {
      if (!(annotation instanceof PDFDict)) continue;
      if (isWidget(annotation)) {
        const field = nameOf(annotation);
        widgets.set(field, (widgets.get(field) ?? 0) + 1);
        keys.push(...extrasOf(annotation, field, [], pdf).map(({ key }) => key));
      } else keys.push(annotationKey(annotation));
    }
  }
  return { keys: new Set(keys.filter((key) => key !== undefined)), widgets };
}

/** Fonts at which viewers guess. Others may see signs where we see letters. */
export function fontsOn(walked: WalkedPage, page: number): Held[] {
  return guessedOn(walked).map((font) => ({ difference: { what: "more", page }, key: keyed("font", font) }));
}

export function isWidget(annotation: PDFDict): boolean {
  return entryOf(annotation, "Subtype") === PDFName.of("Widget");
}

/**
 * Entries that lead elsewhere, and entries that a program may write anew when it saves. ISO 32000-1:2008 table 164
 */
const leftOut = new Set(["P", "Parent", "Popup", "IRT", "M", "NM", "StructParent", "Dest"]);

/**
 * A key that is the same for the same annotation in another file. Undefined if the annotation is too large to tell.
 */
export function annotationKey(annotation: PDFDict): string | undefined {
  const names = annotation
    .keys()
    .map((key) => key.decodeText())
    .filter((key) => !leftOut.has(key) && (key !== "A" || runs(annotation, key)))
    .toSorted();
  const parts = names.map((name) => keyed(name, objectKey(entryOf(annotation, name))));
  return parts.includes(undefined) ? undefined : keyed("annotation", parts.join(" "));
}
