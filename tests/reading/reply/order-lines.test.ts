import { expect, test } from "vitest";
import { orderedOtherwise } from "../../../src/reading/reply/order-lines.ts";
import { catalogue } from "../../make/config.ts";
import { aloneDevice, completeOrder } from "../../make/sample.ts";

const alone = [1, 2].map((n) => aloneDevice({ id: `1/${n}`, mark: `B-${n}`, order: "FM-72", finish: "CHK" }));
const facts = { marks: ["B-1", "B-2"], numbers: ["FM-72"], sheets: alone, earlier: [] };

const against = (...lines: readonly string[]) =>
  orderedOtherwise(["PURCHASE ORDER", ...lines].join("\n"), facts, catalogue).map(({ words, counts = [] }) =>
    [words, ...counts.map(({ of, number }) => `${number} ${of}`)].join(": "),
  );

test.each([
  ["its stations", ["1 B-1 1 ea 45.00", "2 B-2 1 ea 45.00"]],
  ["their finish", ["B-1 Chalk, engraved 1 ea 45.00"]],
  ["other goods and terms", ["Freight 1 ea 25.00", "FRT-01 1 ea 25.00", "See clause B-3 of the terms."]],
  ["a number of its own", ["PO number 4711", "Quote B-99-2026"]],
  ["the order's number", ["PO No. FM-72"]],
  ["its stations in a row", ["Stations B-1, B-2 and B-3 per the sheets, 45.00"]],
])("a purchase order with %s says nothing against the sheets", (_, lines) => {
  expect(against(...lines)).toEqual([]);
});

test.each([
  ["B-3 1 ea 45.00"],
  ["3\tB-3\t45.00"],
  ["B-1 2 ea 90.00"],
  ["B-2 Oat, engraved 1 ea 45.00"],
  ["PO No. FM-73"],
])("a purchase order says against the sheets: %s", (line) => {
  expect(against(line)).toEqual([line.replaceAll("\t", " ")]);
});

test.each([
  [["Wall stations, engraved 3 ea 45.00"], ["Wall stations, engraved 3 ea 45.00: 3 station"]],
  [["Qty 2 keypads, engraved"], ["Qty 2 keypads, engraved: 2 device"]],
  [
    ["Wall stations, ground floor 1 ea", "Wall stations, upper floor 2 ea"],
    ["Wall stations, ground floor 1 ea … Wall stations, upper floor 2 ea: 3 station"],
  ],
  [["Wall plates 10 ea 4.00"], []],
])("what a purchase order counts is held against what came: %j", (lines, counts) => {
  expect(against(...lines)).toEqual(counts);
});

test("a station of several sheets may be ordered by any of their numbers", () => {
  const given = { marks: ["S-104"], numbers: ["BW-2207"], sheets: completeOrder(), earlier: [] };
  const said = (line: string) => orderedOtherwise(`PO number 1\n${line}`, given, catalogue);
  for (const number of [1, 4, 5]) expect(said(`S-104 ${number} ea`)).toEqual([]);
  expect(said("S-104 3 ea")).toHaveLength(1);
});

test("other papers say nothing of quantities", () => {
  expect(orderedOtherwise("Floor plan\nB-3 1 ea 45.00", facts, catalogue)).toEqual([]);
});
