import { expect, test } from "vitest";
import { numberKey, numberPart } from "../../src/orders/keys.ts";

// Common practice, no source.
test.each([
  ["PO EG-500", "EG500"],
  ["P.O. EG-500", "EG500"],
  ["p.o.# eg 500", "EG500"],
  ["PO Number: EG-500", "EG500"],
  ["Purchase Order No. 4512", "4512"],
  ["Order 22-8147", "228147"],
  ["No. 4512", "4512"],
  ["№ 4512", "4512"],
  ["Job 4512", "4512"],
  ["PO4512", "4512"],
  ["# 4512", "4512"],
])("the words before “%s” are no part of the number", (typed, key) => {
  expect(numberKey(typed)).toBe(key);
});

test.each([
  ["NO-1042", "NO1042"],
  ["Order", "ORDER"],
  ["PO TBD", "POTBD"],
  ["POLK-12", "POLK12"],
  ["NORTH 12", "NORTH12"],
  ["JOBSITE 4", "JOBSITE4"],
  ["WO EG-500", "WOEG500"],
  ["", ""],
])("“%s” is kept as it is", (typed, key) => {
  expect(numberKey(typed)).toBe(key);
});

test("what stands before the number goes, its own hyphens stay", () => {
  expect(numberPart("PO # eg-500-1")).toMatch(/^\W*eg-500-1$/);
});

test("texts too long to be numbers cost no time", () => {
  expect(numberKey("PO ".repeat(40_000) + "1")).toHaveLength(80_001);
});

test("in a text of two hundred characters words announce a number, in a longer one they do not", () => {
  const number = "9".repeat(197);
  expect(numberPart(`PO ${number}`).trim()).toBe(number);
  expect(numberPart(`PO ${number}9`)).toBe(`PO ${number}9`);
});
