import { inflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { patchesIn, toldApart } from "../../../src/reading/page/patches.ts";
import {
  type Area,
  apart,
  aroundAll,
  brightness,
  grown,
  isEmpty,
  type Picture,
  pngOf,
  samePart,
  sameRun,
  shared,
} from "../../../src/reading/page/picture.ts";

const white = 0xffffff;
const area = (left: number, top: number, right: number, bottom: number): Area => ({
  left,
  top,
  right,
  bottom,
});

/** A white picture of 120 by 60 pixels with black, or another colour, at some places. */
function picture(dots: readonly (readonly [x: number, y: number, colour?: number])[] = []): Picture {
  const pixels = new Int32Array(120 * 60).fill(white);
  for (const [x, y, colour = 0] of dots) pixels[y * 120 + x] = colour;
  return { width: 120, height: 60, pixels };
}
const four = (x: number, y: number): [number, number][] => [
  [x, y],
  [x + 1, y],
  [x, y + 1],
  [x + 1, y + 1],
];
const column = (x: number, y: number): [number, number][] => [0, 1, 2, 3].map((by) => [x, y + by]);
const patches = (dots: Parameters<typeof picture>[0], leftOut: readonly Area[] = []): readonly Area[] =>
  patchesIn(picture(dots), picture(), leftOut);

describe("where a page differs from its form", () => {
  test.each<[string, Parameters<typeof picture>[0], Area[], Area[]]>([
    ["nowhere", [], [], []],
    ["in three pixels, which are rounding", four(13, 13).slice(0, 3), [], []],
    ["in four", four(13, 13), [], [area(12, 12, 24, 24)]],
    [
      "in four that lie in two cells with one between",
      [...four(1, 1).slice(2), ...four(25, 1).slice(2)],
      [],
      [area(0, 0, 36, 12)],
    ],
    [
      "in two places, more than a cell apart",
      [...four(1, 1), ...four(37, 1)],
      [],
      [area(0, 0, 12, 12), area(36, 0, 48, 12)],
    ],
    [
      "in two places, one below the other",
      [...four(1, 1), ...four(1, 37)],
      [],
      [area(0, 0, 12, 12), area(0, 36, 12, 48)],
    ],
    ["in the last cell, and not beyond it", four(118, 58), [], [area(108, 48, 120, 60)]],
    ["in a colour that is hardly another", four(13, 13).map(([x, y]) => [x, y, 0xf3f3f4] as const), [], []],
    [
      "in a colour that is just another",
      four(13, 13).map(([x, y]) => [x, y, 0xf3f3f3] as const),
      [],
      [area(12, 12, 24, 24)],
    ],
    ["in a part that is left out", four(13, 13), [area(13, 13, 15, 15)], []],
    ["in a part that is left out, and one pixel around it", four(13, 13), [area(14, 14, 14, 14)], []],
    ["beside a part that is left out", four(13, 13), [area(16, 0, 120, 60)], [area(12, 12, 24, 24)]],
    ["behind a part that is left out", four(37, 13), [area(0, 0, 36, 60)], [area(36, 12, 48, 24)]],
    [
      "between parts that are left out",
      four(37, 13),
      [area(60, 0, 120, 60), area(0, 0, 36, 60)],
      [area(36, 12, 48, 24)],
    ],
    ["below a part that is left out", four(13, 37), [area(0, 0, 120, 36)], [area(12, 36, 24, 48)]],
    ["above a part that is left out", four(13, 13), [area(0, 16, 120, 60)], [area(12, 12, 24, 24)]],
    ["at its left edge", column(0, 13), [], [area(0, 12, 12, 24)]],
    ["at the left edge of a part that is left out", column(13, 13), [area(14, 0, 120, 60)], []],
    [
      "in the first of two parts that are left out",
      four(13, 13),
      [area(60, 0, 120, 60), area(0, 0, 36, 60)],
      [],
    ],
    [
      "in the last line, behind a part that is left out",
      [116, 117, 118, 119].map((x) => [x, 59]),
      [area(0, 0, 36, 60)],
      [area(108, 48, 120, 60)],
    ],
    [
      "above a part that is left out, and in it from its first line on",
      [...four(1, 10), ...[60, 61, 62, 63].map((x): [number, number] => [x, 20])],
      [area(0, 21, 120, 60)],
      [area(0, 0, 12, 12)],
    ],
    [
      "in a part that is left out, and below it from the first line on",
      [...four(1, 10), ...[60, 61, 62, 63].map((x): [number, number] => [x, 21])],
      [area(0, 0, 120, 20)],
      [area(60, 12, 72, 24)],
    ],
  ])("%s", (_, dots, leftOut, found) => {
    expect(patches(dots, leftOut)).toEqual(found);
  });

  /** Dots in cells of twelve pixels: how many are in each. */
  const cells = (...rows: string[]): [number, number][] =>
    rows.flatMap((row, j) =>
      [...row].flatMap((count, i) =>
        Array.from({ length: Number(count) || 0 }, (_, n): [number, number] => [i * 12 + n, j * 12]),
      ),
    );
  test.each<[string, string[], (readonly [left: number, top: number, right: number, bottom: number])[]]>([
    ["that touch, one patch", ["44........"], [[0, 0, 2, 1]]],
    ["with one between, one patch", ["2.........", "..........", "2........."], [[0, 0, 1, 3]]],
    ["that lie to the lower left, one patch", ["..2.......", "2........."], [[0, 0, 3, 2]]],
    ["in the last columns, one patch", [".......2.2"], [[7, 0, 10, 1]]],
    ["in the last rows, one patch", ["", "", "2.........", "", "2........."], [[0, 2, 1, 5]]],
    [
      "three to the lower left, two patches",
      ["...4......", "..........", "4........."],
      [
        [3, 0, 4, 1],
        [0, 2, 1, 3],
      ],
    ],
    [
      "three to the upper right, two patches",
      ["4.........", "........4.", "..4.......", "..........", "....4.4..."],
      [
        [0, 0, 7, 5],
        [8, 1, 9, 2],
      ],
    ],
    ["at the two ends of two rows, none", [".........2", "2........."], []],
  ])("cells %s", (_, rows, found) => {
    const edges = found.map((one) => one.map((edge) => edge * 12));
    expect(patches(cells(...rows)).map((one) => Object.values(one))).toEqual(edges);
  });

  test("four places are told one by one, five as the area around them", () => {
    const some = [1, 2, 3, 4, 5].map((at) => area(at, at, at + 1, at + 2));
    expect(toldApart(some.slice(0, 4))).toHaveLength(4);
    expect(toldApart(some)).toEqual([area(1, 1, 6, 7)]);
  });
});

test("colours are as far apart as red, green and blue together", () => {
  expect(apart(0x102030, 0x102030)).toBe(0);
  expect(apart(0x102030, 0x112233)).toBe(6);
  expect(apart(0x000000, white)).toBe(765);
  // ITU-R BT.601
  expect(brightness(white)).toBeCloseTo(255);
  expect(brightness(0xff0000)).toBeCloseTo(76.245);
  expect(brightness(0x00ff00)).toBeCloseTo(149.685);
  expect(brightness(0x0000ff)).toBeCloseTo(29.07);
});

test("areas are shared, grown and joined by their edges", () => {
  expect(shared(area(0, 1, 10, 11), area(2, 0, 20, 5))).toEqual(area(2, 1, 10, 5));
  expect(grown(area(5, 6, 7, 8), 2)).toEqual(area(3, 4, 9, 10));
  expect(aroundAll([area(0, 9, 3, 11), area(2, 0, 20, 5)])).toEqual(area(0, 0, 20, 11));
  expect([area(0, 0, 1, 1), area(1, 0, 1, 1), area(0, 1, 1, 1)].map(isEmpty)).toEqual([false, true, true]);
});

test("rows and parts of pictures are compared from where they begin", () => {
  const [one, other] = [picture([[5, 5]]), picture([[6, 5]])];
  expect(sameRun(one.pixels, 5 * 120 + 5, other.pixels, 5 * 120 + 6, 3)).toBe(true);
  expect(sameRun(one.pixels, 5 * 120 + 4, other.pixels, 5 * 120 + 4, 3)).toBe(false);
  expect(samePart(one, other, area(0, 0, 5, 60))).toBe(true);
  expect(samePart(one, other, area(0, 0, 6, 60))).toBe(false);
  expect(samePart(one, other, area(0, 0, 120, 5))).toBe(true);
  expect(samePart(one, other, area(0, 0, 120, 6))).toBe(false);
  expect(samePart(one, other, area(7, 0, 120, 60))).toBe(true);
});

/** The pixels of a PNG of one data chunk, eight bits for each of red, green and blue. ISO/IEC 15948 §11.2 */
function pixelsOf(png: Uint8Array): { width: number; height: number; pixels: number[][] } {
  const bytes = Buffer.from(png);
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const data = inflateSync(bytes.subarray(41, 41 + bytes.readUInt32BE(33)));
  const pixels = Array.from({ length: height }, (_, y) => [
    ...data.subarray(y * (1 + 3 * width) + 1, (y + 1) * (1 + 3 * width)),
  ]);
  return { width, height, pixels };
}

test("a part of a picture is a PNG of its pixels, rounded to steps of fifteen", () => {
  const one = picture([
    [10, 10, 0xff8000],
    [11, 10, 0x070707],
    [10, 11, 0x000008],
  ]);
  expect(pixelsOf(pngOf(one, area(10, 10, 12, 12), 4))).toEqual({
    width: 2,
    height: 2,
    pixels: [
      [255, 135, 0, 0, 0, 0],
      [0, 0, 15, 255, 255, 255],
    ],
  });
  // With room for fewer pixels each is the mean of four.
  expect(pixelsOf(pngOf(picture(four(10, 10).slice(0, 2)), area(10, 10, 12, 12), 3))).toEqual({
    width: 1,
    height: 1,
    pixels: [[135, 135, 135]],
  });
  expect(pixelsOf(pngOf(picture(four(14, 12)), area(10, 10, 16, 14), 6)).pixels).toEqual([
    Array(9).fill(255),
    [...Array<number>(6).fill(255), 0, 0, 0],
  ]);
  // What lies beyond the picture is no part of it.
  expect(pixelsOf(pngOf(one, area(-5, -5, 1, 1), 99))).toMatchObject({ width: 1, height: 1 });
  expect(pixelsOf(pngOf(one, area(0, 0, 120, 60), 900))).toMatchObject({ width: 40, height: 20 });
});

test("a PNG begins with its signature and how it is made, and ends with an end", () => {
  const png = Buffer.from(pngOf(picture(), area(0, 0, 3, 2), 9)).toString("hex");
  // ISO/IEC 15948 §5.2, §11.2.2: eight bits for each of three colours, packed and laid out in the usual ways.
  expect(png).toMatch(/^89504e470d0a1a0a0000000d4948445200000003000000020802000000/);
  expect(png).toMatch(/0000000049454e44ae426082$/);
});
