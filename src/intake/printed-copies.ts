import type { PdfFacts } from "../reading/facts.ts";
import type { Judged } from "../reading/judge.ts";
import type { OpenedFile } from "./open.ts";

/**
 * Tells of printed sheets which sheets that came beside them hold the same typing, page by page. Somebody may have drawn
 * on the print, so that a person still looks at it.
 */
export function withPrintedCopies(files: readonly OpenedFile[], judged: readonly Judged[]): Judged[] {
  const sheets = files
    .filter((_, i) => judged[i]?.sheet !== undefined)
    .map(({ attachment: { file }, facts }) => ({ file, typed: typedIn(facts) }))
    .filter(({ typed }) => typed.length > 0);
  return judged.map((one, i) => {
    const pages = sheets.length === 0 ? [] : printedPages(one, files[i]?.facts);
    const copies = pages.map((page) =>
      sheets.find(({ typed }) => typed.every((text) => page.includes(text))),
    );
    const [first, ...more] = new Set(copies.map((copy) => copy?.file));
    if (first === undefined || more.includes(undefined)) return one;
    return { ...one, file: { ...one.file, copyOf: [first, ...more.filter((file) => file !== undefined)] } };
  });
}

/** What stands on each page of a print of sheets; nothing of what is none, or was not looked at whole. */
function printedPages({ file: { kind } }: Judged, facts: OpenedFile["facts"] = "unsafe"): string[] {
  if (kind !== "printed" || !isPdf(facts)) return [];
  const { pages = [], pageCount } = facts;
  return pages.length === pageCount ? pages.map(({ text }) => plain(text)) : [];
}

/** What was typed into the fields of a sheet. What was chosen may show as a dot. */
function typedIn(facts: OpenedFile["facts"]): string[] {
  if (!isPdf(facts)) return [];
  return facts.fields
    .filter(({ kind }) => kind === "text")
    .flatMap(({ values }) => values.map(plain))
    .filter((text) => text !== "");
}

function isPdf(facts: OpenedFile["facts"]): facts is PdfFacts {
  return typeof facts === "object" && facts.kind === "pdf";
}

function plain(text: string): string {
  return text.normalize("NFKC").replace(/\s+/gu, "");
}
