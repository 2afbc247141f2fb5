import { expect, test } from "vitest";
import { backOff } from "../../src/mail/back-off.ts";

test("waits double up to five minutes", () => {
  expect([1, 2, 3, 10, 11, 1000].map((failures) => backOff(failures, 0))).toEqual([
    500, 1000, 2000, 256_000, 300_000, 300_000,
  ]);
});

test("chance shortens a wait by half at most", () => {
  expect([backOff(1, 1), backOff(1, 0.5)]).toEqual([250, 375]);
});
