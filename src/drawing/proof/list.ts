import { wrap } from "../blank/appearance.ts";
import { palette } from "../blank/canvas.ts";
import { outlineLooks } from "../kinds.ts";
import type { Entry } from "./schedule.ts";
import { inOneLine, lines, part, type Shape, words } from "./shapes.ts";
import { short } from "./short.ts";

/** Millimetres. */
const size = 3.3;
const leading = 4.3;
const padding = 1.4;
const headHeight = 6;

/** Where a list stands. Millimetres. */
export interface ListPlace {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

interface Column {
  readonly title: string;
  /** Where it begins, from the left. The last reaches to the right. */
  readonly at: number;
  readonly says: (entry: Entry) => readonly string[];
}

const fileOf = ({ file = "sheet still to come" }: Entry): string => file;

/** The columns of a list as wide as a page, and of one beside a drawing. */
const wide: readonly Column[] = [
  { title: "Part", at: 0, says: ({ part }) => [part] },
  { title: "Legends", at: 14, says: ({ legends }) => legends },
  { title: "Make", at: 116, says: ({ make }) => make },
  { title: "Letters", at: 172, says: ({ letters }) => letters },
  { title: "Sheet", at: 218, says: (entry) => [fileOf(entry)] },
];
const narrow: readonly Column[] = [
  { title: "Part", at: 0, says: ({ part }) => [part] },
  { title: "Legends", at: 12, says: ({ legends }) => legends },
  { title: "Make", at: 66, says: (entry) => [...entry.make, ...entry.letters, fileOf(entry)] },
];
const columnsFor = (width: number): readonly Column[] => (width >= 250 ? wide : narrow);

/** The least room of a list. */
export const leastWidth = 114;

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
export function listShapes(entries: readonly Entry[], { left, top, width }: ListPlace): Shape[] {
  const columns = columnsFor(width);
  const titles = columns.map(({ title, at }) =>
    part("TH", [words(title, left + at, top + 3.6, { size, colour: palette.quiet })], { scope: "Column" }),
  );
  let y = top + headHeight;
  const rows = rowsOf(entries, width).flatMap(({ cells, height, colour }) => {
    const above = y;
    y += height;
    const rule = [
      [left, above],
      [left + width, above],
    ] as const;
    const told = columns.map(({ at }, i) =>
      part(
        "TD",
        (cells[i] ?? []).map((line, n) =>
          words(line, left + at, above + padding / 2 + (n + 0.8) * leading, { size, colour }),
        ),
      ),
    );
    return [lines([rule], { colour: palette.line, thickness: 0.15 }), part("TR", told)];
  });
  return [part("Table", [part("TR", titles), ...rows])];
}

function rowsOf(entries: readonly Entry[], width: number): Row[] {
  const columns = columnsFor(width);
  return entries.map((entry) => {
    const cells = columns.map(({ at, says }, i) =>
      broken(says(entry), (columns[i + 1]?.at ?? width + 3) - at - 3),
    );
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
