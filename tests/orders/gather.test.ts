import { expect, test } from "vitest";
import { unprinted, without } from "../../src/checks/sample.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import { nothingKnown } from "../../src/orders/stand.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";

const idsOf = (sheets: readonly Sheet[]) => sheets.map(({ id }) => id);
const numbered = (sheets: readonly Sheet[]) =>
  gatherOrders(sheets).map(({ number, sheets: members }) => [number, idsOf(members)]);
const only = (...sheets: Sheet[]) => {
  const [order] = gatherOrders(sheets);
  if (order === undefined) throw new Error("no order");
  return order;
};

test("order numbers written in two ways are one order", () => {
  expect(numbered([plate(), deviceAt(1, { order: "bw 2207" })])).toEqual([["BW-2207", ["1/1", "1/2"]]]);
});

test("sheets stand in the order in which they came, the tenth file after the second", () => {
  const tenth = deviceAt(4, { id: "1/10" });
  expect(idsOf(only(tenth, deviceAt(1), plate()).sheets)).toEqual(["1/1", "1/2", "1/10"]);
});

test("a sheet without a number joins the only order", () => {
  expect(numbered([plate(), without(deviceAt(1), "order")])).toEqual([["BW-2207", ["1/1", "1/2"]]]);
});

test("a sheet without a number joins the only order of its letter, whatever earlier letters brought", () => {
  const earlier = aloneDevice({ id: "0/1", order: "BW-1990" });
  expect(numbered([earlier, plate(), without(deviceAt(1), "order")])).toEqual([
    ["BW-1990", ["0/1"]],
    ["BW-2207", ["1/1", "1/2"]],
  ]);
});

test("a sheet without a number beside two orders stays by itself", () => {
  const other = aloneDevice({ order: "BW-1990" });
  expect(numbered([plate(), without(deviceAt(1), "order"), other])).toEqual([
    ["BW-2207", ["1/1"]],
    ["", ["1/2"]],
    ["BW-1990", ["1/9"]],
  ]);
});

test("a sheet without a number stays with the order that it has joined", () => {
  const numberless = without(aloneDevice({ id: "1/5", mark: "S-7" }), "order");
  const sheets = [plate(), numberless, aloneDevice({ order: "BW-1990" })];
  const homes = new Map([[numberless.id, "BW1990"]]);
  expect(gatherOrders(sheets, { ...nothingKnown, homes }).map(({ sheets: all }) => idsOf(all))).toEqual([
    ["1/1"],
    ["1/5", "1/9"],
  ]);
});

test("a sheet without a number joins the only order of its project, and no order of another", () => {
  const earlier = aloneDevice({ id: "0/1", order: "BW-1990" });
  const joins = (project?: string): number => {
    const sheet = without(deviceAt(1), "order", "project");
    return numbered([earlier, project === undefined ? sheet : { ...sheet, project }]).length;
  };
  expect(joins("larkspur-library")).toBe(1);
  expect(joins()).toBe(1);
  expect(joins("Quarry Street School")).toBe(2);
});

test("a sheet under two names counts once", () => {
  const first = deviceAt(1, { id: "1/8", file: "copy.pdf" });
  const copy = Object.fromEntries(Object.entries(first).toReversed()) as typeof first;
  const order = only(...completeOrder(), copy);
  expect(order.sheets).toHaveLength(5);
  expect(order.twice).toEqual([{ kept: deviceAt(1), again: copy }]);
});

test("a row of a list that came under two names counts once, and two rows that say the same count twice", () => {
  const listed = (id: string, file: string, row = 3): Sheet =>
    aloneDevice({ id, file: "S-110.pdf", list: { file, row, cells: {}, unread: [] } });
  const first = listed("1/1", "stations.csv");
  const copy = listed("1/2", "stations.xlsx");
  expect(only(first, copy)).toMatchObject({ sheets: [first], twice: [{ kept: first, again: copy }] });
  expect(only(first, listed("1/2", "stations.csv", 4)).sheets).toHaveLength(2);
});

test("marks written in two ways are one station, named as first typed", () => {
  const { stations } = only(plate(), deviceAt(1, { mark: "s 104" }));
  expect(stations).toMatchObject([{ mark: "S-104", plates: [{ id: "1/1" }], devices: [{ id: "1/2" }] }]);
});

test("a mark in the notes ties a device to its plate, and is known for what it is", () => {
  const noted = { ...without(device(), "mark", "position"), notes: "plate S-104 pos 3 of 4" };
  const { stations } = only(plate(), noted);
  expect(stations).toMatchObject([{ mark: "S-104", devices: [{ position: 3 }], byNotes: ["1/2"] }]);
});

test("what a sheet says in its fields holds against its notes", () => {
  const noted = device({ notes: "plate S-105 pos 3 of 4" });
  expect(only(noted).stations).toMatchObject([{ mark: "S-104", devices: [{ position: 2 }], byNotes: [] }]);
});

test("a device standing alone is not tied to the neighbour in its notes", () => {
  const alone = { ...without(aloneDevice(), "mark"), notes: "beside plate S-104, position 1 of it" };
  expect(only(plate(), alone).stations.map(({ mark }) => mark)).toEqual(["S-104", ""]);
});

test("where the form does not ask, a position in the notes puts a device into its plate", () => {
  const noted = { ...without(aloneDevice(), "mark"), notes: "plate S-104 pos 3 of 4" };
  expect(only(plate(), unprinted(noted, "standing")).stations).toMatchObject([
    { mark: "S-104", devices: [{ standing: "in-plate", position: 3 }] },
  ]);
});

test("a device for a plate that nothing names is loose", () => {
  const { stations, loose } = only(plate(), without(device(), "mark"));
  expect(stations).toHaveLength(1);
  expect(idsOf(loose)).toEqual(["1/2"]);
});

test.each(["—", "N/A", "tbd"])("“%s” is no station mark", (mark) => {
  expect(idsOf(only(plate(), device({ mark })).loose)).toEqual(["1/2"]);
});

test("the project is the one that most sheets name", () => {
  expect(only(plate({ project: "Larkspur" }), deviceAt(1), deviceAt(2)).project).toBe("Larkspur Library");
});
