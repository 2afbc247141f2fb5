import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AnnotationMode, getDocument, OPS, type PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { installed, run } from "./look.ts";

/** What of ISO 14289-1 (PDF/UA-1) a file does not keep: the clause, and what was found. */
export type Fault = `${string}: ${string}`;

interface Node {
  readonly role?: string;
  readonly type?: string;
  readonly id?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

interface Annotation {
  readonly id: string;
  readonly subtype: string;
  readonly alternativeText?: string;
  readonly contentsObj?: { readonly str: string };
}

/**
 * Clauses of ISO 14289-1:2014 that a machine can look at, as pdf.js sees the file. It shares no code with what draws.
 * From memory of the standard and of the Matterhorn Protocol 1.1, whose checkpoints follow its clauses. Not looked at:
 * 7.6 to 7.9, 7.12 to 7.14 and 7.19 (lists, formulas, notes, threads and so on), which our files do not have.
 */
export async function faultsOf(bytes: Uint8Array): Promise<Fault[]> {
  const task = getDocument({
    data: bytes.slice(),
    verbosity: 0,
    useSystemFonts: false,
    disableFontFace: true,
  });
  const pdf = await task.promise;
  const faults: Fault[] = [];
  const must = (holds: boolean, fault: Fault): void => {
    if (!holds) faults.push(fault);
  };

  const { info, metadata } = (await pdf.getMetadata()) as {
    info: Record<string, unknown>;
    metadata: { getRaw(): string } | null;
  };
  const marks = (await pdf.getMarkInfo()) as unknown as ReadonlyMap<string, boolean> | null;
  must(/<pdfuaid:part>1<\/pdfuaid:part>/.test(metadata?.getRaw() ?? ""), "5: no pdfuaid:part");
  must(marks?.get("Marked") === true, "7.1: not marked");
  must(marks?.get("Suspects") !== true, "7.1: suspects");
  must(/<dc:title>.*<rdf:li[^>]*>[^<]+/s.test(metadata?.getRaw() ?? ""), "7.1: no dc:title");
  must(
    (await pdf.getViewerPreferences())?.get("DisplayDocTitle") === true,
    "7.1: the title is not displayed",
  );
  must(typeof info.Language === "string" && info.Language !== "", "7.2: no language");
  must((await pdf.getAttachments()) === null, "7.11: files in the file");
  must(info.IsXFAPresent !== true, "7.15: an XFA form");
  must(info.EncryptFilterName === null, "7.16: locked");
  must((await pdf.getJSActions()) === null, "7.19: programs");

  const headings: number[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    const tree = (await page.getStructTree()) as Node | null;
    const nodes = tree === null ? [] : all(tree);
    const where = `on page ${n}`;
    must(
      nodes.some(({ role }) => role === "Document"),
      `7.1: nothing tagged ${where}`,
    );
    for (const node of nodes) {
      const { role = "", alt = "", children = [] } = node;
      if (role === "Figure") must(alt !== "", `7.3: a figure without words ${where}`);
      if (/^H\d$/.test(role)) headings.push(Number(role[1]));
      if (role === "Table")
        must(
          children.every((child) => child.role === "TR"),
          `7.5: a table with more than rows ${where}`,
        );
      if (role === "TR")
        must(
          children.every((child) => child.role === "TH" || child.role === "TD"),
          `7.5: a row with more than cells ${where}`,
        );
      if (role !== "" && children.length === 0 && role !== "TD" && role !== "TH")
        faults.push(`7.1: an empty ${role} ${where}`);
    }
    const { faults: loose, ids } = await contentOf(page);
    faults.push(...loose.map((what): Fault => `7.1: ${what} ${where}`));
    const tagged = nodes.filter(({ type }) => type === "content").map(({ id = "" }) => id);
    must(same(ids, tagged), `7.1: content and tags differ ${where}`);

    const annotations = (await page.getAnnotations()) as Annotation[];
    const above = new Map(
      nodes.flatMap(({ role = "", children = [] }) =>
        children
          .filter(({ type }) => type === "annotation" || type === "object")
          .map(({ id = "" }) => [id, role]),
      ),
    );
    for (const { id, subtype, alternativeText = "", contentsObj } of annotations) {
      const role = [...above].find(([key]) => key.endsWith(id))?.[1];
      must(role !== undefined, `7.18.1: ${subtype} ${id} in no tag ${where}`);
      if (subtype === "Widget") {
        must(role === "Form", `7.18.4: a field in no form ${where}`);
        must(alternativeText !== "", `7.18.1: a field without a tip ${where}`);
      } else must((contentsObj?.str ?? "") !== "", `7.18.1: ${subtype} without words ${where}`);
      if (subtype === "Link") must(role === "Link", `7.18.5: a link in ${role} ${where}`);
    }
  }
  must(headings[0] === 1, "7.4.2: the first heading is no H1");
  must(
    headings.every((level, i) => i === 0 || level <= (headings[i - 1] ?? 0) + 1),
    "7.4.2: a level is left out",
  );
  await task.destroy();
  return [...new Set(faults)];
}

function all(node: Node): Node[] {
  return [node, ...(node.children ?? []).flatMap(all)];
}

function same(one: readonly string[], other: readonly string[]): boolean {
  return JSON.stringify([...one].toSorted()) === JSON.stringify([...other].toSorted());
}

/** Operators that leave something on the page. */
const painting = new Set<number>([
  OPS.showText,
  OPS.showSpacedText,
  OPS.nextLineShowText,
  OPS.constructPath,
  OPS.paintImageXObject,
  OPS.paintInlineImageXObject,
  OPS.paintFormXObjectBegin,
  OPS.shadingFill,
]);

/** The pieces of content that are tagged, and what is neither tagged nor decoration. */
async function contentOf(page: PDFPageProxy): Promise<{ faults: string[]; ids: string[] }> {
  const faults: string[] = [];
  const open: string[] = [];
  const { fnArray, argsArray } = await page.getOperatorList({
    annotationMode: AnnotationMode.DISABLE,
  });
  fnArray.forEach((operator, i) => {
    const [name] = (argsArray[i] ?? []) as unknown[];
    if (operator === OPS.beginMarkedContent || operator === OPS.beginMarkedContentProps) {
      if (open.length > 0) faults.push("marked content in marked content");
      open.push(String((name as { name?: string })?.name ?? name));
    } else if (operator === OPS.endMarkedContent) open.pop();
    else if (painting.has(operator)) {
      if (open.length === 0) faults.push("content that is not marked");
      if (open[0] === "Artifact" && operator === OPS.showText) faults.push("words as decoration");
    }
  });
  const { items } = await page.getTextContent({ includeMarkedContent: true });
  const ids = items.flatMap((item) =>
    "type" in item && item.type === "beginMarkedContentProps" && item.id !== null ? [item.id] : [],
  );
  return { faults, ids };
}

const folder = mkdtempSync(join(tmpdir(), "burin-ua-"));
let files = 0;

/** What poppler sees: 7.21.4.1 and 7.21.7 (fonts), 7.5 (scopes). Undefined if it is not installed. */
export function faultsByPoppler(bytes: Uint8Array): Fault[] | undefined {
  if (!installed("pdffonts") || !installed("pdfinfo")) return undefined;
  const file = join(folder, `${++files}.pdf`);
  writeFileSync(file, bytes);
  const fonts = run("pdffonts", file)
    .stdout.split("\n")
    .slice(2)
    .filter((line) => line !== "");
  const parts = run("pdfinfo", "-struct", file)
    .stdout.split("\n")
    .map((line) => line.trim());
  const info = run("pdfinfo", file).stdout;
  return [
    ...fonts.flatMap((line): Fault[] => {
      const [emb, , uni] = line.slice(72).trim().split(/\s+/);
      const [name = ""] = line.split(/\s+/);
      return [
        ...(emb === "yes" ? [] : [`7.21.4.1: ${name} is not in the file` as const]),
        ...(uni === "yes" ? [] : [`7.21.7: ${name} has no meanings` as const]),
      ];
    }),
    ...parts.flatMap((line, i): Fault[] =>
      line.startsWith("TH") && !/^\/Scope \/(?:Column|Row)/.test(parts[i + 1] ?? "")
        ? ["7.5: a heading of a table without a scope"]
        : [],
    ),
    ...(/^Tagged: +yes/m.test(info) ? [] : (["7.1: poppler finds it not tagged"] as const)),
  ];
}
