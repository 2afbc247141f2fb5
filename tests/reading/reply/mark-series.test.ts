import { expect, test } from "vitest";
import { withWholeMarks } from "../../../src/reading/reply/mark-series.ts";

const marks = ["S-101", "S-102", "S-103", "S-104"];

test.each([
  ["S-101 to S-104 here", "S-101 S-102 S-103 S-104 here"],
  ["s-101 thru 103", "s-101 s-102 s-103"],
  ["S-101-104", "S-101 S-102 S-103 S-104"],
  ["S101 – S103", "S101 S102 S103"],
  ["S-101/102/103", "S-101 S-102 S-103"],
  ["S-101, 102 and 104", "S-101 S-102 S-104"],
  ["S-101 & S-103", "S-101 S-103"],
])("“%s” names “%s”", (said, whole) => {
  expect(withWholeMarks(said, marks)).toBe(whole);
});

test("a station between two that is missing is named", () => {
  expect(withWholeMarks("S-101 to S-104", ["S-101", "S-104"])).toBe("S-101 S-102 S-103 S-104");
});

test.each([
  "S-101, 2 plates",
  "S-101, 102, 105",
  "S-101 to S-1040",
  "S-104 to S-101",
  "S-100 to S-104",
  "A-101 to A-104",
  "S-101 to 104-2",
  "S-101 to 104B",
  "S-101 to S-999",
])("“%s” stays as it is", (said) => {
  expect(withWholeMarks(said, marks)).toBe(said);
});

test("a mark that looks like a series is none", () => {
  expect(withWholeMarks("S-101-104", [...marks, "S-101-104"])).toBe("S-101-104");
});

test("a longer series is not written out", () => {
  expect(withWholeMarks("S-100 to S-159", ["S-100"]).split(" ").length).toBe(60);
  expect(withWholeMarks("S-100 to S-160", ["S-100"])).toBe("S-100 to S-160");
});
