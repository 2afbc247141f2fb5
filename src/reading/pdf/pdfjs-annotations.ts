import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Box } from "../facts.ts";

/** Pages whose annotations are looked at. A sheet of ours has one or two. */
export const annotatedPages = 20;

/** What pdf.js says of one annotation. It publishes no type for it. */
export interface Annotation {
  readonly id: string;
  readonly subtype?: string;
  readonly rect: Box;
  readonly annotationFlags?: number;
  readonly hasAppearance?: boolean;
  /** The lines of its appearance, for text fields and text boxes. */
  readonly textContent?: readonly string[];
  readonly contentsObj?: { readonly str?: string };
  readonly fieldName?: string;
  readonly fieldType?: string | null;
  readonly fieldValue?: unknown;
  readonly checkBox?: boolean;
  readonly radioButton?: boolean;
  /** The value that a box or a round button stands for. */
  readonly exportValue?: string;
  readonly buttonValue?: string | null;
  readonly multiLine?: boolean;
  /** 0 where there is no limit. */
  readonly maxLen?: number;
  /** What a field says on hovering. */
  readonly alternativeText?: string;
  readonly defaultAppearanceData?: { readonly fontSize?: number };
  /** A list that opens. Other lists show all of their choices. */
  readonly combo?: boolean;
  readonly options?: readonly { readonly exportValue: string; readonly displayValue: string }[];
}

/** What stands on a page besides its content. */
export interface AnnotatedPage {
  /** The visible part, in the coordinates of the page. */
  readonly view: Box;
  readonly annotations: readonly Annotation[];
}

/** The annotations of the first pages. Throws on files whose pages pdf.js cannot follow. */
export async function readAnnotations(pdf: PDFDocumentProxy): Promise<AnnotatedPage[]> {
  const pages: AnnotatedPage[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    // Every page is asked for, so that what pdf.js cannot follow is caught here. Its list of fields would leave the
    // failure behind as a promise that nobody can catch.
    const page = await pdf.getPage(n);
    if (n > annotatedPages) continue;
    const annotations = (await page.getAnnotations({ intent: "any" })) as Annotation[];
    pages.push({ view: page.view as unknown as Box, annotations });
  }
  return pages;
}
