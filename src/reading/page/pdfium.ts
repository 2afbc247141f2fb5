import { PDFiumModule } from "@hyzyla/pdfium";
import type { Picture } from "./picture.ts";

/** What is used of PDFium, which its package leaves mostly without types. Names and meanings: its fpdf*.h. */
interface Pdfium {
  readonly HEAPU8: Uint8Array;
  readonly HEAPF32: Float32Array;
  _malloc(bytes: number): number;
  _free(at: number): void;
  _FPDF_InitLibrary(): void;
  _FPDF_LoadMemDocument(at: number, size: number, password: number): number;
  _FPDF_CloseDocument(document: number): void;
  _FPDF_GetPageCount(document: number): number;
  _FPDFDOC_InitFormFillEnvironment(document: number, info: number): number;
  _FPDFDOC_ExitFormFillEnvironment(form: number): void;
  _FPDF_LoadPage(document: number, index: number): number;
  _FPDF_ClosePage(page: number): void;
  _FPDF_GetPageWidthF(page: number): number;
  _FPDF_GetPageHeightF(page: number): number;
  _FPDFPage_SetRotation(page: number, quarters: number): void;
  _FPDFPage_SetMediaBox(page: number, left: number, bottom: number, right: number, top: number): void;
  _FPDFPage_SetCropBox(page: number, left: number, bottom: number, right: number, top: number): void;
  _FPDFPage_GetAnnotCount(page: number): number;
  _FPDFPage_RemoveAnnot(page: number, index: number): number;
  _FORM_OnAfterLoadPage(page: number, form: number): void;
  _FORM_OnBeforeClosePage(page: number, form: number): void;
  _FPDFBitmap_CreateEx(width: number, height: number, format: number, at: number, stride: number): number;
  _FPDFBitmap_Destroy(bitmap: number): void;
  _FPDF_RenderPageBitmap(
    bitmap: number,
    page: number,
    left: number,
    top: number,
    width: number,
    height: number,
    turned: number,
    flags: number,
  ): void;
  _FPDF_FFLDraw(
    form: number,
    bitmap: number,
    page: number,
    left: number,
    top: number,
    width: number,
    height: number,
    turned: number,
    flags: number,
  ): void;
}

/** How a page is rendered. */
export interface Rendering {
  /** Counted from 1. */
  readonly page: number;
  /** The part of the page, in its own coordinates: left, bottom, right, top. The page is upright then. What it shows of itself without. */
  readonly part?: readonly [number, number, number, number];
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** What is drawn: what the page itself holds, with its fields, or with all annotations. Fields if nothing is said. */
  readonly layers?: "page" | "fields" | "all";
  /** Annotations that are taken off first, by their places in the page's list. */
  readonly without?: readonly number[];
  /** Pixels to be overwritten, of the right number: a picture is large, and making room for it takes longer than drawing. */
  readonly over?: Int32Array;
}

/** A PDF opened for rendering. */
export interface RenderedPdf {
  readonly pageCount: number;
  /** Width and height in points, as the page is seen. */
  readonly sizeOf: (page: number) => readonly [number, number];
  readonly render: (rendering: Rendering) => Picture;
}

let loading: Promise<Pdfium> | undefined;

async function load(): Promise<Pdfium> {
  const pdfium = (await PDFiumModule({} as never)) as unknown as Pdfium;
  pdfium._FPDF_InitLibrary();
  return pdfium;
}

/** FPDFBitmap_BGRx, and FPDF_ANNOT of fpdfview.h. */
const bgrx = 3;
const withAnnotations = 1;

/**
 * Opens a PDF in PDFium, which shares no code with the readers, hands it over and closes it. Undefined where
 * PDFium cannot open it. Throws where it breaks; a fresh one is then loaded the next time.
 */
export async function withRendered<T>(
  bytes: Uint8Array,
  use: (pdf: RenderedPdf) => T | Promise<T>,
): Promise<T | undefined> {
  loading ??= load();
  const pdfium = await loading;
  try {
    return await opened(pdfium, bytes, use);
  } catch (error) {
    loading = undefined;
    throw error;
  }
}

async function opened<T>(
  pdfium: Pdfium,
  bytes: Uint8Array,
  use: (pdf: RenderedPdf) => T | Promise<T>,
): Promise<T | undefined> {
  const at = pdfium._malloc(bytes.length);
  pdfium.HEAPU8.set(bytes, at);
  const document = pdfium._FPDF_LoadMemDocument(at, bytes.length, 0);
  if (document === 0) {
    pdfium._free(at);
    return undefined;
  }
  // FPDF_FORMFILLINFO, version 2, without any of its functions: nothing in the file can call anything.
  const infoSize = 256;
  const info = pdfium._malloc(infoSize);
  pdfium.HEAPU8.fill(0, info, info + infoSize);
  pdfium.HEAPU8[info] = 2;
  const form = pdfium._FPDFDOC_InitFormFillEnvironment(document, info);
  const onPage = <R>(page: number, look: (handle: number) => R): R => {
    const handle = pdfium._FPDF_LoadPage(document, page - 1);
    if (handle === 0) throw new Error(`PDFium cannot open page ${page}`);
    try {
      return look(handle);
    } finally {
      pdfium._FPDF_ClosePage(handle);
    }
  };
  const result = await use({
    pageCount: pdfium._FPDF_GetPageCount(document),
    sizeOf: (page) =>
      onPage(page, (handle) => [pdfium._FPDF_GetPageWidthF(handle), pdfium._FPDF_GetPageHeightF(handle)]),
    render: (rendering) => onPage(rendering.page, (handle) => render(pdfium, handle, form, rendering)),
  });
  pdfium._FPDFDOC_ExitFormFillEnvironment(form);
  pdfium._FPDF_CloseDocument(document);
  pdfium._free(info);
  pdfium._free(at);
  return result;
}

function render(
  pdfium: Pdfium,
  page: number,
  form: number,
  { part, width, height, layers = "fields", without = [], over }: Rendering,
): Picture {
  if (part !== undefined) {
    pdfium._FPDFPage_SetMediaBox(page, ...part);
    pdfium._FPDFPage_SetCropBox(page, ...part);
    pdfium._FPDFPage_SetRotation(page, 0);
  }
  // From the last on, so that the places of the others stay.
  for (const index of without.toSorted((a, b) => b - a)) pdfium._FPDFPage_RemoveAnnot(page, index);
  pdfium._FORM_OnAfterLoadPage(page, form);
  const size = width * height * 4;
  const at = pdfium._malloc(size);
  pdfium.HEAPU8.fill(255, at, at + size);
  const bitmap = pdfium._FPDFBitmap_CreateEx(width, height, bgrx, at, width * 4);
  pdfium._FPDF_RenderPageBitmap(bitmap, page, 0, 0, width, height, 0, layers === "all" ? withAnnotations : 0);
  if (layers !== "page") pdfium._FPDF_FFLDraw(form, bitmap, page, 0, 0, width, height, 0, 0);
  // A copy: PDFium's memory moves when it grows.
  const pixels = over?.length === width * height ? over : new Int32Array(width * height);
  pixels.set(new Int32Array(pdfium.HEAPU8.buffer, at, width * height));
  pdfium._FORM_OnBeforeClosePage(page, form);
  pdfium._FPDFBitmap_Destroy(bitmap);
  pdfium._free(at);
  return { width, height, pixels };
}
