import { PDFDict, PDFName, PDFNumber, PDFRawStream } from "pdf-lib";
import { operatorsIn } from "../pdf/content-operators.ts";
import { contentOf, dictsIn, entryOf } from "../pdf/pdf-value.ts";
import { contentOfPage, type WalkedPage } from "../pdf/walked-pages.ts";

/** Every viewer draws drawings within drawings to this depth. PDFium leaves out those deeper than 40. */
const deepest = 20;
/** Bytes of drawings that are looked at, and pixels of an image that PDFium surely draws. */
const most = { bytes: 8_000_000, pixels: 50_000_000 };

/** A walk over the drawings of a page. */
interface Walk {
  left: number;
  /** Drawings that were walked to their end. */
  readonly done: Set<PDFRawStream>;
  /** Drawings that are being walked, one within the other. */
  readonly open: Set<PDFRawStream>;
}

/**
 * Whether PDFium may leave out what other viewers draw: drawings deep within each other, drawings that draw
 * themselves or are endless, and images that are too large. `own` leaves the page itself out, so that only its
 * fields' drawings are looked at.
 */
export function drawsBeyond(page: WalkedPage, own = false): boolean {
  const walk: Walk = { left: most.bytes, done: new Set(), open: new Set() };
  const inFields = dictsIn(page.dict, "Annots").flatMap((annotation) => {
    const looks = entryOf(annotation, "AP");
    const look = looks instanceof PDFDict ? entryOf(looks, "N") : undefined;
    const states = look instanceof PDFDict ? look.keys().map((key) => look.lookup(key)) : [look];
    return states.filter((one) => one instanceof PDFRawStream);
  });
  return (
    inFields.some((look) => isBeyond(look, undefined, walk)) ||
    (!own && within(() => contentOfPage(page, walk.left), page.resources, walk))
  );
}

function isBeyond(drawing: PDFRawStream, above: PDFDict | undefined, walk: Walk): boolean {
  if (walk.open.has(drawing) || walk.open.size > deepest) return true;
  if (walk.done.has(drawing)) return false;
  const resources = entryOf(drawing.dict, "Resources");
  const own = resources instanceof PDFDict ? resources : above;
  walk.open.add(drawing);
  const found = within(() => contentOf(drawing, walk.left), own, walk);
  walk.open.delete(drawing);
  walk.done.add(drawing);
  return found;
}

/** Whether a content draws something too large. */
function within(content: () => string, resources: PDFDict | undefined, walk: Walk): boolean {
  const drawings = resources && entryOf(resources, "XObject");
  if (!(drawings instanceof PDFDict) || drawings.keys().length === 0) return false;
  const text = safely(content);
  if (text === undefined) return true;
  walk.left -= text.length;
  for (const { name, operands } of operatorsIn(text)) {
    if (name !== "Do") continue;
    const drawing = entryOf(drawings, String(operands.at(-1)).slice(1));
    if (!(drawing instanceof PDFRawStream)) continue;
    const isImage = entryOf(drawing.dict, "Subtype") === PDFName.of("Image");
    if (isImage ? pixelsOf(drawing) > most.pixels : isBeyond(drawing, resources, walk)) return true;
  }
  return false;
}

function pixelsOf({ dict }: PDFRawStream): number {
  const [width = 0, height = 0] = ["Width", "Height"].map((key) => {
    const side = entryOf(dict, key);
    return side instanceof PDFNumber ? side.asNumber() : 0;
  });
  return width * height;
}

function safely(content: () => string): string | undefined {
  try {
    return content();
  } catch {
    return undefined; // endless, or broken
  }
}
