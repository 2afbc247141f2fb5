import { expect, test } from "vitest";
import { advanceOf } from "../../../src/reading/page/glyphs.ts";
import { glyphs } from "./drawn.ts";

// Adobe's metrics of Helvetica, in thousandths of a size: how far the pen moves on, and where the ink is.
test.each([
  ["A", 667, [14, 0, 654, 718]],
  ["H", 722, [77, 0, 646, 718]],
  ["g", 556, [40, -220, 499, 538]],
  [".", 278, [87, 0, 191, 106]],
  ["_", 556, [0, -125, 556, -75]],
  ["M", 833, [73, 0, 761, 718]],
  ["É", 667, [86, 0, 616, 929]],
  ["ÿ", 500, [11, -214, 489, 706]],
  ["•", 350, [18, 202, 333, 517]],
])("%s is drawn as it is measured", (character, advance, box) => {
  const glyph = glyphs.get(character);
  if (glyph === undefined) throw new Error("no glyph");
  const { left, bottom, right, top } = glyph.ink;
  expect(glyph.advance * 1_000).toBeCloseTo(advance);
  expect(advanceOf(character.codePointAt(0) ?? 0)).toBe(glyph.advance);
  // A letter is drawn 48 pixels in size, so that its edges lie within one.
  for (const [i, edge] of [left, bottom, right, top].entries())
    expect(Math.abs(edge * 1_000 - (box[i] ?? Number.NaN)), `edge ${i}`).toBeLessThan(1_000 / 48);
  // As much ink as its box has, at most.
  const all = glyph.sums.at(-1) ?? 0;
  expect(all).toBeGreaterThan(0);
  expect(all).toBeLessThan((right - left + 2 / 48) * (top - bottom + 2 / 48) * 48 * 48);
});

test("the letters are those of Windows' Latin code page, blanks left out", () => {
  expect([..."ßŒ€™~"].every((one) => glyphs.has(one))).toBe(true);
  expect([" ", "\u00a0", "Ж", "\u{1f600}"].some((one) => glyphs.has(one))).toBe(false);
  expect(glyphs.size).toBe(216);
});

test("the ink of any rectangle of a letter is told by its corners", () => {
  const { sums = new Float32Array(0), side = 0 } = glyphs.get("H") ?? {};
  const ink = (left: number, top: number, right: number, bottom: number): number =>
    [
      [right, bottom, 1],
      [left, bottom, -1],
      [right, top, -1],
      [left, top, 1],
    ].reduce((sum, [x = 0, y = 0, sign = 0]) => sum + sign * (sums[y * side + x] ?? Number.NaN), 0);
  expect(side).toBe(81);
  // The pen begins at 16, the base lies at 56, and a capital is 34 pixels high: its left stroke is all ink.
  expect(ink(21, 25, 23, 55)).toBeCloseTo(60, 0);
  // Above and below its bar there is none.
  expect(ink(28, 24, 40, 34)).toBeCloseTo(0);
  expect(ink(0, 0, 80, 20)).toBeCloseTo(0);
});
