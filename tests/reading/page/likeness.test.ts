import { expect, test } from "vitest";
import type { Ink } from "../../../src/reading/page/ink.ts";
import { type Likeness, likeness } from "../../../src/reading/page/likeness.ts";
import { setLine } from "../../../src/reading/page/set-line.ts";
import { type Drawing, drawn, glyphs, put } from "./drawn.ts";

/** How like a text in a size of 20 pixels some ink is. */
function like(held: string, ink: Ink, cut?: number): Likeness {
  const found = likeness(ink, setLine(held, glyphs) ?? [], 20, cut);
  if (found === undefined) throw new Error("there is nothing to compare");
  return found;
}

const as = (held: string, drawing: Drawing = {}): Likeness => like(held, drawn(held, drawing));

test("there is nothing to compare where there is no ink, or no letter", () => {
  expect(likeness(drawn(""), setLine("LOBBY", glyphs) ?? [], 20)).toBeUndefined();
  expect(likeness(drawn("LOBBY"), [], 20)).toBeUndefined();
});

test.each([4, 4.25, 4.5, 4.75, 150])("a text is like itself wherever in a pixel it begins: at %d", (x) => {
  const { worst, mistaken, more, ...rest } = as("LOBBY", { x });
  expect(worst).toBeGreaterThan(0.97);
  expect(mistaken).toBeLessThan(-0.03);
  expect(more).toBeLessThan(0.02);
  expect(rest).toEqual({ worstSign: 1, mistakenSmall: -1, stretch: 1, size: 20 });
});

test("a size is the form's own where pixels cannot tell them apart", () => {
  // A capital is 0.72 of a size high: 1.2 pixels of it are 1.7 of the size.
  const sizes = [19, 20, 21, 23].map((across) => as("LOBBY", { across }).size);
  expect(sizes).toEqual([20, 20, 20, expect.closeTo(23, 0)]);
});

test("a text that is narrower is told by how much", () => {
  expect(as("EXIT HALL", { across: 18, up: 20 }).stretch).toBeCloseTo(0.9, 1);
  expect(as("EXIT HALL", { across: 26, up: 20 }).stretch).toBeCloseTo(1.3, 1);
  // Of a dash nobody can tell.
  expect(as("-", { across: 26, up: 20 }).stretch).toBe(1);
});

test("signs, capitals and small letters are counted apart", () => {
  const bare = as("A. a");
  const without = (left: number, right: number) => as("A. a", { change: put(left, 0, right, 30, 0) });
  expect(bare.worstSign).toBeGreaterThan(0.95);
  expect(without(18, 24).worstSign).toBeLessThan(0.2);
  expect(without(18, 24).worst).toBeGreaterThan(0.95);
  expect(as("HALL").mistakenSmall).toBe(-1);
  expect(as("hall").mistaken).toBe(-1);
});

test("a dot between two words counts as a mark if it stands clear of both", () => {
  // An A ends at pixel 17, and the B behind it begins at 25.
  const dotted = [17, 18, 19, 20, 21, 22, 23].filter(
    (x) => as("A B", { change: put(x, 15, x + 1, 17, 1) }).more === 1,
  );
  expect(dotted).toEqual([20, 21]);
  const pale = (dark: number) => as("A B", { change: put(20, 15, 21, 17, dark) }).more;
  expect([pale(1), pale(0.99) < 0.05]).toEqual([1, true]);
  // Between the letters of a word there is none.
  expect(as("II", { change: put(9, 15, 10, 17, 1) }).more).toBeLessThan(0.1);
});
