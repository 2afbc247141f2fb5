import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { Order } from "../../trade/order.ts";
import { palette } from "../blank/canvas.ts";
import { outlineLooks, type ProblemKind } from "../kinds.ts";
import { changed } from "./marks.ts";
import { scaleBar } from "./measures.ts";
import { block, inOneLine, part, type Shape, words } from "./shapes.ts";
import { short } from "./short.ts";

/** Which page of a proof this is: "2 of 11". */
export interface PageNumber {
  readonly page: number;
  readonly of: number;
}

/** Millimetres: around the page, and down from its margin for the head. */
export const margin = 8;
export const headHeight = 22;

/** What a page says of its order: which state of it is shown, and whether it is released. */
interface Shown {
  readonly state: readonly string[];
  readonly released: { readonly on: string; readonly by: string } | undefined;
}

/** Whose station it is, which state of it is shown, and that nothing is released by a mere proof. */
export function head(
  mark: string,
  order: Order,
  { state, released }: Shown,
  { maker }: Catalogue,
  width: number,
): Shape[] {
  const right = width - margin;
  const tag = { x: right - 60, y: margin, width: 60, height: 13.5 };
  const [title, below] =
    released === undefined
      ? ["PROOF", "not to be cut before released"]
      : ["RELEASED", inOneLine(`on ${released.on} by ${released.by}`)];
  const inTag = { colour: palette.star, align: "centre" } as const;
  const number = order.number === "" ? "No order number" : `Order ${order.number}`;
  const told = [number, ...(order.project === undefined ? [] : [order.project])];
  const room = tag.x - margin - 6;
  return [
    part("H1", [
      words(short(mark || "No station mark", room, 9, "bold"), margin, margin + 7.5, {
        size: 9,
        bold: true,
        colour: palette.ink,
      }),
    ]),
    words(short(dotted(told), room, 4.2), margin, margin + 14, { size: 4.2, colour: palette.ink }),
    words(dotted(state), margin, margin + 19.5, { size: 3.4, colour: palette.quiet }),
    block(tag, { radius: 1.5, line: { colour: palette.star, thickness: 0.5 } }),
    words(title, tag.x + tag.width / 2, tag.y + 6, { ...inTag, size: 5, bold: true }),
    words(short(below, tag.width - 4, 3.4), tag.x + tag.width / 2, tag.y + 11, { ...inTag, size: 3.4 }),
    words(maker.name, right, margin + 19.5, { size: 3.4, colour: palette.quiet, align: "right" }),
  ];
}

/** Where it can hurt somebody, the drawing decides nothing. */
const caution =
  "Legends are cut as drawn. The program does not know the wiring. Emergency lighting, egress and disconnects: " +
  "local code and a licensed electrician decide.";

/** Millimetres that the foot takes above the margin. */
export const footHeight = 12;

/** What an outline of each kind asks for. */
const asks = {
  fail: "unbroken outline: to be corrected",
  person: "dotted outline: one of us is looking at it",
  confirm: "broken outline: a question",
} as const satisfies Record<ProblemKind, string>;

/** What stands out on a page, and whether its list follows on the next one. */
interface StandsOut {
  readonly faults: readonly ProblemKind[];
  readonly changes: boolean;
  readonly listFollows: boolean;
}

/** How to know a print at true scale, and what the drawing does not promise. */
export function foot(
  { width, height }: { readonly width: number; readonly height: number },
  { page, of }: PageNumber,
  { faults, changes, listFollows }: StandsOut,
): Shape[] {
  const [y, right] = [height - margin, width - margin];
  const quiet = { size: 3, colour: palette.quiet } as const;
  const says = [
    ...(listFollows ? ["What it is made of: next page."] : []),
    "Colours are approximate.",
    ...(of > 1 ? [`Page ${page} of ${of}`] : []),
  ];
  const [gravest] = faults;
  return [
    words(caution, margin, y - 8, quiet),
    part("Figure", scaleBar(margin, y), { alt: "A bar of 50 mm" }),
    words("Printed at 100 %, this bar measures 50 mm.", margin + 69, y, quiet),
    words(says.join("   "), right, y, { ...quiet, align: "right" }),
    ...(changes
      ? [words("Outlined in blue: changed by a newer sheet.", margin, y - 4.4, { ...quiet, colour: changed })]
      : []),
    ...(gravest === undefined
      ? []
      : [
          words(`Numbers as in the answer; ${faults.map((kind) => asks[kind]).join("; ")}.`, right, y - 4.4, {
            ...quiet,
            colour: outlineLooks[gravest].colour,
            align: "right",
          }),
        ]),
  ];
}

function dotted(parts: readonly string[]): string {
  return parts.join("   ·   ");
}
