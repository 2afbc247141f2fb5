import { describe, expect, test } from "vitest";
import type { Glyphs } from "../../../src/reading/page/glyphs.ts";
import { draw, measure, setLine } from "../../../src/reading/page/set-line.ts";
import { blockGlyph } from "./block-glyph.ts";
import { glyphs } from "./drawn.ts";
import { ink, rowsOf } from "./ink-rows.ts";

const line = (text: string, font: Glyphs = glyphs) => setLine(text, font) ?? [];

describe("a line is set", () => {
  test("with the pen where the letters before it end", () => {
    // Helvetica's advances by Adobe's metrics: A 0.667, I 0.278, a blank 0.278.
    expect(line("AI A").map(({ pen }) => Math.round(pen * 1_000))).toEqual([0, 667, 1_223]);
    expect(line("\tA\u00a0").map(({ pen }) => Math.round(pen * 1_000))).toEqual([278]);
    expect(line("  ")).toEqual([]);
  });

  test("not in letters that Helvetica lacks", () => {
    expect(["Ж", "A\nB", "A\u2003B", "\u{1f600}"].map((text) => setLine(text, glyphs))).toEqual(
      Array(4).fill(undefined),
    );
  });

  test("of signs, small letters and others", () => {
    const kinds = [..."A1é-&#+%@”ß."].map((character) =>
      line(character).map(({ isSign, isSmall }) => (isSign ? "sign" : isSmall ? "small" : "other")),
    );
    expect(kinds.flat()).toEqual(
      "other other small sign other other other other other sign small sign".split(" "),
    );
  });

  test("with the rivals of each letter", () => {
    expect(line("hA-").map(({ rivals }) => rivals().length > 0)).toEqual([true, true, false]);
  });
});

describe("a line is measured", () => {
  const low = blockGlyph({ left: 0.25, right: 0.5, bottom: -0.5, top: -0.25 }, 0.75);
  const high = blockGlyph({ left: 0.125, right: 0.25, bottom: 0.25, top: 0.75 }, 0.5);
  const font: Glyphs = new Map([
    ["_", low],
    ["'", high],
  ]);
  test.each([
    ["_", { left: 0.25, right: 0.5, bottom: -0.5, top: -0.25 }],
    ["'", { left: 0.125, right: 0.25, bottom: 0.25, top: 0.75 }],
    ["_'", { left: 0.25, right: 1, bottom: -0.5, top: 0.75 }],
    ["'_", { left: 0.125, right: 1, bottom: -0.5, top: 0.75 }],
  ])("%s", (text, area) => {
    expect(measure(line(text, font))).toEqual(area);
  });
});

describe("a line is drawn", () => {
  const block = blockGlyph({ left: 0, right: 0.5, bottom: 0, top: 0.5 }, 0.5);
  const thin = blockGlyph({ left: 0, right: 0.375, bottom: 0, top: 0.5 }, 0.5);
  const font: Glyphs = new Map([
    ["B", block],
    ["T", thin],
  ]);
  /** In a size of four pixels, on seven by four. */
  const drawn = (text: string, x: number, y: number, across = 4, up = 4): string[] =>
    rowsOf(draw(line(text, font), { x, y, across, up }, ink(...Array<string>(4).fill("......."))));
  test.each<[string, string[], string[]]>([
    ["letter by letter", drawn("BT", 1, 3), [".......", ".XXX5..", ".XXX5..", "......."]],
    ["wider", drawn("BT", 1, 3, 6), [".......", ".XXXXX3", ".XXXXX3", "......."]],
    ["higher", drawn("BT", 1, 4, 4, 6), [".......", ".XXX5..", ".XXX5..", ".XXX5.."]],
    ["cut at the left edge", drawn("BT", -1, 3), [".......", "XX5....", "XX5....", "......."]],
    ["cut at the right edge", drawn("BB", 4, 3), [".......", "....XXX", "....XXX", "......."]],
    ["cut at the upper edge", drawn("B", 1, 1), [".XX....", ".......", ".......", "......."]],
    ["cut at the lower edge", drawn("B", 1, 5), [".......", ".......", ".......", ".XX...."]],
    ["nowhere", drawn("B", 1, 9), [".......", ".......", ".......", "......."]],
  ])("%s", (_, rows, wanted) => {
    expect(rows).toEqual(wanted);
  });

  test("no darker than ink can be, where letters touch", () => {
    const touching: Glyphs = new Map([
      ["B", blockGlyph({ left: 0, right: 0.625, bottom: 0, top: 0.5 }, 0.5)],
    ]);
    const { dark } = draw(line("BB", touching), { x: 0, y: 2, across: 4, up: 4 }, ink("......", "......"));
    expect([...dark.subarray(0, 6)]).toEqual([1, 1, 1, 1, 0.5, 0]);
  });
});
