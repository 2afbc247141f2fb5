import { describe, expect, test } from "vitest";
import { isStruck } from "../../../src/reading/page/struck.ts";
import { ink } from "./ink-rows.ts";

/** Whether a text is struck out. Three empty pixels are around it, as around every text. */
function struck(wanted: readonly string[], seen: readonly string[]): boolean {
  const framed = (rows: readonly string[]) => {
    const empty = Array<string>(3).fill("");
    const width = Math.max(...[...wanted, ...seen].map((row) => row.length)) + 6;
    return ink(...[...empty, ...rows, ...empty].map((row) => `...${row}`.padEnd(width, ".")));
  };
  return isStruck(framed(seen), framed(wanted));
}
const times = (count: number, row: string): string[] => Array<string>(count).fill(row);
/** The same rows, one of them another. */
const but = (rows: readonly string[], y: number, row: string): string[] => rows.with(y, row);

describe("a dark line through a text", () => {
  test.each<[string, string, string, boolean]>([
    ["covers seven tenths of what is beside the letters", "X..........X", "XXXXXXXX...X", true],
    ["covers less of it", "X..........X", "XXXXXXX....X", false],
    ["covers as much of eight pixels", "X........X", "XXXXXXX..X", true],
    ["covers seven pixels, which are too few", "X.......X", "XXXXXXXXX", false],
    ["is pale", "X..........X", "X2222222222X", true],
    ["is so pale that nobody sees it", "X..........X", "X1111111111X", false],
    ["is just darker than the pale edges of letters", "X1111111111X", "X3333333333X", true],
    ["is no darker than they are", "X1111111111X", "X2222222222X", false],
    ["runs within the letters alone", "X2222222222X", "XXXXXXXXXXXX", false],
    ["runs within the letters more than beside them", "X222........X", "XXXXXXXXX...X", false],
    ["runs behind the letters", "X...........", "X.XXXXXXXXXX", false],
  ])("%s: %#", (_, wanted, seen, is) => {
    expect(struck([wanted], [seen])).toBe(is);
  });

  test("may be above or below the letters", () => {
    const text = ["X..........X", "............"];
    expect(struck(text, ["X..........X", ".XXXXXXXXXX."])).toBe(true);
    expect(struck(text.toReversed(), [".XXXXXXXXXX.", "X..........X"])).toBe(true);
  });
});

describe("a white line through the upright strokes of letters", () => {
  const two = times(9, "X...X");
  test.each<[string, string[], string[], boolean]>([
    ["leaves less than 0.55 of them", two, but(two, 4, "5...5"), true],
    ["leaves more", two, but(two, 4, "6...6"), false],
    ["leaves more of their row", but(two, 4, "X...X.X"), but(two, 4, "5...5.X"), false],
    ["crosses one stroke, as of an I", times(9, "X"), but(times(9, "X"), 4, "5"), false],
    ["crosses strokes three pixels below their upper end", two, but(two, 3, "5...5"), true],
    ["crosses them nearer to it", two, but(two, 2, "5...5"), false],
    ["crosses them three pixels above their lower end", two, but(two, 5, "5...5"), true],
    ["crosses them nearer to that", two, but(two, 6, "5...5"), false],
    ["crosses strokes of seven pixels", times(7, "X...X"), but(times(7, "X...X"), 3, "5...5"), true],
    ["crosses strokes that are half dark", times(9, "5.5.5"), but(times(9, "5.5.5"), 4, "2.2.2"), true],
    ["crosses strokes that are paler", times(9, "4.4.4"), but(times(9, "4.4.4"), 4, "2.2.2"), false],
  ])("%s", (_, wanted, seen, is) => {
    expect(struck(wanted, seen)).toBe(is);
  });
});

describe("a row of letters that is rubbed out", () => {
  /** A slanting stroke, of which each column has three pixels. */
  const slant = (dark = "X"): string[] =>
    Array.from({ length: 11 }, (_, y) =>
      Array.from({ length: 9 }, (_, x) => (y >= x && y <= x + 2 ? dark : ".")).join(""),
    );
  const rubbed = (y: number, to: string, dark?: string): boolean =>
    struck(slant(dark), but(slant(dark), y, (slant(dark)[y] ?? "").replaceAll(/[^.]/g, to)));
  test("has lost nearly all of its ink", () => {
    expect(["0", "3", "4"].map((to) => rubbed(5, to))).toEqual([true, true, false]);
  });
  test("had as much ink as a dark pixel has", () => {
    expect(["X", "9"].map((dark) => rubbed(5, "0", dark))).toEqual([true, false]);
  });
  test("may be of several strokes", () => {
    const two = slant().map((row) => row + row);
    const seen = (to: string) => but(two, 5, (two[5] ?? "").replaceAll("X", to));
    expect(["3", "4"].map((to) => struck(two, seen(to)))).toEqual([true, false]);
  });
  test("lies three pixels from the upper and lower edge", () => {
    expect([2, 3, 7, 8].map((y) => rubbed(y, "0"))).toEqual([false, true, true, false]);
  });
});

describe("a line through a text that fills its field from edge to edge", () => {
  const beside = (rows: readonly string[]) => ink(...rows.map((row) => `...${row}...`));
  test("may be in its first row, or in its last", () => {
    const text = times(5, "X..........X");
    for (const y of [0, 4]) expect(isStruck(beside(but(text, y, "XXXXXXXXXXXX")), beside(text))).toBe(true);
  });
  test("is seen three pixels from the ends of upright strokes, and not nearer", () => {
    const two = times(9, "X...X");
    const struckAt = [1, 2, 3, 5, 6, 7].filter((y) => isStruck(beside(but(two, y, "5...5")), beside(two)));
    expect(struckAt).toEqual([3, 5]);
  });
});

test("a text as it should be is not struck out, nor is none at all", () => {
  const text = times(9, "X.X.XXX.X");
  expect(struck(text, text)).toBe(false);
  expect(struck([""], ["XXXXXXXXXXXX"])).toBe(false);
});
