import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { type FormField, gatherFields } from "../form.ts";
import { decodeName } from "./pdf-string.ts";
import type { AnnotatedPage, Annotation } from "./pdfjs-annotations.ts";

/** What pdf.js says of one field. It publishes no type for it. */
interface FieldObject {
  readonly id: string;
  readonly type: string;
  readonly value?: unknown;
}

const kinds: Readonly<Record<string, FormField["kind"]>> = {
  text: "text",
  checkbox: "tick",
  radiobutton: "tick",
  combobox: "choice",
  listbox: "choice",
  signature: "signature",
  button: "button",
};

/**
 * Reader one: every field of the form as pdf.js sees it. Pages are read first. Throws on a form that pdf.js cannot
 * follow.
 */
export async function readFormByPdfjs(
  pdf: PDFDocumentProxy,
  pages: readonly AnnotatedPage[],
): Promise<FormField[]> {
  const objects = (await pdf.getFieldObjects()) as ReadonlyMap<string, readonly FieldObject[]> | null;
  const found = new Map<string, FormField>();
  for (const [name, list] of objects ?? [])
    for (const { id, type, value } of list) {
      const kind = kinds[type];
      if (kind !== undefined) found.set(id, { name, kind, values: valuesOf(kind, value) });
    }
  // The list of fields gives only the first of several selected values. It leaves out widgets that stand on a page
  // and nowhere else.
  for (const widget of pages.flatMap(({ annotations }) => annotations)) {
    const kind = kindOf(widget);
    if (kind === "choice" || (kind !== undefined && !found.has(widget.id)))
      found.set(widget.id, { name: widget.fieldName ?? "", kind, values: valuesOf(kind, widget.fieldValue) });
  }
  return gatherFields(found.values());
}

/** The kind of field that an annotation belongs to; undefined if it belongs to none. */
export function kindOf({ fieldType, checkBox, radioButton }: Annotation): FormField["kind"] | undefined {
  if (fieldType === "Tx") return "text";
  if (fieldType === "Ch") return "choice";
  if (fieldType === "Sig") return "signature";
  if (fieldType === "Btn") return checkBox || radioButton ? "tick" : "button";
  return undefined;
}

function valuesOf(kind: FormField["kind"], value: unknown): string[] {
  const values = (Array.isArray(value) ? value : [value]).filter((one) => typeof one === "string");
  if (kind === "tick") return values.filter((state) => state !== "Off").map(decodeState);
  return values;
}

// pdf.js hands out the names of states undecoded, one character a byte.
function decodeState(state: string): string {
  return /^[\0-\xff]*$/.test(state) ? decodeName(state) : state;
}
