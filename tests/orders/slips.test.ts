import { expect, test } from "vitest";
import { subject, without } from "../../src/checks/sample.ts";
import { alikeOrders } from "../../src/orders/alike-order.ts";
import { firstIn, isLater, ofOneProject } from "../../src/orders/fit-together.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import { lookAlikeMarks, slipsOfMark } from "../../src/orders/slip-of-mark.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";

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

const other = (changes: Partial<DeviceSheet> = {}): Sheet => deviceAt(2, { order: "BW-2270", ...changes });

test("orders of two projects are two orders, though the one lacks what the other has", () => {
  expect(askedAbout(...lacksTwo, other({ project: "Quarry Street School" }))).toEqual([]);
  expect(askedAbout(...lacksTwo, other({ project: "Larkspur Libary" }))).toEqual([["BW-2270", "BW-2207"]]);
});

test("orders of which one names no project are one where the one lacks what the other has", () => {
  expect(askedAbout(...lacksTwo, other({ project: "TBD" }))).toEqual([["BW-2270", "BW-2207"]]);
  expect(askedAbout(...lacksTwo.toReversed(), without(other() as DeviceSheet, "project"))).toEqual([
    ["BW-2270", "BW-2207"],
  ]);
});

test("a device that says of no plate joins orders of one project, and no others", () => {
  const loose = (changes: Partial<DeviceSheet> = {}): Sheet =>
    without(deviceAt(2, { order: "BW-2270", id: "1/9", ...changes }), "mark");
  expect(askedAbout(...completeOrder(), loose())).toEqual([["BW-2270", "BW-2207"]]);
  expect(askedAbout(...completeOrder(), loose({ project: "TBD" }))).toEqual([]);
  expect(askedAbout(...completeOrder(), other({ mark: "S-140" }))).toEqual([]);
});

test("sheets without a number are meant for no order", () => {
  expect(askedAbout(...lacksTwo, without(other() as DeviceSheet, "order"))).toEqual([]);
});

test("whether two orders are of one project is not known where one names none", () => {
  const projects = (one: string, two?: string) => {
    const sheets = [one, two].map((project, i) =>
      project === undefined
        ? without(deviceAt(1, { order: `${i}` }), "project")
        : deviceAt(1, { order: `${i}`, project }),
    );
    const [first, second] = sheets.map((sheet) => subject([sheet]).order);
    return first && second && ofOneProject(first, second);
  };
  expect(projects("Larkspur Library", "larkspur-library")).toBe(true);
  expect(projects("Larkspur Library", "Larkspur Libary")).toBe(true);
  expect(projects("Larkspur Library", "Quarry Street School")).toBe(false);
  expect(projects("Larkspur Library", "TBD")).toBeUndefined();
  expect(projects("n/a", "Larkspur Library")).toBeUndefined();
  expect(projects("Larkspur Library")).toBeUndefined();
});

test("the later of two orders came in a later letter, or in fewer sheets, or behind the other", () => {
  const opening = { letter: "1", sheets: 2, first: "1/1" };
  expect(isLater({ ...opening, letter: "2", sheets: 5 }, opening)).toBe(true);
  expect(isLater(opening, { ...opening, letter: "2", sheets: 5 })).toBe(false);
  expect(isLater({ ...opening, sheets: 1 }, { ...opening, first: "1/2" })).toBe(true);
  expect(isLater({ ...opening, sheets: 3, first: "1/4" }, opening)).toBe(false);
  expect(isLater({ ...opening, first: "1/3" }, opening)).toBe(true);
  expect(isLater(opening, opening)).toBe(false);
});

test("an order was opened by what came in its first letter", () => {
  const sheets = ["1/1", "1/2", "2/1"].map((id, i) => deviceAt(i + 1, { id }));
  expect(firstIn(subject(sheets).order)).toEqual({ letter: "1", first: "1/1", sheets: 2 });
});

test("a station that lacks nothing is meant for none, and none is meant for it", () => {
  expect(slips(...completeOrder(), aloneDevice({ mark: "S-140" }))).toEqual([]);
  expect(slips(...completeOrder(), deviceAt(2, { mark: "S-140", id: "1/9" }))).toEqual([]);
});

test("a device is meant for the position that is free, and only if it goes into a plate", () => {
  expect(slips(...lacksTwo, deviceAt(3, { mark: "S-140", id: "1/9" }))).toEqual([]);
  expect(slips(...lacksTwo, aloneDevice({ mark: "S-140", position: 2, gangs: 4 }))).toEqual([]);
});

test("a plate without a mark is meant for no station, however short its mark", () => {
  expect(slips(without(plate(), "mark"), deviceAt(1, { mark: "A" }))).toEqual([]);
});

test("a plate is meant for devices that lack one, not for a plate", () => {
  const devices = [1, 2, 3, 4].map((position) => deviceAt(position));
  expect(slips(plate({ mark: "S-140" }), ...devices)).toEqual([["S-140", "S-104"]]);
  expect(slips(plate(), ...devices.slice(1), plate({ mark: "S-140", id: "1/9" }))).toEqual([]);
});

test("marks two slips apart are two stations, unless they look the same", () => {
  expect(slips(...lacksTwo, deviceAt(2, { mark: "S-999", id: "1/9" }))).toEqual([]);
  expect(slips(...lacksTwo, deviceAt(2, { mark: "Station S-1O4", id: "1/9" }))).toEqual([
    ["Station S-1O4", "S-104"],
  ]);
});

test("of marks that look the same the first is meant, and no mark looks like none", () => {
  const marked = (...marks: (string | undefined)[]) =>
    marks.map((mark, i) =>
      mark === undefined
        ? without(plate({ id: `1/${i}`, gangs: i + 2 }), "mark")
        : plate({ id: `1/${i}`, mark }),
    );
  const alike = (...sheets: Sheet[]) =>
    lookAlikeMarks(subject(sheets).order).map(({ station, meant }) => [station.mark, meant.mark]);
  expect(alike(...marked("S-104", "S-1O4", "S-105", "S-0104"))).toEqual([
    ["S-1O4", "S-104"],
    ["S-0104", "S-104"],
  ]);
  expect(alike(...marked(undefined, undefined, "S-104"))).toEqual([]);
});

test("only a number that is nearly the same, looks the same or has letters in front is taken for a slip", () => {
  const under = (order: string) => askedAbout(...lacksTwo, other({ order })).map(([number]) => number);
  for (const order of ["BW-2270", "BW-00022O7", "GC BW-2207"]) expect(under(order)).toEqual([order]);
  for (const order of ["BW-9034", "KX-1185"]) expect(under(order)).toEqual([]);
});

test("a newer order that lacks what an older one has is asked about, though that one lacks nothing", () => {
  const newer = lacksTwo.map((sheet) => ({ ...sheet, id: `2${sheet.id}` }));
  expect(askedAbout(aloneDevice({ order: "BW-2270", mark: "S-104" }), ...newer)).toEqual([
    ["BW-2207", "BW-2270"],
  ]);
});
