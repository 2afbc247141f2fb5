import type { PageMark, WidgetFacts } from "../facts.ts";
import { type FormField, isFillable, plainName } from "../form.ts";
import { areaOf, moved, rounded } from "./boxes.ts";
import type { AnnotatedPage, Annotation } from "./pdfjs-annotations.ts";
import { kindOf } from "./pdfjs-form.ts";

// ISO 32000-1:2008 table 165
const hiddenFlags = (1 << 1) | (1 << 5);

/** Annotations that put something on the page and are no field. ISO 32000-1:2008 table 169 */
const marks: Readonly<Record<string, PageMark["what"]>> = {
  Ink: "ink",
  FreeText: "free-text",
  Text: "free-text",
  Stamp: "stamp",
  Line: "stamp",
  Square: "stamp",
  Circle: "stamp",
  Polygon: "stamp",
  PolyLine: "stamp",
};

/** What is drawn or written over a page, without fields, links and other bookkeeping. */
export function marksOf({ annotations, view: [left, bottom] }: AnnotatedPage): PageMark[] {
  return annotations.flatMap(({ subtype = "", rect, contentsObj, textContent }): PageMark[] => {
    const what = marks[subtype];
    const text = (textContent?.join("\n") ?? contentsObj?.str ?? "").trim();
    if (what === undefined || (what === "free-text" && text === "")) return [];
    return [{ what, box: moved(rect, -left, -bottom), ...(text === "" ? {} : { text }) }];
  });
}

/**
 * Where fields show on a page and what they show. pdf.js does not tell the text in the drawing of a list, so
 * `shownChoice` tells it by the name of the widget. It is undefined if drawings in the file mean nothing.
 */
export function widgetsOf(
  { annotations, view: [left, bottom] }: AnnotatedPage,
  page: number,
  shownChoice: ((id: string) => string | undefined) | undefined,
): WidgetFacts[] {
  return annotations.flatMap((annotation): WidgetFacts[] => {
    const { id, rect, fieldName = "", annotationFlags = 0 } = annotation;
    const field = plainName(fieldName);
    const kind = kindOf(annotation);
    if (kind === undefined || field === "" || !isFillable({ kind })) return [];
    const shown = shownChoice && shownIn(annotation, kind, shownChoice(id));
    const hidden = (annotationFlags & hiddenFlags) !== 0 || areaOf(rect) === 0;
    const box = rounded(moved(rect, -left, -bottom));
    return [{ field, page, box, ...(shown === undefined ? {} : { shown }), hidden }];
  });
}

function shownIn(
  { hasAppearance, textContent, combo, options }: Annotation,
  kind: FormField["kind"],
  choice: string | undefined,
): string | undefined {
  if (kind === "text") return hasAppearance ? (textContent?.join("\n") ?? "") : undefined;
  if (kind !== "choice" || !combo || choice === undefined) return undefined;
  // The form may show a choice in other words than it keeps.
  const plain = (text: string): string => text.replace(/\s+/g, "");
  const shown = options?.find(({ displayValue }) => plain(displayValue) === plain(choice));
  return shown?.exportValue ?? choice;
}
