import {
  AcroFieldFlags,
  type PDFArray,
  type PDFContext,
  PDFHexString,
  PDFName,
  type PDFRef,
  PDFString,
} from "pdf-lib";
import { addAnnotation, addTag } from "../tagged/structure.ts";
import { inkStyle } from "./appearance.ts";
import type { Canvas, Drawn } from "./canvas.ts";

/** The fields of one document. */
export interface Form {
  readonly fields: PDFArray;
  /** Fields that only hold others, by full name: "MS.Acct" of "MS.Acct.City". */
  readonly holders: Map<string, Holder>;
  /** Drawings that tick boxes and round buttons share. */
  readonly marks: Map<string, PDFRef>;
}

interface Holder {
  readonly ref: PDFRef;
  readonly kids: PDFArray;
}

/** Where fields are made: in a form, on the page being drawn. They are made in reading order, which is the Tab key's. */
export interface Making {
  readonly form: Form;
  readonly canvas: Canvas;
}

/** What every field has. */
export interface FieldText {
  /** Full name; its parts are joined with dots. */
  readonly name: string;
  /** Shown on hovering and read aloud. */
  readonly tip: string;
  readonly required: boolean;
}

/** Entries of a dictionary as the library takes them: texts are names. */
export type Entries = NonNullable<Parameters<PDFContext["stream"]>[1]>;

/** Begins the form of a document. Helv and ZaDb are the names by which viewers look for its two fonts. */
export function startForm({ document, helvetica }: Drawn): Form {
  const { context, catalog } = document;
  const fields = context.obj([]);
  const marks = context.register(context.obj({ Type: "Font", Subtype: "Type1", BaseFont: "ZapfDingbats" }));
  const form = context.obj({
    Fields: fields,
    DR: { Font: { Helv: helvetica, ZaDb: marks } },
    DA: PDFString.of(inkStyle(10)),
    NeedAppearances: false,
  });
  catalog.set(PDFName.of("AcroForm"), context.register(form));
  return { fields, holders: new Map(), marks: new Map() };
}

/** Puts a field into the tree of fields; `flags` besides "required", `entries` besides its name and tip. */
export function addField(making: Making, field: FieldText, flags: number, entries: Entries): PDFRef {
  const path = field.name.split(".");
  return addNode(making, path, {
    ...entries,
    TU: PDFHexString.fromText(field.tip),
    Ff: flags | (field.required ? AcroFieldFlags.Required : 0),
  });
}

function addNode(making: Making, path: readonly string[], entries: Entries): PDFRef {
  const { context } = making.canvas.document;
  const holder = path.length > 1 ? holderOf(making, path.slice(0, -1)) : undefined;
  const ref = context.register(
    context.obj({
      ...entries,
      T: PDFHexString.fromText(path.at(-1) ?? ""),
      ...(holder === undefined ? {} : { Parent: holder.ref }),
    }),
  );
  (holder?.kids ?? making.form.fields).push(ref);
  return ref;
}

/** ISO 32000-1, 12.7.3.2: the parts of a full name are steps down a tree, each a field that holds the next. */
function holderOf(making: Making, path: readonly string[]): Holder {
  const name = path.join(".");
  const known = making.form.holders.get(name);
  if (known !== undefined) return known;
  const kids = making.canvas.document.context.obj([]);
  const holder = { ref: addNode(making, path, { Kids: kids }), kids };
  making.form.holders.set(name, holder);
  return holder;
}

/** Puts what shows a field on the page, and behind all that is to be read before. ISO 14289-1:2014 §7.18.4 */
export function place({ canvas: { page, tagging } }: Making, widget: PDFRef): void {
  const { structure, at } = tagging;
  page.node.addAnnot(widget);
  addAnnotation(structure, addTag(structure, at, "Form"), page.ref, widget);
}
