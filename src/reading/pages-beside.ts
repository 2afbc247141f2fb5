import type { Doubt } from "../trade/sheet.ts";
import type { Edition } from "./edition.ts";
import type { PageFacts, PdfFacts } from "./facts.ts";
import { areaOf } from "./pdf/boxes.ts";
import { carriesLabels } from "./recognise.ts";

/** A page of a sheet's file that does not belong to the sheet. */
export interface PageBeside extends PageFacts {
  /** Counted from 1. */
  readonly number: number;
  /** Fields of another form stand on it. */
  readonly isForm: boolean;
}

/**
 * Pages of the sender that hold no field of the sheet, among the pages that were looked at. Without an edition no
 * page is known to be the sheet's.
 */
export function pagesBeside({ pages = [], widgets }: PdfFacts, edition: Edition | undefined): PageBeside[] {
  // If no field shows at all, nobody can tell which pages are the sheet's.
  if (widgets.length === 0) return [];
  const names = new Set(edition?.fields.map(({ name }) => name));
  const own = new Set(widgets.filter(({ field }) => names.has(field)).map(({ page }) => page));
  const filled = new Set(widgets.map(({ page }) => page));
  return pages
    .map((page, i) => ({ ...page, number: i + 1, isForm: filled.has(i + 1) }))
    .filter(({ number, ours }) => !own.has(number) && ours !== true);
}

/** How many of some pages are printed or flattened sheets. */
export function printedSheets(pages: readonly PageFacts[], editions: readonly Edition[]): number {
  const alone = pages.filter(({ text }) => carriesLabels(text, editions)).length;
  const together = pages.map(({ text }) => text).join("\n");
  return alone > 0 ? alone : Number(carriesLabels(together, editions));
}

/** What stands on pages beside the sheet, and how many pages nobody looked at. */
export function doubtsBeside(beside: readonly PageBeside[], { pages, pageCount }: PdfFacts): Doubt[] {
  const numbers = (of: readonly PageBeside[]): number[] => of.map(({ number }) => number);
  const pictures = numbers(beside.filter((page) => isPicture(page) || page.drawn === true));
  const others = numbers(beside).filter((number) => !pictures.includes(number));
  const seen = pages?.length ?? 0;
  return [
    ...(pictures.length > 0 ? [{ what: "pictures-beside", pages: pictures } as const] : []),
    ...(others.length > 0 ? [{ what: "pages-beside", pages: others } as const] : []),
    ...(pages !== undefined && seen < pageCount
      ? [{ what: "pages-beyond", pages: [seen + 1, pageCount] } as const]
      : []),
  ];
}

const leastPicture = 0.7;

/** Whether pictures cover most of a page. */
export function isPicture({ width, height, marks }: PageFacts): boolean {
  const images = marks.filter(({ what }) => what === "image");
  const area = images.reduce((sum, { box }) => sum + areaOf(box), 0);
  return images.length > 0 && area >= leastPicture * width * height;
}
