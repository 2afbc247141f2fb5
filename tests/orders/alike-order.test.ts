import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { type AlikeOrder, alikeOrders } from "../../src/orders/alike-order.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";

/** What the order of the first sheet is to the others, with the numbers of those. */
function alikeAll(...sheets: Sheet[]): AlikeOrder[] {
  const orders = gatherOrders(sheets);
  const own = orders.find((order) => order.sheets.some(({ id }) => id === sheets[0]?.id));
  return own === undefined
    ? []
    : [
        ...alikeOrders(
          own,
          orders.filter((other) => other !== own),
        ),
      ];
}
const alike = (...sheets: Sheet[]) =>
  alikeAll(...sheets).map(({ how, asked, station }) => [how, asked, station]);

/** A device by itself, in a station of its own. */
const alone = (order: string, mark: string, changes: Partial<Sheet> = {}): Sheet =>
  aloneDevice({ order, mark, id: `1/${mark.slice(2)}`, finish: mark, ...changes } as object);
const later = (sheet: Sheet): Sheet => ({ ...sheet, id: `2${sheet.id.slice(1)}` });

test("numbers that look the same are told, and the later order is asked about", () => {
  const [first, second] = [alone("EG-500", "S-1"), alone("EG-50O", "S-2")];
  expect(alike(first, second)).toEqual([["looks", false, undefined]]);
  expect(alike(second, first)).toEqual([["looks", true, undefined]]);
  expect(alike(later(first), second)).toEqual([["looks", true, undefined]]);
  expect(alike(first, { ...second, order: "EG-5OO" })).toEqual([["looks", false, undefined]]);
});

test("such an order is not the later one for a sheet that came behind", () => {
  for (const number of ["EG-50O", "GE-500"]) {
    const [first, second] = [alone("EG-500", "S-1"), later(alone(number, "S-2"))];
    const behind = alone("EG-500", "S-3", { id: "3/1" });
    expect(alike(first, behind, second).map(([, asked]) => asked)).toEqual([false]);
    expect(alike(second, first, behind).map(([, asked]) => asked)).toEqual([true]);
  }
});

test("numbers that look the same are told in two projects, unless both name one", () => {
  const [first, second] = [alone("EG-500", "S-1"), alone("EG-50O", "S-2", { project: "Quarry School" })];
  expect(alike(first, second)).toEqual([["looks", false, undefined]]);
  expect(alike(without(first, "project"), second)).toEqual([["looks", false, undefined]]);
});

test("a slip or letters in front are told in one project, and the later order is asked about", () => {
  for (const number of ["GE-500", "WO EG-500"]) {
    const [first, second] = [alone("EG-500", "S-1"), alone(number, "S-2")];
    expect(alike(first, second)).toEqual([["slip", false, undefined]]);
    expect(alike(second, first)).toEqual([["slip", true, undefined]]);
    expect(alike(later(first), second)).toEqual([["slip", true, undefined]]);
    expect(alike(first, { ...second, project: "Quarry School" })).toEqual([]);
    expect(alike(first, without(second, "project"))).toEqual([["slip", false, undefined]]);
  }
  expect(alike(alone("EG-500", "S-1"), alone("EG-501", "S-2"))).toEqual([]);
});

test("two digits mistaken are a slip where both orders came in one letter", () => {
  const [first, second] = [alone("22-8147", "S-1"), alone("22-8187", "S-2")];
  expect(alike(first, second)).toEqual([["slip", false, undefined]]);
  expect(alike(first, later(second))).toEqual([]);
});

test("numbers that are one slip apart are near where the one order lacks what the other has", () => {
  const rest = completeOrder().filter(({ id }) => id !== "1/3");
  const stray = deviceAt(2, { order: "BW-2270" });
  expect(alike(stray, ...rest)).toEqual([["near", true, "S-104"]]);
  expect(alike(...rest, stray)).toEqual([["near", false, "S-104"]]);
});

test("of near orders the one is asked about whose sheets of the station came later", () => {
  const rest = completeOrder().filter(({ id }) => id !== "1/3");
  const stray = deviceAt(2, { order: "BW-2270" });
  expect(alike(...rest.map(later), stray)).toEqual([["near", true, "S-104"]]);
  expect(alike(stray, ...rest.map(later))).toEqual([["near", false, "S-104"]]);
  // opened first by another station, which does not count
  const other = alone("BW-2270", "S-7");
  expect(alike(other, later(stray), ...rest)).toEqual([["near", true, "S-104"]]);
  expect(alike(...rest, other, later(stray))).toEqual([["near", false, "S-104"]]);
});

test("one station under two numbers of one project is told, and asked about where it came later", () => {
  const [first, second] = [alone("EG-500", "S-1"), alone("QQ-712", "s 1", { id: "1/5", finish: "x" })];
  expect(alike(first, second)).toEqual([["again", false, "S-1"]]);
  expect(alike(second, first)).toEqual([["again", true, "s 1"]]);
  expect(alike(first, later(second))).toEqual([["again", false, "S-1"]]);
  expect(alike(later(first), second)).toEqual([["again", true, "S-1"]]);
  expect(alike(first, { ...second, project: "Quarry School" })).toEqual([]);
  expect(alike(first, without(second, "project"))).toEqual([]);
});

