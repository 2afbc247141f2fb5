import { expect, test } from "vitest";
import { addressOf, isList, isTitle, type Table } from "../../../src/reading/list/list-facts.ts";

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

test("a list has a table that begins with the title", () => {
  const table = (...rows: string[]): Table => ({
    name: "",
    rows: rows.map((text, i) => [{ column: 0, row: i + 1, text }]),
  });
  expect(isList([table("Orders"), table(" STATION list ", "x")])).toBe(true);
  expect(isList([table("Orders", "Station list")])).toBe(false);
  expect(isList([table()])).toBe(false);
  expect(["Station list", "Station lists", "A station list"].map(isTitle)).toEqual([true, false, false]);
});
