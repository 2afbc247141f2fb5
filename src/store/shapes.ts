import type { Problem } from "../trade/problem.ts";
import type { Sheet } from "../trade/sheet.ts";

/** The number of the shape in which sheets and problems are stored now. It grows with each change to their types. */
export const sheetShape = 1;
export const problemShape = 1;

type Stored = Record<string, unknown>;

/** The steps from each shape to the next: the first takes a stored sheet from shape 1 to 2, and so on. */
const sheetSteps: readonly ((sheet: Stored) => Stored)[] = [];
const problemSteps: readonly ((problem: Stored) => Stored)[] = [];

/** A stored sheet, brought up to date. Throws for a shape that this program does not know. */
export function sheetFrom({ content, shape }: { readonly content: string; readonly shape: number }): Sheet {
  return upToDate(JSON.parse(content) as Stored, shape, sheetSteps) as unknown as Sheet;
}

/** A stored problem, brought up to date. Throws for a shape that this program does not know. */
export function problemFrom(problem: unknown, shape: number): Problem {
  return upToDate(problem as Stored, shape, problemSteps) as unknown as Problem;
}

function upToDate(stored: Stored, shape: number, steps: readonly ((one: Stored) => Stored)[]): Stored {
  if (shape > steps.length + 1)
    throw new Error(`the record was written by a newer program: shape ${shape} is not known here`);
  return steps.slice(shape - 1).reduce((one, step) => step(one), stored);
}
