import { expect, test } from "vitest";
import { addressOf } from "../../../src/reading/list/list-facts.ts";

// The letters of columns as spreadsheets count them: A to Z, then AA to ZZ, then AAA.
test.each([
  [0, "A7"],
  [25, "Z7"],
  [26, "AA7"],
  [51, "AZ7"],
  [52, "BA7"],
  [701, "ZZ7"],
  [702, "AAA7"],
])("a cell of column %i is %s", (column, address) => {
  expect(addressOf({ column, row: 7 })).toBe(address);
});
