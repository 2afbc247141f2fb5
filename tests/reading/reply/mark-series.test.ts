import { expect, test } from "vitest";
import { withWholeMarks } from "../../../src/reading/reply/mark-series.ts";

const marks = ["S-101", "S-102", "S-103", "S-104"];

test.each([
  ["S-101 to S-104 here", "S-101 to S-104 here"],
  ["s-101 thru 103", "s-101 thru s-103"],
  ["S-101-104", "S-101-S-104"],
  ["S101 – 103", "S101 – S103"],
  ["S 101/102/103", "S 101/S 102/S 103"],
  ["S-101, 102 and 104", "S-101, S-102 and S-104"],
  ["S-101, 102, and 104", "S-101, S-102, and S-104"],
  ["S-101 & S-103", "S-101 & S-103"],
])("“%s” is “%s”", (said, whole) => {
  expect(withWholeMarks(said, marks)).toBe(whole);
});

test.each([
  "S-101, 2 plates",
  "S-101, 102, 105",
  "S-101 to 1040",
  "S-100 to 104",
  "A-101 to 104",
  "S-101 to 104-2",
  "S-101 to 104B",
  "Room 101 and 102",
])("“%s” stays as it is", (said) => {
  expect(withWholeMarks(said, marks)).toBe(said);
});

test("a mark that looks like a series is none", () => {
  expect(withWholeMarks("S-101-104", [...marks, "S-101-104"])).toBe("S-101-104");
});
