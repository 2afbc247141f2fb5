import { expect, test } from "vitest";
import { subject, without } from "../../src/checks/sample.ts";
import { missingOf, sistersAt } from "../../src/orders/missing.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";

const missingIn = (...sheets: Sheet[]) => missingOf(subject(sheets).order);

test("a plate of four with its four devices lacks nothing", () => {
  expect(missingIn(...completeOrder())).toEqual([]);
});

test("a plate of four with three device sheets lacks the fourth", () => {
  expect(missingIn(plate(), deviceAt(1), deviceAt(2), deviceAt(4))).toEqual([
    { station: "S-104", kind: "device", position: 3 },
  ]);
});

test("devices for a plate without a plate sheet lack the plate", () => {
  expect(missingIn(deviceAt(1), deviceAt(2))).toEqual([{ station: "S-104", kind: "plate" }]);
});

test("a device standing alone lacks nothing and fills no position", () => {
  expect(missingIn(aloneDevice())).toEqual([]);
  expect(missingIn(plate({ gangs: 2 }), deviceAt(1), aloneDevice({ mark: "S-104" }))).toEqual([
    { station: "S-104", kind: "device", position: 2 },
  ]);
});

test("a plate without a mark awaits nothing, for nothing could be matched to it", () => {
  expect(missingIn(without(plate(), "mark"))).toEqual([]);
});

test("a number of gangs that no plate has asks for no sheets", () => {
  expect(missingIn(plate({ gangs: 400 }))).toEqual([]);
  expect(missingIn(plate({ gangs: 20 }))).toEqual([]);
  expect(missingIn(plate({ gangs: 19 }))).toHaveLength(19);
});

test.each<[string, Sheet[], number[]]>([
  ["two of four", [deviceAt(1), deviceAt(3)], [2, 4]],
  [
    "two of four, and one that stands alone",
    [deviceAt(1), deviceAt(3), aloneDevice({ mark: "S-104" })],
    [2, 4],
  ],
  ["two that name different gangs", [deviceAt(1), deviceAt(3, { gangs: 3 })], []],
  ["one that names no gangs", [without(deviceAt(1), "gangs")], []],
  ["two of four, and their plate", [plate(), deviceAt(1), deviceAt(3)], []],
])("without a plate sheet, %s: the devices that it would need besides", (_what, sheets, positions) => {
  const [station] = subject(sheets).order.stations;
  if (station === undefined) throw new Error("no station");
  expect(sistersAt(station).map(({ position }) => position)).toEqual(positions);
  expect(sistersAt({ ...station, mark: "" })).toEqual([]);
});
