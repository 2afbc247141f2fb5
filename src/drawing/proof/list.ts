import { palette } from "../blank/canvas.ts";
import { margin } from "./furniture.ts";
import { faulty } from "./marks.ts";
import type { Entry } from "./schedule.ts";
import { lines, type Shape, words } from "./shapes.ts";
import { short } from "./short.ts";

/** Millimetres. */
const rowHeight = 4.1;
const size = 3.2;

/** Where each column begins, from the left margin. */
const columns = [
  { key: "part", at: 0 },
  { key: "make", at: 13 },
  { key: "colours", at: 58 },
  { key: "font", at: 104 },
  { key: "letters", at: 142 },
  { key: "cutter", at: 168 },
  { key: "file", at: 186 },
] as const;

const titles = {
  part: "Part",
  make: "Make",
  colours: "Colours",
  font: "Font",
  letters: "Letters",
  cutter: "Cutter",
  file: "Sheet",
} as const satisfies Record<keyof Entry, string>;

export function listHeight(entries: readonly Entry[]): number {
  return (entries.length + 1) * rowHeight;
}

/** What is made, a line a part. What is still to come stands out. */
export function list(entries: readonly Entry[], top: number, width: number): Shape[] {
  const row = (cells: (key: keyof Entry) => string, y: number, colour: string): Shape[] =>
    columns.map(({ key, at }, i) => {
      const room = (columns[i + 1]?.at ?? width) - at - 2;
      return words(short(cells(key), room, size), margin + at, y, { size, colour });
    });
  return [
    ...row((key) => titles[key], top + 3.1, palette.quiet),
    ...entries.flatMap((entry, i) => {
      const y = top + (i + 1) * rowHeight;
      const line = { colour: palette.line, thickness: 0.15 };
      const colour = entry.file === undefined ? faulty : palette.ink;
      return [
        lines(
          [
            [
              [margin, y],
              [margin + width, y],
            ],
          ],
          line,
        ),
        ...row((key) => entry[key] ?? "sheet still to come", y + 3.1, colour),
      ];
    }),
  ];
}
