import { PDFBool, PDFDict, type PDFDocument, PDFName } from "pdf-lib";
import type { Box } from "../facts.ts";
import { withPdf } from "../pdf/pdf.ts";
import { decodeName } from "../pdf/pdf-string.ts";
import { dictsIn, entryOf } from "../pdf/pdf-value.ts";
import { type Annotation, readAnnotations } from "../pdf/pdfjs-annotations.ts";
import { kindOf } from "../pdf/pdfjs-form.ts";
import { firstPages } from "../pdf/walked-pages.ts";
import { formOf, openForWalking } from "../pdf/walked-pdf.ts";
import { contentKey } from "./content-key.ts";
import { type BlankHeld, heldByBlank } from "./held.ts";
import { renderedNow, withRendered } from "./pdfium.ts";
import type { Area, Picture } from "./picture.ts";

/** Pixels a point. At 144 dots an inch a capital of a form is 14 pixels high. */
export const scale = 2;

/** Where the blank form has a field. */
export interface BlankWidget {
  readonly field: string;
  readonly box: Box;
  readonly kind: "text" | "tick" | "choice";
  readonly manyLines: boolean;
  /** The value that a box or round button stands for. */
  readonly state?: string;
  /** What a list shows for a value, if that is in other words. */
  readonly shows: ReadonlyMap<string, string>;
  /** The size of its type in points; 0 if a viewer chooses it. */
  readonly size: number;
}

/** A page without its fields' values, and with every box ticked. */
export interface Looks {
  readonly empty: Picture;
  readonly ticked: Picture;
}

export interface BlankPage {
  readonly box: Box;
  readonly widgets: readonly BlankWidget[];
  readonly looks: Looks;
  /** A key that is the same if a sheet's page has the same content. */
  readonly key: string | undefined;
  readonly objects: Float32Array;
  /**
   * The same if the file has its viewer draw the fields anew. Then lists have arrows and ticks look different. Few files
   * do, so it is rendered when it is first asked for.
   */
  readonly redrawn: Looks;
  /** The same with what the file itself draws at each field that holds nothing, such as a frame or a ground. */
  readonly framed: Looks;
}

/** How every page of a blank form looks, and what the form has besides. */
export interface BlankForm {
  readonly pages: readonly BlankPage[];
  readonly held: BlankHeld;
}

/** Renders a blank form. Throws if it cannot be opened, since it is one of ours. */
export async function blankForm(bytes: Uint8Array): Promise<BlankForm> {
  const annotated = await withPdf(bytes, readAnnotations);
  const boxes = annotated.map(({ view }) => view);
  const allTicked = await changed(bytes, tickAll);
  const [drawnAnew, tickedAnew] = [await changed(bytes, drawAnew), await changed(bytes, drawAnew, tickAll)];
  const emptied = await changed(bytes, emptyAll);
  const document = await openForWalking(bytes);
  const walked = firstPages(document, boxes.length);
  const objects = await withRendered(bytes, (pdf) => boxes.map((_, i) => pdf.objectsOn(i + 1)));
  const empty = picturesOf(bytes, boxes, "page");
  const ticked = picturesOf(allTicked, boxes);
  let anew: readonly Looks[] | undefined;
  let framed: readonly Looks[] | undefined;
  const pages = annotated.map(({ view, annotations }, i) => ({
    box: view,
    key: walked[i] && contentKey(walked[i]),
    objects: objects?.[i] ?? new Float32Array(0),
    widgets: annotations.flatMap((one) => widgetOf(one) ?? []),
    looks: looksIn(empty, ticked)[i] as Looks,
    get redrawn() {
      anew ??= looksIn(picturesOf(drawnAnew, boxes), picturesOf(tickedAnew, boxes));
      return anew[i] as Looks;
    },
    get framed() {
      framed ??= looksIn(picturesOf(emptied, boxes), ticked);
      return framed[i] as Looks;
    },
  }));
  return { pages, held: heldByBlank(document, walked) };
}

/** The names of all fields of a blank form that can be filled in. */
export async function namesOnBlank(bytes: Uint8Array): Promise<ReadonlySet<string>> {
  const annotated = await withPdf(bytes, readAnnotations);
  const widgets = annotated.flatMap(({ annotations }) => annotations.flatMap((one) => widgetOf(one) ?? []));
  return new Set(widgets.map(({ field }) => field));
}

function widgetOf(annotation: Annotation): BlankWidget | undefined {
  const {
    fieldName: field = "",
    rect: box,
    multiLine = false,
    defaultAppearanceData,
    options = [],
  } = annotation;
  const kind = kindOf(annotation);
  if (field === "" || (kind !== "text" && kind !== "tick" && kind !== "choice")) return undefined;
  const state = annotation.radioButton ? annotation.buttonValue : annotation.exportValue;
  return {
    field,
    box,
    kind,
    manyLines: multiLine,
    shows: new Map(options.map(({ exportValue, displayValue }) => [exportValue, displayValue])),
    size: defaultAppearanceData?.fontSize ?? 0,
    ...(typeof state === "string" ? { state: decodeName(state) } : {}),
  };
}

