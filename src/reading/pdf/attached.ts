import { PDFDict, type PDFDocument, PDFName, PDFRawStream } from "pdf-lib";
import type { Left, Part, PdfFacts } from "../facts.ts";
import { contentOf, dictsIn, entryOf, listOf, textOf } from "./pdf-value.ts";
import { firstPages } from "./walked-pages.ts";

/** How much is looked for in one PDF and taken out of it. */
const most = { files: 200, bytes: 60_000_000, nodes: 2_000, pages: 200, kids: 10_000 };

/** A file inside a PDF, not yet unpacked. */
export interface Attached {
  readonly name: string;
  readonly stream: PDFRawStream;
}

/**
 * The files inside a PDF: those in its list, and those pinned to its first pages. Each once. ISO 32000-1:2008
 * §7.11.4, §12.5.6.15
 */
export function attachedTo(pdf: PDFDocument): Attached[] {
  const pages = firstPages(pdf, most.pages);
  // ISO 32000-2:2020 §14.13: files of the document or of a page.
  const belonging = [pdf.catalog, ...pages.map(({ dict }) => dict)].flatMap((dict) =>
    dictsIn(dict, "AF").slice(0, most.kids),
  );
  const pinned = pages
    .flatMap(({ dict }) => dictsIn(dict, "Annots").slice(0, most.kids))
    .filter((annotation) => entryOf(annotation, "Subtype") === PDFName.of("FileAttachment"))
    .flatMap((annotation) => entryOf(annotation, "FS") ?? []);
  const found = new Map<PDFRawStream, Attached>();
  for (const file of [...listedIn(pdf), ...belonging, ...pinned]) {
    if (!(file instanceof PDFDict)) continue;
    const embedded = entryOf(file, "EF");
    if (!(embedded instanceof PDFDict)) continue;
    const [stream] = ["UF", "F"].flatMap((key) => entryOf(embedded, key) ?? []);
    const [name = ""] = ["UF", "F"].map((key) => textOf(entryOf(file, key))).filter((text) => text !== "");
    if (stream instanceof PDFRawStream && !found.has(stream)) found.set(stream, { name, stream });
  }
  return [...found.values()];
}

/** What the tree of file names holds. §7.7.4, §7.9.6 */
function listedIn({ catalog }: PDFDocument): unknown[] {
  const names = entryOf(catalog, "Names");
  const root = names instanceof PDFDict ? entryOf(names, "EmbeddedFiles") : undefined;
  const files: unknown[] = [];
  const seen = new Set<PDFDict>();
  const stack = root instanceof PDFDict ? [root] : [];
  for (let node = stack.pop(); node !== undefined && seen.size < most.nodes; node = stack.pop()) {
    if (seen.has(node)) continue;
    seen.add(node);
    // Names and files alternate.
    const pairs = listOf(entryOf(node, "Names")).slice(0, most.kids);
    files.push(...pairs.filter((_, i) => i % 2 === 1));
    stack.push(...dictsIn(node, "Kids").slice(0, most.kids).toReversed());
  }
  return files;
}

/** Takes out as many files as there is room for. Undefined if there are none. */
export function takenOut(attached: readonly Attached[]): PdfFacts["attached"] {
  if (attached.length === 0) return undefined;
  const files: Part[] = [];
  const left: Left[] = [];
  let room = most.bytes;
  for (const { name, stream } of attached.slice(0, most.files)) {
    const bytes = unpacked(stream, room);
    if (typeof bytes === "string") left.push({ name, kind: bytes });
    else files.push({ name, bytes, looks: false });
    // A file that does not unpack may have used a lot of what is left.
    room -= typeof bytes === "string" ? room / 2 : bytes.length;
  }
  const more = attached.length - most.files;
  if (more > 0) left.push({ name: `${more} more files`, kind: "too-large" });
  return { files, left };
}

/** The same files, none of them taken out. */
export function leftIn(attached: readonly Attached[]): PdfFacts["attached"] {
  if (attached.length === 0) return undefined;
  const more = attached.length - most.files;
  const names = attached.slice(0, most.files).map(({ name }) => name);
  if (more > 0) names.push(`${more} more files`);
  return { files: [], left: names.map((name) => ({ name, kind: "too-large" })) };
}

function unpacked(stream: PDFRawStream, room: number): Buffer | Left["kind"] {
  try {
    return Buffer.from(contentOf(stream, room), "latin1");
  } catch (error) {
    return error instanceof Error && error.message === "a stream is endless" ? "too-large" : "damaged";
  }
}
