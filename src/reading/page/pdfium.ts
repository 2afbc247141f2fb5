import { PDFiumModule } from "@hyzyla/pdfium";
import { bytesOf, type Picture } from "./picture.ts";

/**
 * The functions of PDFium that are used. Its package leaves most of them without types. Names and meanings: its
 * fpdf*.h.
 */
interface Functions {
  malloc(bytes: number): number;
  free(at: number): void;
  FPDF_InitLibrary(): void;
  FPDF_LoadMemDocument(at: number, size: number, password: number): number;
  FPDF_CloseDocument(document: number): void;
  FPDF_GetPageCount(document: number): number;
  FPDFDOC_InitFormFillEnvironment(document: number, info: number): number;
  FPDFDOC_ExitFormFillEnvironment(form: number): void;
  FPDF_LoadPage(document: number, index: number): number;
  FPDF_ClosePage(page: number): void;
  FPDF_GetPageWidthF(page: number): number;
  FPDF_GetPageHeightF(page: number): number;
  FPDFPage_SetRotation(page: number, quarters: number): void;
  FPDFPage_SetMediaBox(page: number, ...box: readonly number[]): void;
  FPDFPage_SetCropBox(page: number, ...box: readonly number[]): void;
  FPDFPage_RemoveAnnot(page: number, index: number): number;
  FPDFPage_CountObjects(page: number): number;
  FPDFPage_GetObject(page: number, index: number): number;
  FPDFPageObj_GetType(object: number): number;
  /** Four addresses of floats. */
  FPDFPageObj_GetBounds(object: number, ...sides: readonly number[]): number;
  FORM_OnAfterLoadPage(page: number, form: number): void;
  FORM_OnBeforeClosePage(page: number, form: number): void;
  FPDFBitmap_CreateEx(width: number, height: number, format: number, at: number, stride: number): number;
  FPDFBitmap_Destroy(bitmap: number): void;
  /** Where on the bitmap and how large, quarter turns, flags. */
  FPDF_RenderPageBitmap(bitmap: number, page: number, ...how: readonly number[]): void;
  FPDF_FFLDraw(form: number, bitmap: number, page: number, ...how: readonly number[]): void;
}

const names = [
  "malloc",
  "free",
  "FPDF_InitLibrary",
  "FPDF_LoadMemDocument",
  "FPDF_CloseDocument",
  "FPDF_GetPageCount",
  "FPDFDOC_InitFormFillEnvironment",
  "FPDFDOC_ExitFormFillEnvironment",
  "FPDF_LoadPage",
  "FPDF_ClosePage",
  "FPDF_GetPageWidthF",
  "FPDF_GetPageHeightF",
  "FPDFPage_SetRotation",
  "FPDFPage_SetMediaBox",
  "FPDFPage_SetCropBox",
  "FPDFPage_RemoveAnnot",
  "FPDFPage_CountObjects",
  "FPDFPage_GetObject",
  "FPDFPageObj_GetType",
  "FPDFPageObj_GetBounds",
  "FORM_OnAfterLoadPage",
  "FORM_OnBeforeClosePage",
  "FPDFBitmap_CreateEx",
  "FPDFBitmap_Destroy",
  "FPDF_RenderPageBitmap",
  "FPDF_FFLDraw",
] as const satisfies readonly (keyof Functions)[];

interface Pdfium extends Functions {
  /** Its memory, which is replaced each time it has grown. */
  readonly memory: () => Uint8Array;
}

/** How a page is rendered. */
export interface Rendering {
  /** Counted from 1. */
  readonly page: number;
  /**
   * The part of the page to draw, in the page's own coordinates: left, bottom, right, top. The page is upright then.
   * If absent, what the page shows of itself.
   */
  readonly part?: readonly [number, number, number, number];
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** What is drawn: the page alone, the page with its fields, or the page with all annotations. Fields, if absent. */
  readonly layers?: "page" | "fields" | "all";
  /** Annotations to take off first, by their places in the page's list. */
  readonly without?: readonly number[];
  /**
   * Pixels to overwrite, of the right number. A picture is large, and making room for it takes longer than drawing.
   */
  readonly over?: Int32Array;
  /**
   * How the page itself looks, if that is known. While PDFium finds the same objects in the same places, only the
   * fields are drawn.
   */
  readonly known?: { readonly picture: Picture; readonly objects: Float32Array };
}

/** A PDF opened for rendering. */
export interface RenderedPdf {
  readonly pageCount: number;
  /** Width and height in points, as the page is seen. */
  readonly sizeOf: (page: number) => readonly [number, number];
  readonly render: (rendering: Rendering) => Picture;
  /** The objects that PDFium finds in a page's content: kind and place of each, in their order. */
  readonly objectsOn: (page: number) => Float32Array;
}

let loading: Promise<Pdfium> | undefined;
let loaded: Pdfium | undefined;

async function load(): Promise<Pdfium> {
  const module = (await PDFiumModule({})) as unknown as Record<string, unknown>;
  const functions = Object.fromEntries(
    names.map((name) => [name, module[`_${name}`]]),
  ) as unknown as Functions;
  functions.FPDF_InitLibrary();
  return { ...functions, memory: () => module["HEAPU8"] as Uint8Array };
}

/** FPDFBitmap_BGRx, and FPDF_ANNOT of fpdfview.h. */
const bgrx = 3;
const withAnnotations = 1;

