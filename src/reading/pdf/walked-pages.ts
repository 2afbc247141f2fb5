import { PDFDict, type PDFDocument, PDFRawStream } from "pdf-lib";
import { contentOf, dictsIn, entryOf, listOf } from "./pdf-value.ts";

/** A page as it stands in the file. */
export interface WalkedPage {
  readonly dict: PDFDict;
  /** Its own or those that it inherits. ISO 32000-1:2008 §7.7.3.4 */
  readonly resources: PDFDict | undefined;
}

/** So many nodes of the page tree are looked at to find the first pages. */
const mostNodes = 2_000;

/** The first pages of a document, in their order. Circles and broken branches are skipped. */
export function firstPages({ catalog }: PDFDocument, count: number): WalkedPage[] {
  const pages: WalkedPage[] = [];
  const seen = new Set<PDFDict>();
  const root = entryOf(catalog, "Pages");
  const stack: WalkedPage[] = root instanceof PDFDict ? [{ dict: root, resources: undefined }] : [];
  for (let node = stack.pop(); node !== undefined && pages.length < count; node = stack.pop()) {
    if (seen.has(node.dict) || seen.size >= mostNodes) continue;
    seen.add(node.dict);
    const own = entryOf(node.dict, "Resources");
    const resources = own instanceof PDFDict ? own : node.resources;
    if (entryOf(node.dict, "Kids") === undefined) pages.push({ dict: node.dict, resources });
    else
      stack.push(
        ...dictsIn(node.dict, "Kids")
          .toReversed()
          .map((dict) => ({ dict, resources })),
      );
  }
  return pages;
}

/** The content of a page, one character a byte. Throws for more than `most` bytes. */
export function contentOfPage({ dict }: WalkedPage, most: number): string {
  const streams = listOf(entryOf(dict, "Contents")).filter((part) => part instanceof PDFRawStream);
  let content = "";
  // ISO 32000-1:2008 table 30: several streams are read as one. No token runs from one into the next.
  for (const stream of streams) content += `${contentOf(stream, most - content.length)}\n`;
  return content;
}
