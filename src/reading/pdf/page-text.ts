import { PDFParse } from "pdf-parse";
import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

/** The text printed on a page, form fields left out; pages count from 1. */
export async function readPageText(pdf: PDFDocumentProxy, page: number): Promise<string> {
  const parser = new PDFParse({});
  // The document is open already. pdf-parse opens one itself only if this field is empty. Its own destroy() is never
  // called: whoever opened the document closes it.
  Object.assign(parser, { doc: pdf });
  const { text } = await parser.getText({ partial: [page], pageJoiner: "" });
  return text.trim();
}
