import { describe, expect, test } from "vitest";
import { linesApart } from "../../../src/reading/page/lines-apart.ts";
import { ink, rowsOf } from "./ink-rows.ts";

/**
 * The lines of an ink whose letters are ten pixels in size, and so four at least. An empty column stands at its right
 * edge, since pixels there touch those at the left one.
 */
const lines = (...rows: string[]): string[][] =>
  linesApart(ink(...rows.map((row) => `${row}.`)), 10).map((one) =>
    rowsOf(one).map((row) => row.slice(0, -1)),
  );
/** A picture, of which only the rows from one on are kept, up to another. */
const kept = (rows: readonly string[], from: number, to: number): string[] =>
  rows.map((row, y) => (y >= from && y < to ? row : ".".repeat(row.length)));
const times = (count: number, row: string): string[] => Array<string>(count).fill(row);

describe("ink", () => {
  test("of two lines is taken apart, each as large as the whole", () => {
    const two = [...times(6, "X.X"), "...", "...", ...times(6, "X.X")];
    expect(lines(...two)).toEqual([kept(two, 0, 6), kept(two, 8, 14)]);
    expect(lines(...two, "...", "...", ...times(4, "X.X"))).toHaveLength(3);
  });

  test("of one line, or without a letter, stays as it is", () => {
    const one = [...times(4, "X.X"), "...", "X.X"];
    expect(lines(...one)).toEqual([one]);
    // Three pixels are no letter of ten.
    const two = [...times(4, "X.X"), "...", ...times(3, "X.X")];
    expect(lines(...two)).toEqual([two]);
    expect(lines("...", "...")).toEqual([["...", "..."]]);
  });

  test("counts as a letter's from three tenths on", () => {
    const two = (dark: string): string[] => [...times(4, "X.X"), "...", ...times(4, `${dark}.${dark}`)];
    expect(lines(...two("3"))).toHaveLength(2);
    expect(lines(...two("2"))).toHaveLength(1);
  });

  test("that touches at a corner is one letter", () => {
    expect(lines("X..", ".X.", "..X", ".X.", "...", ...times(4, "X.."))).toHaveLength(2);
    expect(lines("X..", "...", "..X", ".X.", "...", ...times(4, "X.."))).toHaveLength(1);
  });
});

describe("what is no letter", () => {
  const upper = times(6, "XX....");
  const lower = times(8, "XX..XX");
  /** Rows between the two lines. */
  const between = (...rows: string[]): string[][] => lines(...upper, ...rows, ...lower);

  test.each<[string, string[], 0 | 1]>([
    ["belongs to the letter right below it", ["......", "....X.", "......"], 1],
    [
      "belongs to the letter right below it, whose left corner it overlaps",
      ["......", "...XX.", "......"],
      1,
    ],
    [
      "belongs to the letter right below it, whose right corner it overlaps",
      ["......", ".XXX..", "......"],
      1,
    ],
    ["belongs to the nearest line, if it stands beside the letter below", ["......", "..XX..", "......"], 0],
    ["belongs to the nearest line, if it is farther above the letter", ["....X.", "......", "......"], 0],
    [
      "belongs to the nearest line, if that is the lower",
      ["......", "......", "......", "......", "..X...", "......"],
      1,
    ],
    ["belongs to the upper line, if it is as near", ["......", "......", "..XX..", "..XX..", "......"], 0],
  ])("%s", (_, rows, owner) => {
    const all = [...upper, ...rows, ...lower];
    const edge = owner === 0 ? 6 + rows.length : 6;
    expect(lines(...all)).toEqual([kept(all, 0, edge), kept(all, edge, all.length)]);
  });

  test("stands beside the letters, and goes with the nearest line", () => {
    const all = ["..X...", "......", ...times(6, "XX...X"), "......", ...times(6, "XX..X."), "..X..."];
    expect(lines(...all)).toEqual([kept(all, 0, 8), kept(all, 9, 16)]);
  });

  test("is pale, and goes with what it touches, or else with the nearest line", () => {
    const all = [...upper, "..1...", "1.....", ".....1", "......", "1.....", ...lower];
    expect(between(...all.slice(6, 11))).toEqual([kept(all, 0, 9), kept(all, 9, 19)]);
    // It touches the letter below, whatever is nearest.
    const far = [...times(4, "XX...."), "......", "....1.", "....X.", ...times(16, "....X.")];
    expect(lines(...far)).toEqual([kept(far, 0, 5), kept(far, 5, 23)]);
  });
});

test("letters are of one line if one row runs through all of them", () => {
  const [upper, lower] = [times(3, "X...."), times(3, "..X..")];
  expect(lines(...upper, "X.X..", ...lower)).toHaveLength(1);
  expect(lines("X......", ...times(3, "X.X...."), "..X.X.X", ...times(5, "....X.X"))).toHaveLength(2);
});

describe("a letter that runs through two lines", () => {
  /** A hook beside two lines with two letters each, which are six pixels high and three apart. */
  const beside = (hook: readonly string[]): string[] =>
    hook.map((one, y) => `${y < 6 || y > 8 ? "X.X." : "...."}${one}`);
  /** The same after the hook has been cut at a row. */
  const cutAt = (hook: readonly string[], row: number): string[][] => [
    hook.map((one, y) => `${y < 6 ? "X.X." : "...."}${y < row ? one : "..."}`),
    hook.map((one, y) => `${y > 8 ? "X.X." : "...."}${y >= row ? one : "..."}`),
  ];
  const hook = (thin: readonly number[], from = 0, to = 15): string[] =>
    Array.from({ length: 15 }, (_, y) => (y < from || y >= to ? "..." : thin.includes(y) ? "..X" : ".XX"));

  test.each<[string, string[], number]>([
    ["is cut where it is thinnest", hook([7]), 7],
    ["is cut at the first of such rows", hook([6, 8]), 6],
    ["is cut between the rows of the two lines", hook([1, 2, 3, 5, 9, 12]), 5],
    ["is cut right below the row of the upper line", hook([3, 4, 9]), 4],
    ["is cut right above the row of the lower line", hook([3, 8, 9]), 8],
    ["is cut, even if it begins in the row of the upper line", hook([8], 3), 8],
    ["is cut, even if it ends in the row of the lower line", hook([6], 0, 13), 6],
    ["goes with the letter below it, if what is above it is no letter", hook([6], 3), 3],
    ["is not cut, if it ends right above that row", hook([6], 0, 12), 15],
  ])("%s", (_, drawn, row) => {
    expect(lines(...beside(drawn))).toEqual(cutAt(drawn, row));
  });

  test("is not cut for the sake of dots", () => {
    const dotted = hook([7]).map((row, y) => (y === 2 || y === 12 ? `X${row}` : `.${row}`));
    expect(lines(...dotted)).toEqual([dotted]);
  });

  test("is cut as often as there are lines", () => {
    const all = ["X.X.", "....", "X.X."].flatMap((row) => times(row === "...." ? 2 : 6, row));
    const three = [...all, "....", "....", ...times(6, "X.X.")].map(
      (row, y) => `${row}${y === 6 || y === 14 ? ".X" : "XX"}`,
    );
    expect(lines(...three)).toEqual([kept(three, 0, 6), kept(three, 6, 14), kept(three, 14, 22)]);
  });
});
