import * as fc from "fast-check";
import { expect, test } from "vitest";
import { nearNumbers, nearProjects, oneSlipApart, slipsBetween } from "../../src/orders/near.ts";

// Published values of the optimal string alignment distance: kitten/sitting is the usual example of edit
// distance, CA/ABC the one that tells it from the unrestricted Damerau-Levenshtein distance, which is 2.
test.each([
  ["kitten", "sitting", 3],
  ["CA", "ABC", 3],
  ["BW-2207", "bw 2207", 0],
  ["BW-2207", "BW-2270", 1],
])("%s and %s are %d slips apart", (one, other, slips) => {
  expect(slipsBetween(one, other)).toBe(slips);
});

test.each([
  ["a digit mistyped", "BW-2207", "BW-2208", true],
  ["two digits swapped", "BW-2207", "BW-2270", true],
  ["a digit left out", "BW-2207", "BW-227", true],
  ["the same number", "BW-2207", "bw2207", false],
  ["two slips", "BW-2207", "BW-3208", false],
  ["the shortest numbers that tell a slip", "2207", "2208", true],
  ["numbers too short to tell a slip", "104", "105", false],
  ["one of them too short", "104", "1045", false],
])("order numbers: %s", (_, one, other, near) => {
  expect(nearNumbers(one, other)).toBe(near);
});

test.each([
  ["a letter left out", "Larkspur Library", "Larkspur Libary", true],
  ["two slips in a long name", "Larkspur Library", "Larkspurr Libary", true],
  ["two slips in a name of eight letters", "Larkspur", "Lakrspuur", true],
  ["two slips in a name of seven", "Larkspu", "Lakrspuu", false],
  ["two slips in a short name", "Foyer", "Foiyr", false],
  ["three slips", "Larkspur Library", "Lakspurr Libary", false],
  ["case and hyphen only", "Larkspur Library", "larkspur-library", false],
  ["another digit", "Tower 1", "Tower 2", false],
  ["another digit and a slip", "Quarry Tower 1", "Quary Tower 2", false],
])("project names: %s", (_, one, other, near) => {
  expect(nearProjects(one, other)).toBe(near);
});

test("texts too long to be names are never near, and cost no time", () => {
  expect(nearProjects("A".repeat(100_000), `${"A".repeat(99_999)}B`)).toBe(false);
  expect(slipsBetween("A".repeat(200), `${"A".repeat(199)}B`)).toBe(1);
  expect(slipsBetween("A".repeat(200), "A".repeat(201))).toBe(Number.POSITIVE_INFINITY);
  expect(slipsBetween("A".repeat(300), "a".repeat(300))).toBe(0);
  expect(oneSlipApart("A".repeat(200), `${"A".repeat(199)}B`)).toBe(true);
  expect(oneSlipApart("A".repeat(200), "A".repeat(201))).toBe(false);
});

test("one slip apart is a distance of one, found in one reading", () => {
  const text = fc.string({ unit: fc.constantFrom("A", "B", "1"), maxLength: 6 });
  fc.assert(
    fc.property(text, text, (one, other) => {
      expect(oneSlipApart(one, other)).toBe(slipsBetween(one, other) === 1);
    }),
    { numRuns: 3000 },
  );
});