test("a station that came again in a later letter is asked about, though its order was opened before", () => {
  const [first, opening] = [alone("EG-500", "S-1"), alone("QQ-712", "S-7", { id: "0/1" })];
  const second = alone("QQ-712", "S-1", { id: "2/1", finish: "x" });
  expect(alike(opening, second, first)).toEqual([["again", true, "S-1"]]);
  expect(alike(first, opening, second)).toEqual([["again", false, "S-1"]]);
  // what came later for another station does not count
  const more = alone("EG-500", "S-8", { id: "3/1" });
  expect(alike(first, more, opening, second)).toEqual([["again", false, "S-1"]]);
});

test("the tenth file of a letter came after the ninth", () => {
  const nine = ["1/9", "9/1"].map((id) => alone("EG-500", "S-1", { id, finish: id }));
  expect(alike(...nine, alone("QQ-712", "S-1", { id: "10/1" }))).toEqual([["again", false, "S-1"]]);
});

test("an order of which every sheet stands in another too is the same", () => {
  const [copy, ...rest] = [
    alone("QQ-712", "S-1", { id: "2/1" }),
    alone("EG-500", "S-1"),
    alone("EG-500", "S-2"),
  ];
  expect(alike(copy, ...rest)).toEqual([["same", true, "S-1"]]);
  expect(alike(...rest, copy)).toEqual([["same", false, "S-1"]]);
  expect(alike({ ...copy, file: "x.pdf", named: "y.pdf" }, ...rest)).toEqual([["same", true, "S-1"]]);
  expect(alike({ ...copy, finish: "x" }, ...rest)).toEqual([["again", true, "S-1"]]);
  expect(alike({ ...copy, project: "Quarry School" }, ...rest)).toEqual([]);
});

test("a number and a project that were exchanged are told, and asked about by no question", () => {
  const [first, second] = [
    alone("EG-500", "S-1", { project: "QQ-712" }),
    alone("QQ-712", "S-2", { project: "eg 500" }),
  ];
  expect(alike(first, second)).toEqual([["exchanged", false, undefined]]);
  expect(alike(second, first)).toEqual([["exchanged", false, undefined]]);
  expect(alike(first, { ...second, project: "QQ-712" })).toEqual([]);
  expect(alike({ ...first, project: "Larkspur Library" }, second)).toEqual([]);
});

test("two orders without a number, or of a placeholder, are alike to none", () => {
  const [own, named] = [alone("EG-500", "S-1"), alone("TBD", "S-1", { id: "1/5" })];
  expect(alike(own, named)).toEqual([]);
  expect(alike(named, own)).toEqual([]);
});

test("stations without a mark are no station of both", () => {
  const [one, two] = ["EG-500", "QQ-712"].map((order, i) =>
    without(plate({ order, id: `1/${i}`, gangs: i + 2 }), "mark"),
  );
  expect(alike(one as Sheet, two as Sheet)).toEqual([]);
});

/** Orders of one project whose numbers have one shape, beside the first. */
const shaped = (...numbers: string[]): Sheet[] => numbers.map((number, i) => alone(number, `S-${i + 1}`));

test("many numbers of one shape in one project count something, and are no slips of each other", () => {
  const [own, swapped, ...others] = ["EG-5012", "EG-5102", "EG-7777", "EG-8888"] as const;
  expect(alike(...shaped(own, swapped))).toEqual([["slip", false, undefined]]);
  expect(alike(...shaped(own, swapped, others[0]))).toEqual([["slip", false, undefined]]);
  expect(alike(...shaped(own, swapped, ...others))).toEqual([]);
  const elsewhere = shaped(own, swapped, ...others).map((sheet, i) =>
    i < 2 ? sheet : { ...sheet, project: "Quarry School" },
  );
  expect(alike(...elsewhere)).toEqual([["slip", false, undefined]]);
});

test("a number of another shape than those is a slip, and one that looks the same is told", () => {
  const series = ["EG-5012", "EG-5102", "EG-7777", "EG-8888"];
  expect(alike(...shaped(...series, "EG-50122"))).toEqual([["slip", false, undefined]]);
  expect(alike(...shaped(...series, "EG-50I2"))).toEqual([["looks", false, undefined]]);
  const again = alone("EG-9999", "S-1", { id: "1/9", finish: "x" });
  expect(alike(...shaped(...series), again)).toEqual([["again", false, "S-1"]]);
});

test("what was found of one order is not told of another beside the same ones", () => {
  const [one, two, third] = gatherOrders([
    alone("EG-500", "S-1"),
    alone("QQ-712", "S-2"),
    alone("GE-500", "S-3"),
  ]);
  if (one === undefined || two === undefined || third === undefined) throw new Error("no three orders");
  const others = [third];
  expect(alikeOrders(one, others)).toHaveLength(1);
  expect(alikeOrders(two, others)).toEqual([]);
  expect(alikeOrders(one, others)).toHaveLength(1);
});