function looksIn(empty: readonly Picture[], ticked: readonly Picture[]): Looks[] {
  return empty.map((picture, i) => ({ empty: picture, ticked: ticked[i] as Picture }));
}

function picturesOf(
  bytes: Uint8Array,
  boxes: readonly Box[],
  layers: "page" | "fields" = "fields",
): Picture[] {
  const pictures = renderedNow(bytes, (pdf) =>
    boxes.map((part, i) => pdf.render({ page: i + 1, part, layers, ...pixelsOf(part) })),
  );
  if (pictures === undefined) throw new Error("PDFium cannot open a blank form");
  return pictures;
}

/** The size of a part of a page in pixels. */
export function pixelsOf([left, bottom, right, top]: Box): Pick<Picture, "width" | "height"> {
  return { width: Math.round((right - left) * scale), height: Math.round((top - bottom) * scale) };
}

/** Where a part of a page is in its picture. */
export function areaOn({ box: [left, , , top] }: Pick<BlankPage, "box">, part: Box): Area {
  return {
    left: Math.floor((part[0] - left) * scale),
    right: Math.ceil((part[2] - left) * scale),
    top: Math.floor((top - part[3]) * scale),
    bottom: Math.ceil((top - part[1]) * scale),
  };
}

/** Where an area of a page's picture is on the page. */
export function boxOn({ box: [left, , , top] }: Pick<BlankPage, "box">, area: Area): Box {
  return [
    left + area.left / scale,
    top - area.bottom / scale,
    left + area.right / scale,
    top - area.top / scale,
  ];
}

async function changed(
  bytes: Uint8Array,
  ...changes: readonly ((pdf: PDFDocument) => void)[]
): Promise<Uint8Array> {
  const pdf = await openForWalking(bytes);
  for (const change of changes) change(pdf);
  return pdf.save({ updateFieldAppearances: false });
}

/** Switches every box on. ISO 32000-1:2008 §12.5.5: the appearance state. */
function tickAll(pdf: PDFDocument): void {
  for (const widget of widgetsOf(pdf)) {
    const looks = entryOf(widget, "AP");
    const normal = looks instanceof PDFDict ? entryOf(looks, "N") : undefined;
    const states = normal instanceof PDFDict ? normal.keys() : [];
    const on = states.find((state) => state !== PDFName.of("Off"));
    if (on === undefined) continue;
    widget.set(PDFName.of("AS"), on);
    widget.set(PDFName.of("V"), on);
  }
}

/** Switches every box off, and takes away what a field holds with the drawing of it. */
function emptyAll(pdf: PDFDocument): void {
  const value = PDFName.of("V");
  // Several drawings may have their value from one field above them.
  const holding = widgetsOf(pdf).flatMap((widget) => {
    const fields = withParents(widget).filter((field) => field.has(value));
    return fields.length === 0 ? [] : { widget, fields };
  });
  for (const { widget, fields } of holding) {
    for (const field of fields) field.delete(value);
    if (!hasStates(widget)) widget.delete(PDFName.of("AP"));
  }
  for (const widget of widgetsOf(pdf).filter(hasStates)) widget.set(PDFName.of("AS"), PDFName.of("Off"));
}

/** Whether it is a box or round button, which has a drawing for each of its states. */
function hasStates(widget: PDFDict): boolean {
  const looks = entryOf(widget, "AP");
  return looks instanceof PDFDict && entryOf(looks, "N") instanceof PDFDict;
}

/** A field and those above it, from which it may have its value. ISO 32000-1:2008 §12.7.3.1 */
function withParents(widget: PDFDict): PDFDict[] {
  const fields = [widget];
  for (let up = 0; up < mostUp; up++) {
    const parent = entryOf(fields.at(-1) ?? widget, "Parent");
    if (!(parent instanceof PDFDict)) break;
    fields.push(parent);
  }
  return fields;
}
const mostUp = 20;

/** Has the viewer draw the fields, which hold nothing. ISO 32000-1:2008 table 218 */
function drawAnew(pdf: PDFDocument): void {
  formOf(pdf.catalog)?.set(PDFName.of("NeedAppearances"), PDFBool.True);
  for (const widget of widgetsOf(pdf)) widget.delete(PDFName.of("V"));
}

function widgetsOf(pdf: PDFDocument): PDFDict[] {
  return firstPages(pdf, 20).flatMap(({ dict }) => dictsIn(dict, "Annots"));
}
