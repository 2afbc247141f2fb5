import { expect, test } from "vitest";
import { isPrefixed, lookSame, looksOf } from "../../src/orders/alike.ts";

test.each([
  ["EG-500", "EG-50O"],
  ["EG-500", "EG-5OO"],
  ["S-104", "S-1O4"],
  ["S-104", "S-0104"],
  ["S-104", "S104"],
  ["S-104", "s 104"],
  ["S-101", "S-10l"],
  ["S-101", "S-10I"],
  ["OG-5518", "0G-5518"],
  ["BW-2207", "8W-2207"],
  ["S-184", "S-1B4"],
  ["4512", "04512"],
])("%s and %s look the same", (one, other) => {
  expect(looksOf(other)).toBe(looksOf(one));
});

test.each([
  ["S-10B", "S-108"],
  ["S-10S", "S-105"],
  ["S-10B", "S-1OB"],
  ["L-1", "1-1"],
  ["I1", "11"],
  ["O1", "01"],
  ["1-01", "10-1"],
  ["S-104", "S-140"],
  ["B-8", "8-B"],
])("%s and %s do not", (one, other) => {
  expect(looksOf(one)).not.toBe(looksOf(other));
});

test("of a text that is no number the beginning tells", () => {
  expect(looksOf("A".repeat(300))).toHaveLength(200);
});

test("words that announce a number do not change its looks", () => {
  expect(lookSame("PO EG-50O", "Order EG-500")).toBe(true);
});

test.each([
  ["WO EG-500", "EG-500", true],
  ["GC22-8147", "22-8147", true],
  ["PO EG-500", "EG-500", false],
  ["1-4512", "4512", false],
  ["EG-50", "50", false],
  // three digits of four characters at least, behind eight letters at most
  ["EG-500A", "500A", true],
  ["EG-500", "500", false],
  ["EG-12A4", "12A4", false],
  ["BUILDING 4512", "4512", true],
  ["BUILDINGS 4512", "4512", false],
  ["4512 WO", "4512", false],
  ["4512", "WO 4512", true],
  ["4512", "4512", false],
])("%s and %s: letters in front %j", (one, other, prefixed) => {
  expect(isPrefixed(one, other)).toBe(prefixed);
});
