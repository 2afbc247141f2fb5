import { fileURLToPath } from "node:url";
import { getDocument, type PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A folder of pdf.js with data for fonts that a file names but does not carry. */
const dataOf = (folder: string): string =>
  fileURLToPath(new URL(folder, import.meta.resolve("pdfjs-dist/package.json")));

/**
 * Opens a PDF, hands it over and closes it again, whatever happens. Throws what pdf.js throws for a file that it
 * cannot open; see `wantsPassword`.
 *
 * pdf.js looks pages up ahead and forgets some of them. On a damaged file of several pages it may leave a rejected
 * promise behind that cannot be caught here. A program that must go on listens for `unhandledRejection`.
 */
export async function withPdf<T>(bytes: Uint8Array, use: (pdf: PDFDocumentProxy) => Promise<T>): Promise<T> {
  const task = getDocument({
    data: Uint8Array.from(bytes), // pdf.js takes over what it is given
    verbosity: 0,
    useSystemFonts: false,
    disableFontFace: true,
    standardFontDataUrl: dataOf("standard_fonts/"),
    cMapUrl: dataOf("cmaps/"),
  });
  try {
    return await use(await task.promise);
  } finally {
    await task.destroy();
  }
}

/** Whether opening failed only for want of a password. */
export function wantsPassword(error: unknown): boolean {
  return error instanceof Error && error.name === "PasswordException";
}
