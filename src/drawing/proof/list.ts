import { wrap } from "../blank/appearance.ts";
import { palette } from "../blank/canvas.ts";
import { outlineLooks } from "../kinds.ts";
import { margin } from "./furniture.ts";
import type { Entry } from "./schedule.ts";
import { inOneLine, lines, type Shape, words } from "./shapes.ts";
import { short } from "./short.ts";

/** Millimetres. */
const size = 3.3;
const leading = 4.3;
const padding = 1.4;
const headHeight = 6;

/** Where each column begins, from the left margin, and its title. The last reaches to the right margin. */
const columns = [
  { key: "part", at: 0, title: "Part" },
  { key: "legends", at: 14, title: "Legends" },
  { key: "make", at: 116, title: "Make" },
  { key: "letters", at: 172, title: "Letters" },
  { key: "file", at: 218, title: "Sheet" },
] as const;

/** Lines of one cell at most, since a stranger may have typed without end. */
const mostLines = 12;

/** A part's row: its cells, each broken to lines. */
interface Row {
  readonly cells: readonly (readonly string[])[];
  readonly height: number;
  readonly colour: string;
}

export function listHeight(entries: readonly Entry[], width: number): number {
  return rowsOf(entries, width).reduce((sum, { height }) => sum + height, headHeight);
}

/** The entries shared out among pages on which the list has so much room. */
export function pagesOfList(entries: readonly Entry[], width: number, room: number): Entry[][] {
  const pages: Entry[][] = [];
  for (const entry of entries) {
    const page = pages.at(-1);
    if (page !== undefined && listHeight([...page, entry], width) <= room) page.push(entry);
    else pages.push([entry]);
  }
  return pages;
}

/** What is made, part by part. What is still to come stands out. */
export function list(entries: readonly Entry[], top: number, width: number): Shape[] {
  const titles = columns.map(({ title, at }) =>
    words(title, margin + at, top + 3.6, { size, colour: palette.quiet }),
  );
  let y = top + headHeight;
  return [
    ...titles,
    ...rowsOf(entries, width).flatMap(({ cells, height, colour }) => {
      const above = y;
      y += height;
      return [
        lines(
          [
            [
              [margin, above],
              [margin + width, above],
            ],
          ],
          { colour: palette.line, thickness: 0.15 },
        ),
        ...columns.flatMap(({ at }, i) =>
          (cells[i] ?? []).map((line, n) =>
            words(line, margin + at, above + padding / 2 + (n + 0.8) * leading, { size, colour }),
          ),
        ),
      ];
    }),
  ];
}

function rowsOf(entries: readonly Entry[], width: number): Row[] {
  return entries.map((entry) => {
    const { part, legends, make, letters, file = "sheet still to come" } = entry;
    const said = { part: [part], legends, make, letters, file: [file] };
    const cells = columns.map(({ key, at }, i) => broken(said[key], (columns[i + 1]?.at ?? width) - at - 3));
    return {
      cells,
      height: Math.max(...cells.map(({ length }) => length)) * leading + padding,
      colour: entry.file === undefined ? outlineLooks.fail.colour : palette.ink,
    };
  });
}

function broken(says: readonly string[], room: number): string[] {
  const all = says.flatMap((line) => wrap(inOneLine(line), size, room));
  const shown = all.length > mostLines ? [...all.slice(0, mostLines - 1), "… and more on the sheet"] : all;
  return shown.map((line) => short(line, room, size));
}
