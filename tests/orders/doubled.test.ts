import { expect, test } from "vitest";
import { subject, without } from "../../src/checks/sample.ts";
import { doubledPlates, doubledPositions, enoughCame } from "../../src/orders/doubled.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";

/** The doubled positions of an order: where, the places that are free there, and the other station. */
const positions = (...sheets: Sheet[]) =>
  doubledPositions(subject(sheets).order).map(({ station, position, claims, positions: free, other }) => [
    `${station.mark}/${position}`,
    claims.length,
    free,
    other?.mark,
  ]);

/** Sheets of another station than the sample's, as files of their own. */
const at = (mark: string, ...sheets: Sheet[]): Sheet[] =>
  sheets.map((sheet, i) => ({ ...sheet, mark, id: `1/${mark.slice(-2)}${i}` }));
const again = (position: number, changes: Partial<DeviceSheet> = {}): DeviceSheet =>
  deviceAt(position, { id: `1/9${position}`, finish: "CHK", ...changes });

test("two devices for one position are told, with the positions that are free there", () => {
  expect(positions(plate(), deviceAt(1), deviceAt(2), again(2))).toEqual([["S-104/2", 2, [3, 4], undefined]]);
  expect(positions(...completeOrder())).toEqual([]);
});

test("devices that stand alone or name no position claim none", () => {
  const alone = (id: string): Sheet => aloneDevice({ id, mark: "S-104", finish: id, position: 2 });
  expect(positions(plate(), deviceAt(2), alone("1/8"), alone("1/9"))).toEqual([]);
  const unplaced = (finish: string): Sheet => without(again(2, { id: `1/${finish}`, finish }), "position");
  expect(positions(plate(), unplaced("CHK"), unplaced("SLT"))).toEqual([]);
});

test("where none is free there, another station of as many gangs may lack it", () => {
  const lacking = at("S-105", plate(), deviceAt(1), deviceAt(3), deviceAt(4));
  expect(positions(...completeOrder(), again(2), ...lacking)).toEqual([["S-104/2", 2, [], "S-105"]]);
  expect(positions(...completeOrder(), again(3), ...lacking)).toEqual([["S-104/3", 2, [], undefined]]);
  const wider = at("S-105", plate({ gangs: 6 }), deviceAt(1, { gangs: 6 }));
  expect(positions(...completeOrder(), again(2), ...wider)).toEqual([["S-104/2", 2, [], undefined]]);
});

test("where one is free there, no other station is told", () => {
  const [own, lacking] = [[plate(), deviceAt(1), deviceAt(2)], at("S-105", plate(), deviceAt(1))];
  expect(positions(...own, again(2), ...lacking)).toEqual([["S-104/2", 2, [3, 4], undefined]]);
  expect(positions(...own, deviceAt(3), again(2), ...lacking)).toEqual([["S-104/2", 2, [4], undefined]]);
});

test("a station that lacks a position is told once, of several the first", () => {
  const [third, fourth] = [at("S-106", plate(), deviceAt(1)), at("S-107", plate(), deviceAt(1))];
  const second = at("S-105", ...completeOrder(), again(2));
  expect(positions(...completeOrder(), again(2), ...second, ...third)).toEqual([
    ["S-104/2", 2, [], "S-106"],
    ["S-105/2", 2, [], undefined],
  ]);
  expect(positions(...completeOrder(), again(2), ...second, ...third, ...fourth)).toEqual([
    ["S-104/2", 2, [], "S-106"],
    ["S-105/2", 2, [], "S-107"],
  ]);
});

const enough = (...sheets: Sheet[]): boolean =>
  subject(sheets)
    .order.stations.filter(({ mark }) => mark === "S-104")
    .some(enoughCame);
const unplaced = (n: number): Sheet => without(deviceAt(n, { finish: `F${n}` }), "position");

test("enough came where as many devices came as positions are free", () => {
  expect(enough(plate(), deviceAt(1), deviceAt(2), unplaced(3), unplaced(4))).toBe(true);
  expect(enough(plate(), deviceAt(1), deviceAt(2), deviceAt(3), again(3))).toBe(true);
  expect(enough(plate(), deviceAt(1), deviceAt(2), unplaced(3))).toBe(false);
  expect(enough(...completeOrder())).toBe(false);
});

/** Stations with several plates, and the other station that may lack one of them. */
const plates = (...sheets: Sheet[]) =>
  doubledPlates(subject(sheets).order).map(({ station, other }) => [station.mark, other?.mark]);
const plateless = (mark: string, gangs = 4): Sheet[] =>
  at(mark, deviceAt(1, { gangs }), deviceAt(2, { gangs }));
const two = (mark: string): Sheet[] => at(mark, plate(), plate({ finish: "CHK" }));

test("two plates of one station are told, with a station of as many gangs that has none", () => {
  expect(plates(...two("S-104"), ...plateless("S-105"))).toEqual([["S-104", "S-105"]]);
  expect(plates(...two("S-104"), ...plateless("S-105", 6))).toEqual([["S-104", undefined]]);
  expect(plates(...two("S-104"), ...at("S-105", without(deviceAt(1), "gangs")))).toEqual([
    ["S-104", "S-105"],
  ]);
  expect(plates(plate(), ...plateless("S-105"))).toEqual([]);
  expect(plates(...two("S-104"), ...at("S-105", plate(), deviceAt(1)))).toEqual([["S-104", undefined]]);
});

test("a station without a plate is told once, of several the first", () => {
  expect(plates(...two("S-104"), ...two("S-105"), ...plateless("S-106"))).toEqual([
    ["S-104", "S-106"],
    ["S-105", undefined],
  ]);
  const both = [...plateless("S-106"), ...plateless("S-107")];
  expect(plates(...two("S-104"), ...two("S-105"), ...both)).toEqual([
    ["S-104", "S-106"],
    ["S-105", "S-107"],
  ]);
});
