import type { Edition } from "../../src/reading/edition.ts";
import type { Box, PageFacts, PageMark, PdfFacts, WidgetFacts } from "../../src/reading/facts.ts";
import type { ReadField } from "../../src/reading/form.ts";

/** Where the n-th field of a form stands: one line of the page each, from the top. */
export function frameAt(n: number): Box {
  return [200, 780 - 14 * n, 400, 792 - 14 * n];
}

/** What is found in a PDF with the fields of an edition, filled in by name; every field shows what it holds. */
export function formFacts(
  { fields }: Edition,
  values: Readonly<Record<string, string>>,
  changes: Partial<PdfFacts> = {},
): PdfFacts {
  return {
    kind: "pdf",
    fields: fields.map(({ name }): ReadField => ({ name, kind: "text", values: [values[name] ?? ""] })),
    widgets: fields.map(
      ({ name: field }, n): WidgetFacts => ({
        field,
        page: 1,
        box: frameAt(n),
        shown: values[field] ?? "",
        hidden: false,
      }),
    ),
    pageCount: 1,
    pages: [pageFacts()],
    dynamic: false,
    portfolio: false,
    recovered: false,
    ...changes,
  };
}

/** A US Letter page with something on it. */
export function pageFacts(marks: readonly PageMark[] = [], text = ""): PageFacts {
  return { width: 612, height: 792, text, marks };
}
