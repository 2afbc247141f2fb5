import { describe, expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import { overlap, standsIn } from "../../../src/reading/pdf/boxes.ts";

const frame: Box = [100, 50, 200, 70];

test.each<[string, Box, boolean]>([
  ["that share a corner of some size", [190, 60, 300, 90], true],
  ["that touch at the side", [200, 50, 300, 70], false],
  ["that touch above", [100, 70, 200, 90], false],
  ["apart to the side", [210, 50, 300, 70], false],
  ["apart to the side and above", [210, 80, 300, 90], false],
])("boxes %s overlap: %s", (_, other, expected) => {
  expect(overlap(frame, other)).toBe(expected);
  expect(overlap(other, frame)).toBe(expected);
});

describe("a line of text stands in a frame", () => {
  test.each<[string, Box, boolean]>([
    ["that it is all within", [110, 55, 150, 65], true],
    ["with its middle just below the upper edge", [110, 60, 150, 79], true],
    ["with its middle on the upper edge", [110, 60, 150, 80], false],
    ["with its middle just above the lower edge", [110, 40, 150, 61], true],
    ["with its middle on the lower edge", [110, 40, 150, 60], false],
    ["with the right half of it", [80, 55, 120, 65], true],
    ["with less than its right half", [79, 55, 119, 65], false],
    ["with the left half of it", [180, 55, 220, 65], true],
    ["with less than its left half", [181, 55, 221, 65], false],
    ["of which it fills the left half", [0, 55, 150, 65], true],
    ["of which it fills less than the left half", [0, 55, 149, 65], false],
    ["that it touches", [60, 55, 100, 65], false],
    ["though it has no width", [120, 55, 120, 65], false],
  ])("%s: %s", (_, text, expected) => {
    expect(standsIn(text, frame)).toBe(expected);
  });

  /** Not quite twice as wide as it is high. */
  const small: Box = [100, 50, 139, 70];
  const twice: Box = [100, 50, 140, 70];
  test.each<[string, Box, Box, boolean]>([
    ["but not one that begins before a small box and runs into half of it", [50, 55, 120, 65], small, false],
    ["but not one that ends behind a small box and begins in half of it", [119, 55, 189, 65], small, false],
    ["as one that runs into half of a box twice as wide as high", [50, 55, 120, 65], twice, true],
    ["as one that begins in half of a box twice as wide as high", [120, 55, 190, 65], twice, true],
    ["as one with its middle on the left edge of a small box", [50, 55, 150, 65], small, true],
    ["as one with its middle on the right edge of a small box", [89, 55, 189, 65], small, true],
  ])("%s: %j, %j, %s", (_, text, box, expected) => {
    expect(standsIn(text, box)).toBe(expected);
  });
});
