import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { type FormField, gatherFields } from "./form.ts";
import { decodeName } from "./pdf-string.ts";

/** Pages whose widgets are looked at besides the form's own list of fields. */
const mostPages = 20;

/** What pdf.js says of one field or widget; it publishes no type for it. */
interface FieldObject {
  readonly id: string;
  readonly type: string;
  readonly value?: unknown;
}
interface Widget {
  readonly id: string;
  readonly fieldName: string;
  readonly fieldType: string | null;
  readonly fieldValue: unknown;
  readonly checkBox?: boolean;
  readonly radioButton?: boolean;
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

/** Reader one: every field of the form as pdf.js sees it. Throws on files whose pages or form it cannot follow. */
export async function readFormByPdfjs(pdf: PDFDocumentProxy): Promise<FormField[]> {
  // The pages come first: what pdf.js cannot follow is caught here, while its list of fields would leave
  // the failure behind as a promise that nobody can catch.
  const widgets = await widgetsOf(pdf);
  const objects = (await pdf.getFieldObjects()) as ReadonlyMap<string, readonly FieldObject[]> | null;
  const found = new Map<string, FormField>();
  for (const [name, list] of objects ?? [])
    for (const { id, type, value } of list) {
      const kind = kinds[type];
      if (kind !== undefined) found.set(id, { name, kind, values: valuesOf(kind, value) });
    }
  // The list of fields gives only the first value of a list with several, and leaves out widgets that
  // stand on a page and nowhere else.
  for (const widget of widgets) {
    const kind = kindOf(widget);
    if (kind === "choice" || (kind !== undefined && !found.has(widget.id)))
      found.set(widget.id, { name: widget.fieldName, kind, values: valuesOf(kind, widget.fieldValue) });
  }
  return gatherFields(found.values());
}

async function widgetsOf(pdf: PDFDocumentProxy): Promise<Widget[]> {
  const widgets: Widget[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    if (n > mostPages) continue;
    const annotations = (await page.getAnnotations({ intent: "any" })) as Widget[];
    widgets.push(...annotations.filter(({ fieldType }) => typeof fieldType === "string"));
  }
  return widgets;
}

function kindOf({ fieldType, checkBox, radioButton }: Widget): FormField["kind"] | undefined {
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
