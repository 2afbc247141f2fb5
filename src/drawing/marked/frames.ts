import { type PDFDict, PDFName, PDFNumber } from "pdf-lib";
import type { Box } from "../../reading/facts.ts";
import { areaOf, around } from "../../reading/pdf/boxes.ts";
import { dictsIn, entryOf, rectangleOf, textOf } from "../../reading/pdf/pdf-value.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { inherited, shownPage, upwards } from "./page.ts";
import type { MarkedProblem } from "./problem.ts";

/** A part of a page that problems point at, in the page's own coordinates. */
export interface Frame {
  readonly box: Box;
  readonly problems: readonly MarkedProblem[];
}

/** ISO 32000-1:2008 table 165: hidden, not shown on the screen. */
const hiddenFlags = (1 << 1) | (1 << 5);

/**
 * What is to be outlined on a page. Boxes that make one choice are outlined together, and every other field by
 * itself. Two problems with the same outline share it. `number` is that of the page, from 1 on.
 */
export function framesOn(
  page: PDFDict,
  number: number,
  { prints }: Sheet,
  problems: readonly MarkedProblem[],
): Frame[] {
  const widgets = dictsIn(page, "Annots").flatMap((widget) => widgetOf(widget) ?? []);
  const found = new Map<string, Frame>();
  const outline = (box: Box, problem: MarkedProblem): void => {
    const others = found.get(String(box))?.problems ?? [];
    found.set(String(box), { box, problems: [...new Set([...others, problem])] });
  };
  for (const problem of problems) {
    for (const { page: where, box } of problem.seen ?? [])
      if (where === number && box !== undefined && areaOf(box) > 0)
        outline(shownPage(page).fromCorner(box), problem);
    for (const place of problem.places) {
      const print = prints[place];
      const names = print === undefined ? [] : [print.field, ...(print.besides ?? [])];
      const here = widgets.filter(({ name }) => names.includes(name));
      const together = here.every(({ ticked }) => ticked) ? around(cornersOf(here)) : undefined;
      for (const box of together ? [together] : here.map(({ box }) => box)) outline(box, problem);
    }
  }
  return [...found.values()];
}

interface Widget {
  readonly name: string;
  readonly box: Box;
  readonly ticked: boolean;
}

/** A field at one place where it shows; undefined for anything else. */
function widgetOf(widget: PDFDict): Widget | undefined {
  const box = rectangleOf(entryOf(widget, "Rect"));
  const flags = entryOf(widget, "F");
  const hidden = flags instanceof PDFNumber && (flags.asNumber() & hiddenFlags) !== 0;
  if (box === undefined || areaOf(box) === 0 || hidden) return undefined;
  const name = fullName(widget);
  return name === "" ? undefined : { name, box, ticked: inherited(widget, "FT") === PDFName.of("Btn") };
}

function fullName(widget: PDFDict): string {
  const parts = [...upwards(widget)].map((node) => textOf(entryOf(node, "T")));
  return parts
    .filter((part) => part !== "")
    .toReversed()
    .join(".");
}

function cornersOf(widgets: readonly Widget[]): (readonly [number, number])[] {
  return widgets.flatMap(({ box: [left, bottom, right, top] }) => [
    [left, bottom],
    [right, top],
  ]);
}
