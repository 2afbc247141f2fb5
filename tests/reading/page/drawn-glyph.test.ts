import { describe, expect, test } from "vitest";
import { drawGlyph, softGlyph } from "../../../src/reading/page/drawn-glyph.ts";
import type { Glyph } from "../../../src/reading/page/glyphs.ts";
import { blurred } from "../../../src/reading/page/ink.ts";
import { blockGlyph } from "./block-glyph.ts";
import { rowsOf } from "./ink-rows.ts";

/** Half a size wide, three quarters high and a quarter of a size from the pen, standing a quarter below the baseline. */
const block = (): Glyph => blockGlyph({ left: 0.25, right: 0.75, bottom: -0.25, top: 0.5 });
const at = (x: number, y: number, across = 8, up = across) => ({ x, y, across, up });

describe("a letter is drawn", () => {
  test.each<[string, ReturnType<typeof at>, number, number, string[]]>([
    [
      "where its pen stands",
      at(10, 20),
      11,
      15,
      ["......", ".XXXX.", ".XXXX.", ".XXXX.", ".XXXX.", ".XXXX.", ".XXXX.", "......"],
    ],
    ["in another size", at(10, 20, 4), 10, 17, ["....", ".XX.", ".XX.", ".XX.", "...."]],
    ["wider than it is high", at(10, 20, 8, 4), 11, 17, ["......", ".XXXX.", ".XXXX.", ".XXXX.", "......"]],
    ["higher than it is wide", at(10, 20, 4, 8), 10, 15, ["....", ...Array<string>(6).fill(".XX."), "...."]],
    ["half a pixel to the right", at(10.5, 20, 4), 10, 17, [".....", ".5X5.", ".5X5.", ".5X5.", "....."]],
    [
      "a quarter of a pixel lower",
      at(10, 20.25, 4),
      10,
      17,
      ["....", ".88.", ".XX.", ".XX.", ".33.", "...."],
    ],
    [
      "at the nearest quarter of a pixel",
      at(10.1, 20.9, 4),
      10,
      18,
      ["....", ".XX.", ".XX.", ".XX.", "...."],
    ],
    [
      "to the left of what is seen",
      at(-10.5, -20, 4),
      -11,
      -23,
      [".....", ".5X5.", ".5X5.", ".5X5.", "....."],
    ],
    [
      "in a size in which its edges are parts of pixels",
      at(10, 20, 6),
      10,
      16,
      ["......", ".5XX5.", ".5XX5.", ".5XX5.", ".5XX5.", ".3553.", "......"],
    ],
  ])("%s", (_, setting, left, top, rows) => {
    const glyph = drawGlyph(block(), setting);
    expect([glyph.left, glyph.top]).toEqual([left, top]);
    expect(rowsOf(glyph.ink)).toEqual(rows);
  });

  test("where its edges are parts of pixels, and of what it was drawn in", () => {
    const { ink } = drawGlyph(block(), at(10, 20, 5));
    // From 11.25 to 13.75, and from 17.5 down to 21.25.
    const [across, up] = [
      [0, 0.75, 1, 0.75, 0],
      [0, 0.5, 1, 1, 1, 0.25, 0],
    ];
    expect([ink.width, ink.height]).toEqual([5, 7]);
    const wanted = up.flatMap((high) => across.map((wide) => wide * high));
    for (const [i, dark] of wanted.entries()) expect(ink.dark[i], `${i}`).toBeCloseTo(dark, 4);
  });

  test("as large as what it was drawn in", () => {
    const whole = blockGlyph({ left: -1 / 3, right: 4 / 3, bottom: -1 / 2, top: 7 / 6 });
    const { ink } = drawGlyph(whole, at(10, 20, 6));
    expect(rowsOf(ink)).toEqual(["............", ...Array<string>(10).fill(".XXXXXXXXXX."), "............"]);
  });

  test("blurred, with a pixel more on every side", () => {
    const [sharp, soft] = [drawGlyph(block(), at(10, 20, 4)), softGlyph(block(), at(10, 20, 4))];
    expect([soft.left, soft.top]).toEqual([sharp.left - 1, sharp.top - 1]);
    const { ink } = sharp;
    const width = ink.width + 2;
    const around = new Float32Array(width * (ink.height + 2));
    ink.dark.forEach((one, i) => {
      around[(Math.floor(i / ink.width) + 1) * width + (i % ink.width) + 1] = one;
    });
    expect(soft.ink).toEqual(blurred({ width, height: ink.height + 2, dark: around }));
  });

  test("once at each place within a pixel", () => {
    const glyph = block();
    const ink = (x: number, y: number, across?: number, up?: number) =>
      drawGlyph(glyph, at(x, y, across, up)).ink;
    expect(ink(30, 40)).toBe(ink(10, 20));
    expect(ink(10.05, 20.05)).toBe(ink(10, 20));
    const others = [
      ink(10, 20),
      ink(10.25, 20),
      ink(10, 20.25),
      ink(10.75, 20),
      ink(10, 20, 8, 4),
      ink(10, 20, 4, 8),
    ];
    expect(new Set([...others, softGlyph(glyph, at(10, 20)).ink]).size).toBe(7);
  });
});
