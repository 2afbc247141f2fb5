import { PDFParse } from "pdf-parse";
import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

/** Pages that are read; a sheet of ours has one or two. */
const mostPages = 4;

/** The text printed on the first pages, form fields left out. */
export async function readPageText(pdf: PDFDocumentProxy): Promise<string> {
  const parser = new PDFParse({ verbosity: 0 });
  // The document is open already. pdf-parse opens one for itself only where this field is empty; its own
  // destroy() is never called, since whoever opened the document closes it.
  Object.assign(parser, { doc: pdf });
  const { text } = await parser.getText({ first: mostPages, pageJoiner: "" });
  return text;
}
