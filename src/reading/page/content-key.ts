import { createHash, type Hash } from "node:crypto"; // a pure function of bytes
import { PDFArray, PDFDict, PDFName, type PDFObject, PDFRawStream, PDFRef } from "pdf-lib";
import { contentOf } from "../pdf/pdf-value.ts";
import { contentOfPage, type WalkedPage } from "../pdf/walked-pages.ts";

/** Bytes of a page's content, objects of its resources, and bytes of each, beyond which no key is made. */
const most = { content: 400_000, objects: 2_000, stream: 200_000 };

/**
 * A hash of what a page holds: its content and all that this draws with, however they are packed. Undefined for a page
 * that is larger than forms are, or broken.
 */
export function contentKey(page: WalkedPage): string | undefined {
  try {
    const hash = createHash("sha256").update(contentOfPage(page, most.content), "latin1");
    feed(hash, page.resources, new Map());
    return hash.digest("hex");
  } catch {
    return undefined;
  }
}

/** References are followed; an object met again is told by its number. What leads back up the tree of pages is left out. */
function feed(hash: Hash, object: PDFObject | undefined, seen: Map<PDFObject, number>): void {
  if (object === undefined) {
    hash.update("nothing");
    return;
  }
  if (!(object instanceof PDFDict || object instanceof PDFArray || object instanceof PDFRawStream)) {
    hash.update(object.toString());
    return;
  }
  const before = seen.get(object);
  if (before !== undefined) {
    hash.update(`again ${before}`);
    return;
  }
  seen.set(object, seen.size);
  if (seen.size > most.objects) throw new Error("the resources are endless");
  if (object instanceof PDFArray) {
    hash.update(`[${object.size()}`);
    for (let i = 0; i < object.size(); i++) feed(hash, object.lookup(i), seen);
    return;
  }
  const dict = object instanceof PDFDict ? object : object.dict;
  const packing = new Set(
    object instanceof PDFDict ? ["Parent"] : ["Parent", "Length", "Filter", "DecodeParms"],
  );
  const keys = dict.keys().filter((key) => !packing.has(key.decodeText()));
  for (const key of keys.toSorted((a, b) => (a.asString() < b.asString() ? -1 : 1))) {
    hash.update(key.asString());
    const entry = dict.get(key);
    feed(hash, entry instanceof PDFRef ? dict.context.lookup(entry) : entry, seen);
  }
  if (object instanceof PDFRawStream)
    hash.update(dict.has(PDFName.of("Filter")) ? contentOf(object, most.stream) : object.contents);
}
