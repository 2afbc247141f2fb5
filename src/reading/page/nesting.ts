import { PDFDict, PDFRawStream } from "pdf-lib";
import { entryOf } from "../pdf/pdf-value.ts";

/** Levels of drawings within drawings up to which every viewer draws them; PDFium leaves out what lies deeper than 40. */
const deepest = 20;
/** Drawings that are looked at. */
const most = 2_000;

/** Whether drawings lie so deep within each other, or are so many, that PDFium may not draw what other viewers do. */
export function nestsDeep(resources: PDFDict | undefined): boolean {
  const seen = new Set<PDFDict>();
  let level = resources === undefined ? [] : [resources];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > deepest || seen.size > most) return true;
    level = level.flatMap((one) => inside(one, seen));
  }
  return false;
}

function inside(resources: PDFDict, seen: Set<PDFDict>): PDFDict[] {
  const drawings = entryOf(resources, "XObject");
  if (!(drawings instanceof PDFDict) || seen.has(drawings)) return [];
  seen.add(drawings);
  return drawings.keys().flatMap((key) => {
    const drawing = drawings.lookup(key);
    const own = drawing instanceof PDFRawStream ? entryOf(drawing.dict, "Resources") : undefined;
    return own instanceof PDFDict ? [own] : [];
  });
}
