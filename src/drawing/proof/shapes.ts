import type { Stroke } from "../../lettering/stroke.ts";
import type { Role, Said } from "../tagged/structure.ts";

/**
 * A drawing in millimetres, x to the right and y downwards from the upper left corner. SVG and PDF are two renderings
 * of this one value, so that they cannot show different things. Later shapes lie above earlier ones.
 */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly shapes: readonly Shape[];
}

export type Shape = Block | Lines | Words | Part;

/**
 * Shapes that say something together, and what they are to somebody who has the page read aloud. Words in no part are
 * a paragraph; blocks and lines in none, or beside words, are decoration.
 */
export interface Part extends Said {
  readonly kind: "part";
  readonly role: Role;
  readonly shapes: readonly Shape[];
}

/** A rectangle; colours are `#RRGGBB`. */
export interface Block extends Box {
  readonly kind: "block";
  /** Of the corners. */
  readonly radius?: number;
  readonly fill?: string;
  readonly line?: Line;
}

/** Strokes with round ends and corners, as a turning cutter leaves them. */
export interface Lines {
  readonly kind: "lines";
  readonly strokes: readonly Stroke[];
  readonly line: Line;
}

/** One line of text; `y` is its baseline, `size` the font's size in millimetres. */
export interface Words {
  readonly kind: "words";
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly colour: string;
  readonly bold?: boolean;
  /** Which part of the text stands at `x`. */
  readonly align?: "left" | "centre" | "right";
  /** Whether it runs upwards, as beside the line of a height. `x` is then its baseline. */
  readonly upwards?: boolean;
}

export interface Line {
  readonly colour: string;
  readonly thickness: number;
  readonly dash?: readonly [drawn: number, left: number];
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function block(box: Box, look: Omit<Block, "kind" | keyof Box>): Block {
  return { kind: "block", ...box, ...look };
}

export function lines(strokes: readonly Stroke[], line: Line): Lines {
  return { kind: "lines", strokes, line };
}

export function words(
  text: string,
  x: number,
  y: number,
  look: Omit<Words, "kind" | "text" | "x" | "y">,
): Words {
  return { kind: "words", text: inOneLine(text), x, y, ...look };
}

export function part(role: Role, shapes: readonly Shape[], said: Said = {}): Part {
  return { kind: "part", role, shapes, ...said };
}

/** What strangers typed, made fit for a line of a drawing: without control characters and the like. */
export function inOneLine(text: string): string {
  return text.replaceAll(/\p{C}+/gu, " ");
}

/** The box with as much more on every side. */
export function grown({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

/** Shapes, moved. */
export function moved(shapes: readonly Shape[], dx: number, dy: number): Shape[] {
  return shapes.map((shape) => {
    if (shape.kind === "part") return { ...shape, shapes: moved(shape.shapes, dx, dy) };
    return shape.kind === "lines"
      ? { ...shape, strokes: shape.strokes.map((line) => line.map(([x, y]) => [x + dx, y + dy] as const)) }
      : { ...shape, x: shape.x + dx, y: shape.y + dy };
  });
}

/** Thousandths of a millimetre are enough for any cutter. */
export function rounded(distance: number): number {
  return Math.round(distance * 1000) / 1000;
}
