import { PDFArray, type PDFDict, PDFRawStream } from "pdf-lib";
import { contentOf, entryOf, textOf } from "../pdf/pdf-value.ts";
import { objectKey } from "./content-key.ts";

/** Bytes of the typed part of such a form that are read. */
const mostBytes = 4_000_000;

/** The parts of an XFA form that hold what was typed. A program that fills the form in writes them anew. */
const typedIn: readonly string[] = ["datasets", "form"];

/**
 * Keys of the parts of an XFA form, which some viewers show instead of the fields. ISO 32000-1:2008 §12.7.8. Each
 * typed text that no field holds has a key of its own.
 */
export function formsBeside(form: PDFDict | undefined, values: ReadonlySet<string>): (string | undefined)[] {
  const parts = form && entryOf(form, "XFA");
  if (parts === undefined) return [];
  if (!(parts instanceof PDFArray)) return [objectKey(parts)];
  // Names and streams alternate.
  return Array.from({ length: Math.ceil(parts.size() / 2) }, (_, i) => i * 2).flatMap((i) => {
    const [name, part] = [textOf(parts.lookup(i)), parts.lookup(i + 1)];
    return typedIn.includes(name) && part instanceof PDFRawStream
      ? textsOf(part).filter((text) => text === undefined || !values.has(text))
      : [objectKey(part)];
  });
}

/** The texts between the tags, entities decoded. A single undefined if they cannot be read. */
function textsOf(part: PDFRawStream): (string | undefined)[] {
  try {
    const xml = Buffer.from(contentOf(part, mostBytes), "latin1").toString("utf8");
    return (
      xml
        .replaceAll(/<[^>]*>/g, "\n")
        .split("\n")
        .map((text) => plain(text).trim())
        // Values of boxes are left out.
        .filter((text) => !/^[01]?$/.test(text))
    );
  } catch {
    return [undefined];
  }
}

const entities: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function plain(text: string): string {
  return text.replaceAll(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(\w{2,4}));/gi, (all, hex, decimal, name) => {
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    return name === undefined
      ? code <= 0x10ffff
        ? String.fromCodePoint(code)
        : all
      : (entities[name] ?? all);
  });
}
