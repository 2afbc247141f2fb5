import { PDFArray, PDFDict, PDFNumber, PDFRawStream } from "pdf-lib";
import type { Box, PageMark } from "../facts.ts";
import { around, type Point } from "./boxes.ts";
import { type Operand, operatorsIn } from "./content-operators.ts";
import { contentOf, entryOf } from "./pdf-value.ts";
import { contentOfPage, type WalkedPage } from "./walked-pages.ts";

/** People fill in no page beyond these bounds. */
const most = { bytes: 8_000_000, depth: 12, marks: 2_000 };

/** ISO 32000-1:2008 §8.3.3: [a b c d e f]. */
type Matrix = readonly [number, number, number, number, number, number];

/** What is known while a page is painted. */
interface Painting {
  readonly marks: PageMark[];
  /** Bytes of content that may still be looked at. A piece that is used again counts again. */
  left: number;
  readonly read: Map<PDFRawStream, string>;
  /** Points of the pen stroke that is being drawn, if one is. */
  pen: Point[] | undefined;
}

/**
 * The images painted on a page, and the pen strokes of Chromium's viewer. Those are no annotations but marked
 * content. Throws for a page beyond all bounds. No image is decoded.
 */
export function paintedOn(page: WalkedPage): PageMark[] {
  const content = contentOfPage(page, most.bytes);
  const painting: Painting = { marks: [], left: most.bytes, read: new Map(), pen: undefined };
  paint(content, page.resources, [1, 0, 0, 1, 0, 0], painting, 0);
  return painting.marks;
}

/** A drawing has at least so many lines and shapes. Fewer may be a background. */
const leastShapes = 20;

/** Whether the page consists of lines and shapes. A drawing in a form of its own counts as many. */
export function isDrawn(page: WalkedPage): boolean {
  let shapes = 0;
  for (const { name } of operatorsIn(contentOfPage(page, most.bytes))) {
    if (/^(?:[sSbBfF]\*?|sh)$/.test(name)) shapes += 1;
    if (name === "Do") shapes += leastShapes;
    if (shapes >= leastShapes) return true;
  }
  return false;
}

function paint(
  content: string,
  resources: PDFDict | undefined,
  start: Matrix,
  painting: Painting,
  depth: number,
): void {
  painting.left -= content.length + 100;
  if (painting.left < 0 || depth > most.depth || painting.marks.length > most.marks)
    throw new Error("the page is endless");
  let now = start;
  const saved: Matrix[] = [];
  const tags: boolean[] = [];
  for (const { name, operands } of operatorsIn(content)) {
    if (name === "q") saved.push(now);
    else if (name === "Q") now = saved.pop() ?? now;
    else if (name === "cm") now = times(matrixOf(operands), now);
    else if (name === "ID") painting.marks.push({ what: "image", box: unitSquare(now) });
    else if (name === "Do") paintObject(String(operands.at(-1)).slice(1), resources, now, painting, depth);
    else if (name === "BMC" || name === "BDC") {
      const begins = painting.pen === undefined && String(operands[0]).startsWith("/GOOG:INK");
      tags.push(begins);
      if (begins) painting.pen = [];
    } else if (name === "EMC" && tags.pop()) {
      painting.marks.push({ what: "ink", box: around(painting.pen ?? []) ?? unitSquare(now) });
      painting.pen = undefined;
    } else painting.pen?.push(...pointsOf(name, operands).map((point) => apply(now, point)));
  }
}

function paintObject(
  name: string,
  resources: PDFDict | undefined,
  now: Matrix,
  painting: Painting,
  depth: number,
): void {
  const objects = resources && entryOf(resources, "XObject");
  const object = objects instanceof PDFDict ? entryOf(objects, name) : undefined;
  if (!(object instanceof PDFRawStream)) return;
  if (String(entryOf(object.dict, "Subtype")) === "/Image") {
    painting.marks.push({ what: "image", box: unitSquare(now) });
    return;
  }
  const content = painting.read.get(object) ?? contentOf(object, painting.left);
  painting.read.set(object, content);
  const own = entryOf(object.dict, "Resources");
  const matrix = entryOf(object.dict, "Matrix");
  const inner = matrix instanceof PDFArray ? times(matrixOf(numbersIn(matrix)), now) : now;
  paint(content, own instanceof PDFDict ? own : resources, inner, painting, depth + 1);
}

function numbersIn(array: PDFArray): number[] {
  return array.asArray().map((_, i) => {
    const item = array.lookup(i);
    return item instanceof PDFNumber ? item.asNumber() : 0;
  });
}

/** The points that an operator adds to a path, control points included. ISO 32000-1:2008 table 59 */
function pointsOf(name: string, operands: readonly Operand[]): Point[] {
  const n = operands.map(Number);
  if (name === "re") {
    const [x = 0, y = 0, width = 0, height = 0] = n;
    return [
      [x, y],
      [x + width, y + height],
    ];
  }
  if (!["m", "l", "c", "v", "y"].includes(name)) return [];
  return n.flatMap((x, i): Point[] => (i % 2 === 0 ? [[x, n[i + 1] ?? 0]] : []));
}

function matrixOf(operands: readonly Operand[]): Matrix {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = operands.map(Number);
  return [a, b, c, d, e, f];
}

function times([a, b, c, d, e, f]: Matrix, by: Matrix): Matrix {
  const [x, y] = apply(by, [e, f]);
  return [a * by[0] + b * by[2], a * by[1] + b * by[3], c * by[0] + d * by[2], c * by[1] + d * by[3], x, y];
}

function apply([a, b, c, d, e, f]: Matrix, [x, y]: Point): Point {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** ISO 32000-1:2008 §8.9.4: an image fills the square from 0 to 1. */
function unitSquare(now: Matrix): Box {
  return around([apply(now, [0, 0]), apply(now, [1, 0]), apply(now, [0, 1]), apply(now, [1, 1])]);
}
