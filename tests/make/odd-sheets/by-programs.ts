import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { SheetValues } from "../../../src/drawing/fill-sheet.ts";
import { run } from "../program.ts";
import { xfdf } from "../xfdf.ts";

/**
 * What a program makes of a file. `args` gets the paths of the file and of what is to be made, and of a
 * third file for whatever else the program wants to read.
 */
function made(
  program: string,
  bytes: Uint8Array,
  args: (from: string, to: string, beside: string) => readonly string[],
  besides = "",
): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "burin-made-"));
  try {
    const [from, to, beside] = [
      join(folder, "from.pdf"),
      join(folder, "to.pdf"),
      join(folder, "beside.html"),
    ];
    writeFileSync(from, bytes);
    writeFileSync(beside, besides);
    run(program, ...args(from, to, beside));
    return readFileSync(to);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const pdftkFill = (blank: Uint8Array, values: SheetValues, ...how: readonly string[]): Uint8Array =>
  made("pdftk", blank, (from, to, beside) => [from, "fill_form", beside, "output", to, ...how], xfdf(values));

export const pdftkFlatten = (bytes: Uint8Array): Uint8Array =>
  made("pdftk", bytes, (from, to) => [from, "output", to, "flatten"]);

export const qpdf = (bytes: Uint8Array, ...how: readonly string[]): Uint8Array =>
  made("qpdf", bytes, (from, to) => [...how, from, to]);

export const mutoolClean = (bytes: Uint8Array): Uint8Array =>
  made("mutool", bytes, (from, to) => ["clean", "-z", from, to]);

export const mutoolConvert = (bytes: Uint8Array): Uint8Array =>
  made("mutool", bytes, (from, to) => ["convert", "-F", "pdf", "-o", to, from]);

/** Prints by Ghostscript, as text ("pdfwrite") or as pictures ("pdfimage24"). */
export const gsPrint = (bytes: Uint8Array, device: string): Uint8Array =>
  made("gs", bytes, (from, to) => ["-q", "-dSAFER", `-sDEVICE=${device}`, "-r100", "-o", to, from]);

export const cairoPrint = (bytes: Uint8Array): Uint8Array =>
  made("pdftocairo", bytes, (from, to) => ["-pdf", from, to]);

/** Opened in LibreOffice, in its drawing or its writing program, and exported from there. */
export const libreOffice = (bytes: Uint8Array, part: "draw" | "writer"): Uint8Array =>
  made("sh", bytes, (from, to) => [
    "-c",
    `soffice -env:UserInstallation=file://${to}-profile --headless --infilter=${part}_pdf_import --convert-to pdf --outdir ${to}-made ${from} && mv ${to}-made/from.pdf ${to}`,
  ]);

/** The first page as a picture, "png" or "jpeg". */
export const picture = (bytes: Uint8Array, format: string): Uint8Array =>
  made("sh", bytes, (from, to) => ["-c", `pdftocairo -singlefile -r 100 -${format} ${from} - > ${to}`]);

/** A picture on a page of a browser, printed from there to PDF. */
export const chromiumPrint = (png: Uint8Array): Uint8Array =>
  made(
    "chromium",
    png,
    (_, to, beside) => [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--no-pdf-header-footer",
      `--user-data-dir=${to}-profile`,
      `--print-to-pdf=${to}`,
      pathToFileURL(beside).href,
    ],
    `<style>@page{margin:0;size:letter landscape}body{margin:0}</style><img style="width:100%" src="data:image/png;base64,${Buffer.from(png).toString("base64")}">`,
  );

/** Filled and saved by pdf.js, as Firefox does it. */
export async function pdfjsFill(blank: Uint8Array, values: SheetValues): Promise<Uint8Array> {
  const task = getDocument({ data: Uint8Array.from(blank), verbosity: 0 });
  const pdf = await task.promise;
  for (let n = 1; n <= pdf.numPages; n++)
    for (const widget of await (await pdf.getPage(n)).getAnnotations()) {
      const value = values[widget.fieldName];
      if (value === undefined) continue;
      const { checkBox, radioButton, buttonValue } = widget;
      const isOn = checkBox ? value : buttonValue === value;
      pdf.annotationStorage.setValue(widget.id, { value: checkBox || radioButton ? isOn : value });
    }
  const saved = await pdf.saveDocument();
  await task.destroy();
  return saved;
}
