import { expect, test } from "vitest";
import { devicesExchanged } from "../../src/checks/order/devices-exchanged.ts";
import { legend, subject, without } from "../../src/checks/sample.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { deviceAt, plate } from "../make/sample.ts";

/** Which positions of an order are taken for exchanged. */
const told = (...sheets: Sheet[]): string[] =>
  [...devicesExchanged.find(subject(sheets), catalogue)].map(({ facts: { position, there, own, other } }) =>
    [position, own, "↔", there, other].map(String).join(" "),
  );
const gangs = (...names: string[]): Sheet =>
  plate({ gangs: 3, legends: names.map((name, i) => legend(`${i + 1}` as "1", ...name.split("/"))) });
const below = (position: number, legends: string, changes: Partial<DeviceSheet> = {}): DeviceSheet =>
  deviceAt(position, {
    gangs: 3,
    legends: legends.split(", ").map((text, i) => legend(`${i + 1}` as "1", ...text.split("/"))),
    ...changes,
  });
const [lights, shades] = ["ON, DIM, OFF", "OPEN, STOP, CLOSE"];

test.each([
  ["Shades", "Lights", lights, "open, close"],
  ["WINDOW BLINDS", "LIGHTS", lights, "UP, DOWN"],
  ["STAGE/CURTAIN", "LIGHTS", lights, "RAISE/CURTAIN, LOWER/CURTAIN"],
  ["KITCHEN", "HALL", "HALL, DIM", "KITCHEN, DIM"],
  ["DEN", "BAR", "BAR ON, BAR OFF", "DEN ON, DEN OFF"],
  ["NORTH WALL", "SOUTH WALL", "SOUTH, OFF", "NORTH, OFF"],
  ["SHADES", "KITCHEN", "KITCHEN, OFF", "OPEN, CLOSE"],
])("below %s and %s stand “%s” and “%s”, which are exchanged", (one, other, first, second) => {
  expect(told(gangs(one, other), below(1, first), below(2, second))).toHaveLength(1);
});

test.each([
  ["one word of moving", "SHADES", "LIGHTS", lights, "OPEN, OFF"],
  ["screening moves nothing", "SCREENING", "LIGHTS", lights, shades],
  ["nor does a landscreen", "LANDSCREEN", "LIGHTS", lights, shades],
  ["words of two letters say little", "TV", "PC", "PC ON, PC OFF", "TV ON, TV OFF"],
  ["one of two is below its own name", "KITCHEN", "HALL", "KITCHEN, HALL", "KITCHEN, OFF"],
  ["only one says the other's name", "KITCHEN", "HALL", "HALL, OFF", "ON, OFF"],
  ["only the other does", "KITCHEN", "HALL", "ON, OFF", "KITCHEN, OFF"],
  ["a gang without a name", "SHADES", "", lights, shades],
  ["each moves what is its own", "SHADES", "BLINDS", shades, "UP, DOWN"],
])("%s: below %s and %s nothing is exchanged", (_why, one, other, first, second) => {
  expect(told(gangs(one, other), below(1, first), below(2, second))).toEqual([]);
});

test("only devices that go into the one plate of a station, at a position, are compared", () => {
  const [named, right, wrong] = [gangs("SHADES", "LIGHTS"), below(1, lights), below(2, shades)];
  expect(told(named, right, wrong)).toEqual(["2 LIGHTS ↔ 1 SHADES"]);
  expect(told(right, wrong)).toEqual([]);
  expect(told(named, { ...named, id: "1/9", finish: "CHK" }, right, wrong)).toEqual([]);
  expect(told(named, right, { ...wrong, standing: "alone" })).toEqual([]);
  expect(told(named, right, without(wrong, "position"))).toEqual([]);
  expect(told(named, right, { ...wrong, mark: "S-105" })).toEqual([]);
});

test("what is left plain or stands on a device's own plate is no name and no legend", () => {
  const plainly = <S extends Sheet>(sheet: S): S => ({
    ...sheet,
    legends: sheet.legends.map((one) => ({ ...one, plain: true })),
  });
  const [named, right, wrong] = [gangs("SHADES", "LIGHTS"), below(1, lights), below(2, shades)];
  expect(told(plainly(named), right, wrong)).toEqual([]);
  expect(told(named, right, plainly(wrong))).toEqual([]);
  expect(told(named, right, { ...wrong, legends: [legend("plate", "OPEN", "CLOSE")] })).toEqual([]);
});

test("a plate is told of once, at the first of its devices that belongs elsewhere", () => {
  const named = gangs("KITCHEN", "HALL", "PORCH");
  expect(told(named, below(1, "HALL, OFF"), below(2, "KITCHEN, OFF"), below(3, "ON, OFF"))).toEqual([
    "1 KITCHEN ↔ 2 HALL",
  ]);
  expect(told(named, below(1, "ON, OFF"), below(2, "PORCH, OFF"), below(3, "HALL, OFF"))).toEqual([
    "2 HALL ↔ 3 PORCH",
  ]);
});
