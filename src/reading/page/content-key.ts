import { createHash, type Hash } from "node:crypto"; // a pure function of bytes
import { PDFArray, PDFDict, PDFHexString, PDFName, type PDFObject, PDFRawStream, PDFString } from "pdf-lib";
import { contentOf, textOf } from "../pdf/pdf-value.ts";
import { contentOfPage, type WalkedPage } from "../pdf/walked-pages.ts";

/**
 * Beyond these no key is made: bytes of a page's content, number of objects, bytes of a stream that a page draws with,
 * and bytes of any other stream.
 */
const most = { content: 400_000, objects: 2_000, stream: 200_000, file: 8_000_000 };

/**
 * A hash of what a page holds: its content, and all that the content draws with, however it is packed. Undefined for
 * a page that is broken, or larger than forms are.
 */
export function contentKey(page: WalkedPage): string | undefined {
  try {
    const hash = createHash("sha256").update(contentOfPage(page, most.content), "latin1");
    feed(hash, page.resources, new Map(), most.stream);
    return hash.digest("hex");
  } catch {
    return undefined;
  }
}

/** A hash of an object and of all that it leads to, without pages and fields. Undefined for an endless one. */
export function objectKey(object: PDFObject | undefined): string | undefined {
  try {
    const hash = createHash("sha256");
    feed(hash, object, new Map(), most.file);
    return hash.digest("hex");
  } catch {
    return undefined;
  }
}

/**
 * Feeds an object to a hash. References are followed. An object met again is told by its number. What leads back up
 * the tree of pages is left out.
 */
function feed(
  hash: Hash,
  object: PDFObject | undefined,
  seen: Map<PDFObject, number>,
  mostStream: number,
): void {
  if (object === undefined) {
    hash.update("nothing");
    return;
  }
  if (object instanceof PDFString || object instanceof PDFHexString) {
    // The same however the string is written.
    hash.update("string").update(object.asBytes());
    return;
  }
  if (object instanceof PDFDict && isPlace(object)) {
    hash.update(`place ${textOf(object.lookup(PDFName.of("T")))}`);
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
    for (let i = 0; i < object.size(); i++) feed(hash, object.lookup(i), seen, mostStream);
    return;
  }
  const dict = object instanceof PDFDict ? object : object.dict;
  const packing = new Set(
    object instanceof PDFDict ? ["Parent"] : ["Parent", "Length", "Filter", "DecodeParms"],
  );
  const keys = dict.keys().filter((key) => !packing.has(key.decodeText()));
  for (const key of keys.toSorted((a, b) => (a.asString() < b.asString() ? -1 : 1))) {
    hash.update(key.asString());
    feed(hash, dict.lookup(key), seen, mostStream);
  }
  if (object instanceof PDFRawStream)
    hash.update(dict.has(PDFName.of("Filter")) ? contentOf(object, mostStream) : object.contents);
}

/** A page or a field, to which an action leads. */
function isPlace(dict: PDFDict): boolean {
  return dict.get(PDFName.of("Type")) === PDFName.of("Page") || dict.has(PDFName.of("FT"));
}
