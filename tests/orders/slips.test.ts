import { expect, test } from "vitest";
import { subject } from "../../src/checks/sample.ts";
import { alikeOrders } from "../../src/orders/alike-order.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import { slipsOfMark } from "../../src/orders/slip-of-mark.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { completeOrder, deviceAt, plate } from "../make/sample.ts";

const slips = (...sheets: Sheet[]) =>
  slipsOfMark(subject(sheets).order).map(({ station, meant }) => [station.mark, meant.mark]);
const lacksTwo = completeOrder().filter(({ file }) => file !== "S-104 pos 2.pdf");

test("a device at a mark one slip away is meant for the plate that lacks it", () => {
  expect(slips(...lacksTwo, deviceAt(2, { mark: "S-140" }))).toEqual([["S-140", "S-104"]]);
});

test("a device for a plate of six is not meant for the plate of four", () => {
  expect(slips(...lacksTwo, deviceAt(2, { mark: "S-140", gangs: 6 }))).toEqual([]);
});

test("of a plate and its devices the fewer sheets are asked about, of equal numbers what came later", () => {
  const [plateSheet, ...devices] = [
    plate({ gangs: 2 }),
    deviceAt(1, { gangs: 2 }),
    deviceAt(2, { gangs: 2 }),
  ];
  const elsewhere = { mark: "S-140" };
  expect(slips({ ...plateSheet, ...elsewhere }, ...devices)).toEqual([["S-140", "S-104"]]);
  const alone = deviceAt(1, { mark: "S-140", gangs: 1, standing: "in-plate" });
  expect(slips(plate({ gangs: 1 }), alone)).toEqual([["S-140", "S-104"]]);
  expect(slips({ ...alone, id: "0/1" }, plate({ gangs: 1 }))).toEqual([["S-104", "S-140"]]);
});

/** The numbers of both orders, the one that is asked about and the one it seems to be meant for. */
const askedAbout = (...sheets: Sheet[]) => {
  const orders = gatherOrders(sheets);
  return orders.flatMap((order) => {
    const others = orders.filter((other) => other !== order);
    const near = alikeOrders(order, others).filter(({ how, asked }) => how === "near" && asked);
    return near.map(({ other }) => [order.number, other.number]);
  });
};

test("of two orders in one letter the one with fewer sheets is asked about, though it came first", () => {
  expect(askedAbout(deviceAt(2, { order: "BW-2270", id: "1/0" }), ...lacksTwo)).toEqual([
    ["BW-2270", "BW-2207"],
  ]);
});

test("of two orders with equal sheets the later is asked about", () => {
  expect(askedAbout(plate(), deviceAt(2, { order: "BW-2270" }))).toEqual([["BW-2270", "BW-2207"]]);
});

test("an order of an earlier letter is not asked about; the one that the newer letter brought is", () => {
  const newer = lacksTwo.map((sheet) => ({ ...sheet, id: `2${sheet.id}` }));
  expect(askedAbout(deviceAt(2, { order: "BW-2270" }), ...newer)).toEqual([["BW-2207", "BW-2270"]]);
});
