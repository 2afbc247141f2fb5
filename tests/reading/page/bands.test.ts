import { expect, test } from "vitest";
import { bandsOf } from "../../../src/reading/page/bands.ts";
import { ink, rowsOf } from "./ink-rows.ts";

/** The lines of a text whose letters are ten pixels in size: the rows of each, and where it ends. */
const bands = (...rows: string[]) => bandsOf(ink(...rows), 10).map((band) => [band.bottom, rowsOf(band)]);
const times = (count: number, row: string): string[] => Array<string>(count).fill(row);

test("a line is a band of ink, with two rows around it", () => {
  expect(bands(...times(3, "..."), "XX.", "X..", ...times(3, "..."), ".XX", ...times(3, "..."))).toEqual([
    [5, ["...", "...", "XX.", "X..", "...", "..."]],
    [9, ["...", "...", ".XX", "...", "..."]],
  ]);
});

test("the dot of an i belongs to it, up to two rows above", () => {
  expect(bands("X", ".", ".", "X", "X")).toEqual([[5, ["X", ".", ".", "X", "X"]]]);
  expect(bands("X", ".", ".", "X", ".", ".", "X", ".")).toHaveLength(1);
  expect(bands("X", ".", ".", ".", "X", "X")).toEqual([
    [1, ["X", ".", "."]],
    [6, [".", ".", "X", "X"]],
  ]);
  expect(bands("X", "X", ".", ".", ".", "X")).toHaveLength(2);
});

test("a band at the edge of its field has fewer rows around it", () => {
  expect(bands("...", "X..", "...")).toEqual([[2, ["...", "X..", "..."]]]);
  expect(bands("X..")).toEqual([[1, ["X.."]]]);
});

test("ink counts from half of the darkest on, and only if anybody can see that", () => {
  expect(bands("8", ".", ".", ".", "4", ".", ".", ".", "3")).toEqual([
    [1, ["8", ".", "."]],
    [5, [".", ".", "4", ".", "."]],
  ]);
  expect(bands("2", ".", ".", ".", "2")).toEqual([]);
  expect(bands("...")).toEqual([]);
});

test("ink counts in the first column and the last, each in its own row", () => {
  expect(bands("...", "...", "...", "...", "X..", "...")).toEqual([[5, ["...", "...", "X..", "..."]]]);
  expect(bands("..X", "...", "...", "...", "...")).toEqual([[1, ["..X", "...", "..."]]]);
  // A row does not go on in the next.
  expect(bands("X..", "...", "...", "...", "X..")).toHaveLength(2);
});

test("a band that is higher than a line can be is taken apart", () => {
  const touching = (between: number) => [
    ...times(5, "X.X..."),
    ...times(between, "....X."),
    ...times(5, "X.X..."),
  ];
  expect(bands(...touching(2))).toEqual([[12, touching(2)]]);
  expect(bands(...times(9, "......"), ...touching(2))).toHaveLength(1);
  const [upper, lower] = bandsOf(ink(...touching(3)), 10);
  expect([upper?.bottom, lower?.bottom]).toEqual([13, 13]);
  expect([upper, lower].map((one) => one && rowsOf(one).findIndex((row) => row.startsWith("X")))).toEqual([
    0, 8,
  ]);
});
