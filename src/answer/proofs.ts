import { type Catalogue, finishOf, layoutOf, letteringOf } from "../catalogue/catalogue.ts";
import { facesOf } from "../catalogue/faces.ts";
import { hasText } from "../trade/legend.ts";
import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import { alongTheWall } from "./along-the-wall.ts";
import { type Files, nameOf } from "./named-files.ts";
import { oneLine } from "./one-line.ts";
import type { Proof } from "./outline.ts";

/** What will be cut on each sheet of an order, for the buyer to read once more. */
export function proofsOf(order: Order, catalogue: Catalogue, files: Files): Proof[] {
  return alongTheWall(order).map(({ subject: sheet }) => {
    const { name, what, earlier } = nameOf(files, sheet.id);
    return {
      heading: earlier ? `${name} (earlier letter)` : name,
      hint: `${what}; ${makeOf(sheet, catalogue)}`,
      faces: facesFor(sheet, catalogue),
    };
  });
}

/**
 * The table of one sheet's faces. Each row of a legend has a column of its own, so that two words in one column are
 * of one row.
 */
function facesFor(sheet: Sheet, catalogue: Catalogue): Proof["faces"] {
  const faces = (facesOf(sheet, catalogue) ?? []).map((face) => {
    const legend = sheet.legends.find((one) => one.face === face);
    const name = face === "plate" ? "Plate" : `${sheet.kind === "plate" ? "Gang" : "Button"} ${face}`;
    return { name, rows: legend !== undefined && hasText(legend) ? legend.rows : undefined };
  });
  // A form has as many rows as the layout with the most. What none has filled needs no column.
  const last = Math.max(-1, ...faces.map(({ rows = [] }) => rows.findLastIndex((row) => row.trim() !== "")));
  return [
    ["", ...Array.from({ length: last + 1 }, (_, i) => `row ${i + 1}`)],
    ...faces.map(({ name, rows }) => [
      name,
      ...(rows?.slice(0, last + 1).map((row) => oneLine(row, 60)) ?? ["left plain"]),
    ]),
  ];
}

/** "Four buttons, Oat with Ink lettering". */
function makeOf(sheet: Sheet, catalogue: Catalogue): string {
  const finish = finishOf(catalogue, sheet.finish ?? "")?.name ?? sheet.finish ?? "no finish";
  const lettering = letteringOf(catalogue, sheet.lettering ?? "")?.name ?? sheet.lettering ?? "no";
  const colours = `${finish} with ${lettering} lettering`;
  if (sheet.kind === "plate") return oneLine(colours, 80);
  const layouts = sheet.layouts.map((code) => layoutOf(catalogue, code)?.name ?? code);
  const place = sheet.legendPlace === undefined ? [] : [`legend at ${sheet.legendPlace}`];
  return oneLine([...layouts, colours, ...place].join(", "), 120);
}
