import { expect, test } from "vitest";
import { notesCarryOrders } from "../../src/checks/sheet/notes-carry-orders.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

const told = (sheet: Sheet): string[] =>
  [...notesCarryOrders.find(sheet, catalogue)].map(({ wording, spots }) => `${wording} ${spots[0]?.place}`);

test.each([
  ["pos 3", "elsewhere position"],
  ["pos. 3 of 4, north wall", "elsewhere position"],
  ["gang 3", "elsewhere position"],
  ["pos 2 of 3", "elsewhere gangs"],
  ["2 of 3", "elsewhere gangs"],
  ["1 of 4", "elsewhere position"],
  ["plate S-105", "elsewhere mark"],
  ["station S-105 pos 2", "elsewhere mark"],
  ["mark: S-105", "elsewhere mark"],
  ["plate # K-7", "elsewhere mark"],
  ["S-105", "elsewhere mark"],
  ["S-105, pos 2", "elsewhere mark"],
  ["3-gang plate", "elsewhere gangs"],
  ["two gang", "elsewhere gangs"],
  ["pos 3, please in red", "request notes"],
  ["plate S-105 or S-106", "request notes"],
])("on S-104, position 2 of 4, “%s” is asked about: %s", (notes, asked) => {
  expect(told(device({ notes }))).toEqual([asked]);
});

test.each([
  "pos 2",
  "pos no. 2",
  "position 2 of 4",
  "2 of 4",
  // It counts sheets.
  "3 of 5",
  "plate S-104",
  "plate S-0104",
  "LP-3",
  "E-105",
  "beside plate S-105",
  "left of station S-105",
  "replaces station S-105",
  "panel LP-3 pos 12",
  "S-105 side of the lobby",
  "page 3 of 4",
  "4-gang plate",
  "single gang",
  "next to 3-gang plate",
  "no",
])("on S-104, position 2 of 4, “%s” is not", (notes) => {
  expect(told(device({ notes })).filter((one) => one !== "remark notes")).toEqual([]);
});

test("gangs in the notes are held against what stands alone, and against a plate", () => {
  expect(told(aloneDevice({ notes: "3-gang plate" }))).toEqual(["elsewhere standing"]);
  expect(told(aloneDevice({ notes: "three gang box" }))).toEqual(["elsewhere standing"]);
  expect(told(plate({ notes: "single gang" }))).toEqual(["elsewhere gangs"]);
  for (const notes of ["1-gang", "single gang plate", "left of the 3-gang plate", "panel LP-3, 3-gang"])
    expect(told(aloneDevice({ notes })).filter((one) => one !== "remark notes")).toEqual([]);
});

test("a mark with more to it is no other", () => {
  expect(told(device({ mark: "L2-S104", notes: "plate S-104" }))).toEqual([]);
  expect(told(device({ mark: "S-104 lobby", notes: "plate S-104" }))).toEqual([]);
  expect(told(device({ mark: "S-104", notes: "plate S-10" }))).toEqual(["elsewhere mark"]);
  expect(told(device({ mark: "TBD", notes: "plate S-104" }))).toEqual([]);
});

test.each([
  ["pos 2 of 3", ["elsewhere standing"]],
  ["pos 2", ["elsewhere standing"]],
  ["pos 1 of 2", ["elsewhere standing"]],
  ["in plate S-104", ["elsewhere mark"]],
  ["no plate", ["request notes"]],
  ["pos 1", []],
  ["1 of 1", []],
  ["2 of 3", []],
  ["plate S-110", []],
])("of a device that stands alone as S-110, “%s” is %j", (notes, asked) => {
  expect(told(aloneDevice({ notes }))).toEqual(asked);
});

test.each([
  ["pos 2 of 3", ["elsewhere gangs"]],
  ["plate S-105", ["elsewhere mark"]],
  ["4 of 5", []],
  ["1 of 4", []],
])("of the plate S-104 of four gangs, “%s” is %j", (notes, asked) => {
  expect(told(plate({ notes }))).toEqual(asked);
});
