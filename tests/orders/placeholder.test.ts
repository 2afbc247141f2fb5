import { expect, test } from "vitest";
import { isPlaceholder, saysSame } from "../../src/orders/placeholder.ts";

// Common practice, no source.
test.each([
  "TBD",
  "n/a",
  "x",
  "xxx",
  ".",
  "",
  "See PO",
  "on file with your office now",
  "on file at Brightwire",
  "on file already",
  "same as the last order you gave",
  "per last order",
  "as usual",
  "as before",
  "see dwg",
  "Per schedule",
])("“%s” says nothing", (typed) => {
  expect(isPlaceholder(typed)).toBe(true);
});

test.each([
  "TBD Street 4",
  "X Street",
  "Mexx",
  "Tower X",
  "Data on file",
  "on file with your office downtown",
  "the same as last time",
  "same as the last order you gave us",
  "as usual, 4 Elm Street",
  "not as before",
  "Planned",
  "Per Schedel",
])("“%s” may say something", (typed) => {
  expect(isPlaceholder(typed)).toBe(false);
});

test.each([
  ["same", true],
  ["Same as above", true],
  ["SAME AS BILL-TO", true],
  ["same as billing address", true],
  ["Same as bill", true],
  ["Same as above, dock 4", false],
  ["the same", false],
  ["same address", false],
])("“%s” refers to another field: %j", (typed, says) => {
  expect(saysSame(typed)).toBe(says);
});
