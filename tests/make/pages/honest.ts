import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { SheetValues } from "../../../src/drawing/fill-sheet.ts";
import type { FileKind } from "../../../src/trade/attachment.ts";
import { libreOffice, mutoolClean, pdfjsFill, pdftkFill, qpdf } from "../odd-sheets/by-programs.ts";
import type { SampleSheet } from "../odd-sheets/sheets.ts";
import { fillForm } from "../pdf.ts";
import { run } from "../program.ts";
import { fillInChromium } from "./chromium.ts";

/** A program that fills in forms, or saves anew what was filled in. */
export interface Writer {
  readonly name: string;
  /** What must be installed, and how it is asked whether it is. */
  readonly needs?: readonly string[];
  /** Sheets that it fills in one run of the comparison; slow ones fill fewer. */
  readonly most: number;
  /** What its files are where they are no sheets any more: then the answer has to say just that. */
  readonly gives?: FileKind;
  /** All sheets at once, since some programs take long to start; undefined for one that it does not fill. */
  readonly fill: (sheets: readonly SampleSheet[]) => Promise<(Uint8Array | undefined)[]>;
}

const each =
  (make: (sheet: SampleSheet) => Uint8Array | Promise<Uint8Array>): Writer["fill"] =>
  async (sheets) => {
    const made: Uint8Array[] = [];
    for (const sheet of sheets) made.push(await make(sheet));
    return made;
  };

const pdfbox = ["pdfbox2", "fontbox2", "commons-logging"].map((jar) => `/usr/share/java/${jar}.jar`);

export const writers: readonly Writer[] = [
  { name: "Burin's own drawing", most: 60, fill: each(({ filled }) => filled) },
  { name: "pdf.js", most: 60, fill: each(({ blank, values }) => pdfjsFill(blank, values)) },
  { name: "pdf-lib", most: 60, fill: each(({ blank, values }) => fillForm(blank, typed(values))) },
  {
    name: "pdftk",
    needs: ["pdftk", "--version"],
    most: 40,
    fill: each(({ blank, values }) => pdftkFill(blank, values)),
  },
  {
    name: "pdftk, drawn by the viewer",
    needs: ["pdftk", "--version"],
    most: 15,
    fill: each(({ blank, values }) => pdftkFill(blank, values, "need_appearances")),
  },
  {
    name: "qpdf, saved anew",
    needs: ["qpdf", "--version"],
    most: 30,
    fill: each(({ filled }) => qpdf(filled, "--object-streams=generate", "--linearize")),
  },
  {
    name: "MuPDF, saved anew",
    needs: ["mutool", "-v"],
    most: 30,
    fill: each(({ filled }) => mutoolClean(filled)),
  },
  {
    name: "MuPDF",
    needs: ["mutool", "-v"],
    most: 40,
    fill: async (sheets) => inFolder(sheets, (from, to, values) => [mupdf, from, to, values], "mutool"),
  },
  { name: "pikepdf", needs: ["/usr/bin/python3", "-cimport pikepdf"], most: 60, fill: inPython("pikepdf") },
  { name: "pypdf", needs: ["/usr/bin/python3", "-cimport pypdf"], most: 60, fill: inPython("pypdf") },
  { name: "PyPDF2", needs: ["/usr/bin/python3", "-cimport PyPDF2"], most: 40, fill: inPython("pypdf2") },
  {
    name: "Poppler",
    needs: ["/usr/bin/python3", "-cimport gi; gi.require_version('Poppler', '0.18')"],
    most: 60,
    fill: inPython("poppler"),
  },
  {
    name: "PDFBox",
    needs: ["sh", "-c", `java --list-modules | grep -q jdk.compiler && test -e ${pdfbox[0]}`],
    most: 40,
    fill: inJava,
  },
  // Neither has form fields in what it makes of a PDF, whichever program of the suite opens it.
  ...(["draw", "writer"] as const).map(
    (part): Writer => ({
      name: `LibreOffice ${part}`,
      needs: ["soffice", "--version"],
      most: 6,
      gives: "printed",
      fill: each(({ filled }) => libreOffice(filled, part)),
    }),
  ),
  { name: "Chromium's viewer", needs: ["chromium", "--version"], most: 8, fill: fillInChromium },
];

const mupdf = "tests/make/pages/fill-mupdf.js";

/** What a buyer types: a box that is not ticked is left alone. */
function typed(values: SheetValues): Record<string, string | true> {
  return Object.fromEntries(
    Object.entries(values).filter(
      (entry): entry is [string, string | true] => entry[1] !== false && entry[1] !== "",
    ),
  );
}

/** A program that is run once for each sheet, with the paths of the blank, of what is to be made, and of the values. */
function inFolder(
  sheets: readonly SampleSheet[],
  args: (from: string, to: string, values: string) => readonly string[],
  program: string,
): (Uint8Array | undefined)[] {
  const folder = mkdtempSync(join(tmpdir(), "burin-honest-"));
  try {
    return sheets.map(({ blank, values }) => {
      // Several lines are more than this list of values can hold.
      if (Object.values(values).some((value) => String(value).includes("\n"))) return undefined;
      const [from, to, list] = ["from.pdf", "to.pdf", "values.txt"].map((name) => join(folder, name));
      if (from === undefined || to === undefined || list === undefined) return undefined;
      writeFileSync(from, blank);
      const lines = Object.entries(typed(values)).map(
        ([name, value]) => `${name}\t${value === true ? "Yes" : value}`,
      );
      writeFileSync(list, lines.join("\n"));
      run(program, "run", ...args(from, to, list));
      return readFileSync(to);
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function inPython(program: string): Writer["fill"] {
  return (sheets) => atOnce(sheets, JSON.stringify, "/usr/bin/python3", "tests/make/pages/fill.py", program);
}

/** A line for each field: Java has no JSON of its own. */
function inJava(sheets: readonly SampleSheet[]): Promise<Uint8Array[]> {
  const lines = (values: SheetValues): string =>
    Object.entries(typed(values))
      .map(([name, value]) => `${name}\t${String(value).replaceAll("\n", "\\n")}`)
      .join("\n");
  return atOnce(sheets, lines, "java", "-cp", pdfbox.join(":"), "tests/make/pages/FillByPdfbox.java");
}

/** A program that is run once for all sheets: a line of three paths for each, of the blank, of its values, of what is to be made. */
function atOnce(
  sheets: readonly SampleSheet[],
  written: (values: SheetValues) => string,
  program: string,
  ...args: readonly string[]
): Promise<Uint8Array[]> {
  const folder = mkdtempSync(join(tmpdir(), "burin-honest-"));
  const jobs = sheets.map(({ blank, values }, i) => {
    const [from, list, to] = [`${i}.pdf`, `${i}.json`, `${i}-filled.pdf`].map((name) => join(folder, name));
    writeFileSync(String(from), blank);
    writeFileSync(String(list), written(values));
    return [from, list, to] as [string, string, string];
  });
  const input = jobs.map((job) => job.join(" ")).join("\n");
  const { status, stderr } = spawnSync(program, args, { input, encoding: "utf8" });
  if (status !== 0) throw new Error(`${args.at(-1)} failed: ${stderr}`);
  const made = jobs.map(([, , to]) => readFileSync(to));
  rmSync(folder, { recursive: true, force: true });
  return Promise.resolve(made);
}
