import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AFRelationship, PDFDocument, PDFHexString, PDFName, PDFString } from "pdf-lib";
import { run } from "../program.ts";

/** What a program makes of several files; `args` gets their paths and the path of what is to be made. */
function together(
  program: string,
  files: readonly Uint8Array[],
  args: (from: readonly string[], to: string) => readonly string[],
): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "burin-merged-"));
  try {
    const from = files.map((bytes, i) => {
      const path = join(folder, `sheet-${i + 1}.pdf`);
      writeFileSync(path, bytes);
      return path;
    });
    const to = join(folder, "to.pdf");
    run(program, ...args(from, to));
    return readFileSync(to);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export type Merge = (...files: readonly Uint8Array[]) => Uint8Array | Promise<Uint8Array>;

export const byQpdf: Merge = (...files) =>
  together("qpdf", files, (from, to) => ["--empty", "--pages", ...from, "--", to]);

export const byPdftk: Merge = (...files) =>
  together("pdftk", files, (from, to) => {
    // The same file twice is not renamed unless each has a handle of its own.
    const handles = from.map((path, i) => `${String.fromCharCode(65 + i)}=${path}`);
    return [...handles, "cat", ...handles.map((handle) => handle.slice(0, 1)), "output", to];
  });

export const byPdfunite: Merge = (...files) => together("pdfunite", files, (from, to) => [...from, to]);

export const byMutool: Merge = (...files) =>
  together("mutool", files, (from, to) => ["merge", "-o", to, ...from]);

export const byGhostscript: Merge = (...files) =>
  together("gs", files, (from, to) => ["-q", "-dSAFER", "-sDEVICE=pdfwrite", "-o", to, ...from]);

/** By a library of Python; the program gets the path to write and those to read. */
const byPython =
  (program: string): Merge =>
  (...files) =>
    together("/usr/bin/python3", files, (from, to) => ["-c", program, to, ...from]);

export const byPypdf = byPython(
  "import sys, pypdf\nw = pypdf.PdfWriter()\nfor f in sys.argv[2:]: w.append(f)\nw.write(sys.argv[1])",
);

/** Page by page, which leaves the list of fields behind. */
export const byPypdfPages = byPython(
  "import sys, pypdf\nw = pypdf.PdfWriter()\nfor f in sys.argv[2:]:\n  for p in pypdf.PdfReader(f).pages: w.add_page(p)\nw.write(sys.argv[1])",
);

export const byPikepdf = byPython(
  "import sys, pikepdf\np = pikepdf.Pdf.new()\nfor f in sys.argv[2:]: p.pages.extend(pikepdf.open(f).pages)\np.save(sys.argv[1])",
);

export const byPymupdf = byPython(
  "import sys, fitz\nd = fitz.open(sys.argv[2])\nfor f in sys.argv[3:]: d.insert_pdf(fitz.open(f))\nd.save(sys.argv[1])",
);

/** Into an empty document, whose form lists no field. */
export const byPdfLib: Merge = async (...files) => pagesInto(await PDFDocument.create(), files);

/** Behind the first, whose form lists its own fields alone. */
export const behindByPdfLib: Merge = async (first = new Uint8Array(), ...files) =>
  pagesInto(await PDFDocument.load(first), files);

async function pagesInto(pdf: PDFDocument, files: readonly Uint8Array[]): Promise<Uint8Array> {
  for (const file of files) {
    const from = await PDFDocument.load(file);
    for (const page of await pdf.copyPages(from, from.getPageIndices())) pdf.addPage(page);
  }
  return pdf.save({ updateFieldAppearances: false });
}

/** The fields renamed as some program renames those of a second sheet. */
export async function renamed(
  bytes: Uint8Array,
  rename: (name: string, n: number) => string,
): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  for (const [n, field] of pdf.getForm().getFields().entries())
    field.acroField.dict.set(PDFName.of("T"), PDFHexString.fromText(rename(field.getName(), n)));
  return pdf.save({ updateFieldAppearances: false });
}

/** A sheet with files inside, in its list of files. */
export async function withInside(
  bytes: Uint8Array,
  files: readonly { readonly name: string; readonly bytes: Uint8Array }[],
): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  for (const file of files)
    await pdf.attach(file.bytes, file.name, { afRelationship: AFRelationship.Unspecified });
  return pdf.save({ updateFieldAppearances: false });
}

/** A sheet with a file pinned to its page. ISO 32000-1:2008 §12.5.6.15 */
export async function withPinned(bytes: Uint8Array, name: string, file: Uint8Array): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  const { context } = pdf;
  const stream = context.register(context.flateStream(file, { Type: "EmbeddedFile" }));
  const pin = context.obj({
    Type: "Annot",
    Subtype: "FileAttachment",
    Rect: [2, 2, 12, 12],
    FS: { Type: "Filespec", F: PDFString.of(name), EF: { F: stream } },
  });
  pdf.getPage(0).node.addAnnot(context.register(pin));
  return pdf.save({ updateFieldAppearances: false });
}

/**
 * A sheet with files that belong to it or to its page, and that no list names. ISO 32000-2:2020 §14.13. Or those that
 * are listed.
 */
export async function withBelonging(
  bytes: Uint8Array,
  owner: "document" | "page",
  files: readonly { readonly name: string; readonly bytes: Uint8Array }[] | "listed",
): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  const { context, catalog } = pdf;
  const of = owner === "page" ? pdf.getPage(0).node : catalog;
  const belonging =
    files === "listed"
      ? catalog.get(PDFName.of("AF"))
      : context.obj(
          files.map((file) => {
            const stream = context.register(context.flateStream(file.bytes, { Type: "EmbeddedFile" }));
            return { Type: "Filespec", UF: PDFHexString.fromText(file.name), EF: { F: stream } };
          }),
        );
  if (belonging === undefined) throw new Error("no file belongs to the document");
  of.set(PDFName.of("AF"), belonging);
  if (of !== catalog) catalog.delete(PDFName.of("AF"));
  return pdf.save({ updateFieldAppearances: false });
}

/** A sheet with a page of words behind it, or an empty one. */
export async function withPage(bytes: Uint8Array, text = ""): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  pdf.addPage().drawText(text, { x: 20, y: 700, size: 10 });
  return pdf.save({ updateFieldAppearances: false });
}

/** A sheet with a page of lines behind it, as words are that were turned into outlines, and its number. */
export async function withOutlines(bytes: Uint8Array): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  const page = pdf.addPage();
  page.drawText("Page 2 of 2", { x: 20, y: 5, size: 8 });
  for (let n = 0; n < 40; n++)
    page.drawLine({ start: { x: 20, y: 20 + 15 * n }, end: { x: 500, y: 30 + 15 * n } });
  return pdf.save({ updateFieldAppearances: false });
}
