import type { Sheet } from "../../trade/sheet.ts";
import { wrap } from "../blank/appearance.ts";
import { letter, palette } from "../blank/canvas.ts";
import { block, type Drawing, inOneLine, lines, part, type Shape, words } from "../proof/shapes.ts";
import { short } from "../proof/short.ts";
import { headOf, looks, type MarkedProblem } from "./problem.ts";

/** Millimetres. */
const paper = { width: (letter.long * 25.4) / 72, height: (letter.short * 25.4) / 72 };
const margin = 16;
const indent = 12;
const size = 4;
const leading = 5.4;
/** Lines of one sentence at most, since a stranger may have typed a part of it without end. */
const mostLines = 8;
const mostLabels = 6;

/** Every problem with what to do about it: one page or more, US Letter on its long side. */
export function problemList(
  sheet: Sheet,
  problems: readonly MarkedProblem[],
  instruction: readonly string[],
): Drawing[] {
  const pages: Shape[][] = [];
  const { title } = headOf(problems);
  const told = instruction.flatMap((line) => lined(line, paper.width - 2 * margin));
  let top = Number.POSITIVE_INFINITY;
  for (const entry of problems.map((problem) => entryOf(problem, sheet))) {
    if (top + entry.height > paper.height - margin) {
      pages.push(head(title, sheet, told));
      top = margin + 17 + told.length * leading;
    }
    pages.at(-1)?.push(...entry.shapes(top));
    top += entry.height;
  }
  return pages.map((shapes) => ({ ...paper, title, shapes }));
}

function head(title: string, sheet: Sheet, instruction: readonly string[]): Shape[] {
  const whose = [
    sheet.file,
    ...(sheet.order === undefined ? [] : [`Order ${sheet.order}`]),
    ...(sheet.mark === undefined ? [] : [`Station ${sheet.mark}`]),
  ].join("   ·   ");
  const right = paper.width - margin;
  const bold = { size: 8, bold: true, colour: palette.ink };
  const quiet = { size: 3.6, colour: palette.quiet, align: "right" } as const;
  return [
    part("H1", [words(title, margin, margin + 6, bold)]),
    words(short(whose, 150, quiet.size), right, margin + 6, quiet),
    ...instruction.map((line, i) =>
      words(line, margin, margin + 14 + i * leading, { size, colour: palette.ink }),
    ),
  ];
}

interface Entry {
  readonly height: number;
  readonly shapes: (top: number) => Shape[];
}

function entryOf(problem: MarkedProblem, sheet: Sheet): Entry {
  const { number, says, fix, kind } = problem;
  const { colour, asks } = looks[kind];
  const left = margin + indent;
  const right = paper.width - margin;
  const told = lined(says, right - left);
  const toDo = lined(fix, (right - left) / 1.12);
  const disc = 7;
  const paragraph = (some: readonly string[], top: number, bold: boolean) =>
    part(
      "P",
      some.map((line, i) => words(line, left, top + (i + 1) * leading, { size, bold, colour: palette.ink })),
    );
  return {
    height: (told.length + toDo.length + 1) * leading + 6,
    shapes: (top) => [
      lines(
        [
          [
            [margin, top],
            [right, top],
          ],
        ],
        { colour: palette.line, thickness: 0.2 },
      ),
      block({ x: margin, y: top + 2.2, width: disc, height: disc }, { radius: disc / 2, fill: colour }),
      part("H2", [
        words(String(number), margin + disc / 2, top + 2.2 + 5, {
          size,
          bold: true,
          colour: palette.paper,
          align: "centre",
        }),
        words(short(labelsOf(problem, sheet), right - left - 70, 4.4, "bold"), left, top + 7, {
          size: 4.4,
          bold: true,
          colour: palette.ink,
        }),
      ]),
      words(asks, right, top + 7, { size, colour, align: "right" }),
      paragraph(told, top + 7, false),
      paragraph(toDo, top + 7 + told.length * leading, true),
    ],
  };
}

function lined(text: string, width: number): string[] {
  return wrap(inOneLine(text), size, width)
    .slice(0, mostLines)
    .map((line) => short(line, width, size));
}

/** The fields as the form prints them. */
function labelsOf({ places }: MarkedProblem, { prints }: Sheet): string {
  const labels = [...new Set(places.flatMap((place) => prints[place]?.label ?? []))];
  if (labels.length === 0) return "The sheet as a whole";
  const more = labels.length - mostLabels;
  return [...labels.slice(0, mostLabels), ...(more > 0 ? [`${more} more`] : [])].join("  ·  ");
}
