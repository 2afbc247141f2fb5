import { expect, test } from "vitest";
import { calledElsewhere } from "../../src/checks/called-elsewhere.ts";
import { subject, without } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

/** The copies that are called after places for which nothing came. */
const told = (...sheets: Sheet[]): string[] =>
  calledElsewhere(subject(sheets).order).flatMap(({ copies }) => copies.map(({ file }) => file));
/** One sheet of a device that stands alone, saved under several names. */
const alone = (mark: string, ...files: string[]): Sheet[] =>
  files.map((file, n) => aloneDevice({ id: `1/${n + 1}`, mark, file }));

test.each<[string, Sheet[], string[]]>([
  ["other positions", alone("S-101", "S-101 pos 1.pdf", "S-101 pos 2.pdf"), ["S-101 pos 2.pdf"]],
  ["a position beside none", alone("S-101", "S-101.pdf", "S-101 pos 2.pdf"), ["S-101 pos 2.pdf"]],
  ["another mark", alone("S-101", "S-101.pdf", "S-102.pdf"), ["S-102.pdf"]],
  ["another mark of one digit", alone("S-1", "S-1.pdf", "S-2 Bar.pdf"), ["S-2 Bar.pdf"]],
  [
    "another position of a plate",
    [plate(), deviceAt(1), deviceAt(1, { id: "1/8", file: "S-104 pos 3.pdf" })],
    ["S-104 pos 3.pdf"],
  ],
  ["the same position", alone("S-101", "S-101 pos 2.pdf", "S-101 pos 2 copy.pdf"), []],
  ["the only position", alone("S-101", "S-101.pdf", "S-101 pos 1.pdf"), []],
  ["a copy's number", alone("S-101", "S-101.pdf", "S-101 (2).pdf"), []],
  ["no place", alone("S-101", "S-101.pdf", "device.pdf"), []],
  ["a mark of another series", alone("S-1", "S-1.pdf", "FL-2.pdf"), []],
  ["no mark of its own", alone("S-101", "S-101.pdf", "S-102.pdf").map((one) => without(one, "mark")), []],
  [
    "another position, for which a sheet came",
    [plate(), deviceAt(1), deviceAt(3), deviceAt(1, { id: "1/8", file: "S-104 pos 3.pdf" })],
    [],
  ],
  [
    "a mark for which a sheet came",
    [...alone("S-101", "S-101.pdf", "S-102.pdf"), aloneDevice({ mark: "S-102" })],
    [],
  ],
])("a copy whose name tells %s", (_name, sheets, files) => {
  expect(told(...sheets)).toEqual(files);
});

test("what was made of a list has its name from us", () => {
  const list = { file: "stations.csv", row: 3, cells: {}, unread: [] };
  expect(told(...alone("S-101", "S-101.pdf", "S-102.pdf").map((one) => ({ ...one, list })))).toEqual([]);
});

test("a second file of one name is known by that name", () => {
  const [first, second] = alone("S-101", "S-101.pdf", "S-102 (2).pdf");
  if (first === undefined || second === undefined) throw new Error("no sheets");
  expect(told(first, { ...second, named: "S-102.pdf" })).toEqual(["S-102 (2).pdf"]);
});
