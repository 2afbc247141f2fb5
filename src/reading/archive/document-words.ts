import type { FileWords } from "../facts.ts";

/** Parts of a document that say something in words. ECMA-376-1 §11.3, OpenDocument 1.2 part 3 §3.1 */
export const wordParts = /^(?:word\/(?:document|comments|footnotes|header\d*|footer\d*)|content)\.xml$/i;

const named: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** Elements that are no part of the text. */
const unsaid = ["office:font-face-decls", "text:tracked-changes"];

function without(xml: string, tag: string): string {
  const from = xml.indexOf(`<${tag}`);
  const to = xml.indexOf(`</${tag}>`, from);
  return from < 0 || to < 0 ? xml : xml.slice(0, from) + xml.slice(to);
}

/**
 * The words in the XML of a word processor's document, a line a paragraph. Unsure if some are struck out. Text that
 * was deleted while changes were tracked is not read.
 */
export function documentWords(parts: readonly string[]): FileWords {
  const xml = unsaid.reduce(without, parts.join("\n"));
  const struck = /<w:d?strike(?: w:val="(?:true|1|on)")?\s*\/>|text-line-through-style="(?!none)/i.test(xml);
  const text = xml
    .replace(/<w:(delText|instrText)\b[^<>]*>[^<>]*<\/w:\1>/g, "")
    .replace(/<\/(?:w|text):(?:p|h)>|<(?:w:br|w:cr|text:line-break)\b[^<>]*>/g, "\n")
    .replace(/<(?:w:tab|text:tab|text:s)\b[^<>]*>/g, " ")
    .replace(/<[^<>]*>/g, "")
    .replace(
      /&(?:#x([\da-f]{1,6})|#(\d{1,7})|(\w{2,4}));/gi,
      (whole, hex?: string, dec?: string, name?: string) => {
        if (name !== undefined) return named[name] ?? whole;
        const code = hex === undefined ? Number(dec) : Number.parseInt(hex, 16);
        return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
      },
    );
  return { text, ...(struck ? { unsure: true } : {}) };
}
