import type { PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Box, PageMark } from "../facts.ts";
import { around, standsIn } from "./boxes.ts";

/** People fill in no page with more pieces of text. */
const mostItems = 20_000;

interface TextItem {
  readonly str: string;
  /** ISO 32000-1:2008 §9.4.4: from text space to page. Its last two numbers are where the text begins. */
  readonly transform: readonly [number, number, number, number, number, number];
  readonly width: number;
  readonly height: number;
}

/**
 * The text printed on a page within the frames of fields, in the page's own coordinates. Throws for a page that is
 * too large.
 */
export async function textWithin(page: PDFPageProxy, frames: readonly Box[]): Promise<PageMark[]> {
  if (frames.length === 0) return [];
  const texts = await textOn(page);
  return texts
    .filter(({ box }) => frames.some((frame) => standsIn(box, frame)))
    .map(({ box, text }) => ({ what: "text", box, text }));
}

/** Every piece of text printed on a page, in its own coordinates. Throws for a page that is too large. */
export async function textOn(page: PDFPageProxy): Promise<{ readonly text: string; readonly box: Box }[]> {
  const texts: { text: string; box: Box }[] = [];
  const reader = page.streamTextContent({ includeMarkedContent: false }).getReader();
  let count = 0;
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    const { items } = part.value as { readonly items: readonly TextItem[] };
    count += items.length;
    if (count > mostItems) {
      await reader.cancel();
      throw new Error("the page has endless text");
    }
    for (const item of items) if (item.str.trim() !== "") texts.push({ text: item.str, box: boxOf(item) });
  }
  return texts;
}

function boxOf({ transform, width, height }: TextItem): Box {
  const [a, b, c, d, x, y] = transform;
  const [along, up] = [Math.hypot(a, b) || 1, Math.hypot(c, d) || 1];
  const end = (w: number, h: number) =>
    [x + (w * a) / along + (h * c) / up, y + (w * b) / along + (h * d) / up] as const;
  return around([end(0, 0), end(width, 0), end(0, height), end(width, height)]);
}