/**
 * Opens a PDF in PDFium, hands it over and closes it. PDFium shares no code with the readers. Undefined if it cannot
 * open the file. Throws if it breaks; the next call then loads a fresh one.
 */
export async function withRendered<T>(
  bytes: Uint8Array,
  use: (pdf: RenderedPdf) => T,
): Promise<T | undefined> {
  loading ??= load();
  loaded = await loading;
  return renderedNow(bytes, use);
}

/** The same at once, where PDFium has been loaded before. */
export function renderedNow<T>(bytes: Uint8Array, use: (pdf: RenderedPdf) => T): T | undefined {
  if (loaded === undefined) throw new Error("PDFium is not loaded");
  try {
    return opened(loaded, bytes, use);
  } catch (error) {
    loading = undefined;
    throw error;
  }
}

function opened<T>(pdfium: Pdfium, bytes: Uint8Array, use: (pdf: RenderedPdf) => T): T | undefined {
  const at = pdfium.malloc(bytes.length);
  pdfium.memory().set(bytes, at);
  const document = pdfium.FPDF_LoadMemDocument(at, bytes.length, 0);
  if (document === 0) {
    pdfium.free(at);
    return undefined;
  }
  // FPDF_FORMFILLINFO, version 2, without any function, so that nothing in the file can call anything.
  const infoSize = 256;
  const info = pdfium.malloc(infoSize);
  pdfium.memory().fill(0, info, info + infoSize);
  pdfium.memory().fill(2, info, info + 1);
  const form = pdfium.FPDFDOC_InitFormFillEnvironment(document, info);
  const onPage = <R>(page: number, look: (handle: number) => R): R => {
    const handle = pdfium.FPDF_LoadPage(document, page - 1);
    if (handle === 0) throw new Error(`PDFium cannot open page ${page}`);
    try {
      return look(handle);
    } finally {
      pdfium.FPDF_ClosePage(handle);
    }
  };
  const result = use({
    pageCount: pdfium.FPDF_GetPageCount(document),
    sizeOf: (page) =>
      onPage(page, (handle) => [pdfium.FPDF_GetPageWidthF(handle), pdfium.FPDF_GetPageHeightF(handle)]),
    objectsOn: (page) => onPage(page, (handle) => objectsOf(pdfium, handle)),
    render: (rendering) => onPage(rendering.page, (handle) => render(pdfium, handle, form, rendering)),
  });
  pdfium.FPDFDOC_ExitFormFillEnvironment(form);
  pdfium.FPDF_CloseDocument(document);
  pdfium.free(info);
  pdfium.free(at);
  return result;
}

function render(
  pdfium: Pdfium,
  page: number,
  form: number,
  { part, width, height, layers = "fields", without = [], over, known }: Rendering,
): Picture {
  if (part !== undefined) {
    pdfium.FPDFPage_SetMediaBox(page, ...part);
    pdfium.FPDFPage_SetCropBox(page, ...part);
    pdfium.FPDFPage_SetRotation(page, 0);
  }
  // The last is removed first, so that the places of the others stay.
  for (const index of without.toSorted((a, b) => b - a)) pdfium.FPDFPage_RemoveAnnot(page, index);
  pdfium.FORM_OnAfterLoadPage(page, form);
  const size = width * height * 4;
  const at = pdfium.malloc(size);
  const isKnown =
    known !== undefined && layers === "fields" && sameNumbers(objectsOf(pdfium, page), known.objects);
  if (isKnown) pdfium.memory().set(bytesOf(known.picture.pixels), at);
  else pdfium.memory().fill(255, at, at + size);
  const bitmap = pdfium.FPDFBitmap_CreateEx(width, height, bgrx, at, width * 4);
  if (!isKnown)
    pdfium.FPDF_RenderPageBitmap(
      bitmap,
      page,
      0,
      0,
      width,
      height,
      0,
      layers === "all" ? withAnnotations : 0,
    );
  if (layers !== "page") pdfium.FPDF_FFLDraw(form, bitmap, page, 0, 0, width, height, 0, 0);
  // A copy: PDFium's memory moves when it grows.
  const pixels = over?.length === width * height ? over : new Int32Array(width * height);
  pixels.set(new Int32Array(pdfium.memory().buffer, at, width * height));
  pdfium.FORM_OnBeforeClosePage(page, form);
  pdfium.FPDFBitmap_Destroy(bitmap);
  pdfium.free(at);
  return { width, height, pixels };
}

/** Objects of a page that are looked at. A form has some hundreds. */
const mostObjects = 5_000;

function objectsOf(pdfium: Pdfium, page: number): Float32Array {
  const count = Math.min(pdfium.FPDFPage_CountObjects(page), mostObjects);
  const sides = pdfium.malloc(16);
  const found = new Float32Array(count * 5);
  for (let i = 0; i < count; i++) {
    const object = pdfium.FPDFPage_GetObject(page, i);
    pdfium.FPDFPageObj_GetBounds(object, sides, sides + 4, sides + 8, sides + 12);
    found[i * 5] = pdfium.FPDFPageObj_GetType(object);
    found.set(new Float32Array(pdfium.memory().buffer, sides, 4), i * 5 + 1);
  }
  pdfium.free(sides);
  return found;
}

function sameNumbers(one: Float32Array, other: Float32Array): boolean {
  return one.length === other.length && one.every((number, i) => Object.is(number, other[i]));
}
