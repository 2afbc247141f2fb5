import { expect, test } from "vitest";
import { asksForSeveral, marksIn, mayAskForSeveral, namesSeveral } from "../../src/checks/several.ts";

// Common practice, no source.
test.each([
  "Qty 2",
  "quantity: 12",
  "Typ of 4",
  "typical x3",
  "typ. of 2",
  "lobby x3",
  "x 12",
  "3x lobby",
  "2 x lobby",
  "4 ea",
  "Lobby, 3 pcs",
  "2 pieces.",
])("“%s” asks for several, even as the name of a project", (text) => {
  expect(asksForSeveral(text)).toBe(true);
  expect(mayAskForSeveral(text)).toBe(true);
});

test.each([
  "typ.",
  "Typical unit",
  "4EA Farms",
  "set of 3",
  "pairs of 2",
  "each floor",
  "every room",
  "all bedrooms",
  "all guest rooms",
  "Rooms 201-204",
  "for bedrooms 1 to 4",
  "Rooms 201, 202 and 203",
  "various",
  "req'd",
  "same for S-105",
  "(2) keypads",
  "Lobby X2",
  "needs 3X these",
])("“%s” may, but not as the name of a project", (text) => {
  expect(asksForSeveral(text)).toBe(false);
  expect(mayAskForSeveral(text)).toBe(true);
});

test.each([
  "Qty 1",
  "qty: 01",
  "quantityx 2",
  "1x lobby",
  "x1",
  "1 ea",
  "4x4 box",
  "Rooms 201 & 202",
  "outside rooms 201-204",
  "rooms 201-204 corridor",
  "all-purpose room",
  "2 x 4",
  "typical height",
  "typ. mounting",
  "reset of 3",
  "set of 3000",
  // Years and numbers of rooms are no quantities.
  "lobby x2026",
  "2026x lobby",
  "room 1204 ea",
  "lobby X2026",
  "lobby 2026X",
  "teach floor plan",
  "(1) keypad",
  "(100) keypads",
  "X3",
  "Phoenix 3",
  "atypical of 2 wings",
  "atypical",
  "S-104",
])("“%s” asks for one", (text) => {
  expect(mayAskForSeveral(text)).toBe(false);
});

test("marks of one series are told once each, of two series the larger", () => {
  expect(marksIn("S-201, s 202 and S201")).toEqual(["S201", "S202"]);
  expect(marksIn("L-2, S-104 and S-105")).toEqual(["S104", "S105"]);
  expect(marksIn("ABCDE-1, S-123456, XS-1x2")).toEqual([]);
  expect(marksIn("lobby")).toEqual([]);
});

test.each([
  "S-201 and S-202",
  "S-201,K-7",
  "S-201 & L-3",
  "S-201, 202",
  "S-201 thru 204",
  "S-201/202",
  "S-201A/B",
  "S-201-S-204",
  " 201 to 204 ",
  "201, 202",
  "S-1,2",
  "S-1 & 2",
  "S-1..3",
  "S-1 thru 3",
  "Rooms 101-110",
  "units 4 to 9",
])("“%s” names several stations", (text) => {
  expect(namesSeveral(text)).toBe(true);
});

test.each([
  "S-201",
  "L2-S104",
  "L-2 S-104",
  "S-201, 201",
  "S-201/2",
  "S-201, 12",
  "S-123456A/B",
  "S-123456-S-204",
  "S-204-S-123456",
  "ABCDE-201, 202",
  "S-201234, 201235",
  "S-201 & 1204",
  "S-20 & 201234",
  "ABCDE-20-ABCDE-21",
  "201, 201234",
  "201234, 201",
  "Room 201, 202",
  "Unit 12A/B",
  "S-201 to K-9 wing",
  "201 lobby, 202",
  "2, 3",
  "S-1,1",
  "S-1-3",
  "S-1.3",
  "S-1/2",
  "Rm 1,2",
  "Room 101-110",
  "Rooms 101-110 corridor",
  "lobby",
])("“%s” names one", (text) => {
  expect(namesSeveral(text)).toBe(false);
});
