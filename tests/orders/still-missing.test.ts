import { expect, test } from "vitest";
import { subject, without } from "../../src/checks/sample.ts";
import { lackedElsewhere, stillMissing, withSisters } from "../../src/orders/still-missing.ts";
import type { Missing } from "../../src/trade/order.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { completeOrder, deviceAt, plate } from "../make/sample.ts";

const told = ({ station, kind, position }: Missing): string =>
  [station, kind, position ?? ""].join(" ").trim();
const missing = (sheets: readonly Sheet[], otherSheets: readonly Sheet[] = []): string[] => {
  const { order, others } = subject(sheets, otherSheets);
  return stillMissing(order, others).map(told);
};
/** The sample order without the sheets of some positions; 0 is the plate. */
const but = (...positions: number[]): Sheet[] =>
  completeOrder().filter((_, position) => !positions.includes(position));
const at = (mark: string, ...sheets: Sheet[]): Sheet[] =>
  sheets.map((sheet, i) => ({ ...sheet, mark, id: `1/${mark.slice(-2)}${i}` }));

test("a sheet that came under a mistyped mark is not lacking, and the others are", () => {
  expect(missing(but(2, 3))).toEqual(["S-104 device 2", "S-104 device 3"]);
  expect(missing([...but(2, 3), ...at("S-140", deviceAt(2))])).toEqual(["S-104 device 3"]);
  expect(missing([...but(0), ...at("S-140", plate())])).toEqual([]);
});

test("nor is one that came under a mark that looks the same", () => {
  expect(missing([...but(2, 3), ...at("S-1O4", deviceAt(2), deviceAt(4))])).toEqual(["S-104 device 3"]);
});

test("nor is one that came under the number of an order that may be the same", () => {
  const elsewhere = [deviceAt(2, { order: "BW-2270" })];
  expect(missing(but(2, 3), elsewhere)).toEqual(["S-104 device 3"]);
  expect(missing(but(2, 3), [deviceAt(2, { order: "QQ-77", project: "Quarry School" })])).toHaveLength(2);
  expect(missing(but(2, 3), [deviceAt(2, { order: "BW-2270", mark: "S-900" })])).toHaveLength(2);
});

test("nor is one where another station has two for its place", () => {
  const twice = [...completeOrder(), deviceAt(2, { id: "1/7", finish: "CHK" })];
  const second = at("S-205", plate(), deviceAt(1), deviceAt(3));
  expect(missing([...twice, ...second])).toEqual(["S-205 device 4"]);
  const plates = [...completeOrder(), plate({ id: "1/7", finish: "CHK" })];
  expect(missing([...plates, ...at("S-205", deviceAt(1))])).toEqual([]);
  expect(missing([...plates, ...at("S-205", plate(), deviceAt(1), deviceAt(2), deviceAt(3))])).toEqual([
    "S-205 device 4",
  ]);
});

test("nor are positions where as many devices came as are free", () => {
  const unplaced = (finish: string): Sheet => without(deviceAt(1, { id: `1/${finish}`, finish }), "position");
  expect(missing([...but(2, 3), unplaced("CHK"), unplaced("SLT")])).toEqual([]);
  expect(missing([...but(2, 3), unplaced("CHK")])).toHaveLength(2);
});

test("with a plate that is missing go the devices that it would need besides, and no others", () => {
  const sisters = (...sheets: Sheet[]): string[] => {
    const { order, others } = subject(sheets);
    return withSisters(stillMissing(order, others), order, others).map(told);
  };
  expect(sisters(...but(0, 3))).toEqual(["S-104 plate", "S-104 device 3"]);
  expect(sisters(...but(3))).toEqual(["S-104 device 3"]);
  expect(sisters(...but(0, 3), ...at("T-205", plate(), deviceAt(1), deviceAt(2), deviceAt(3)))).toEqual([
    "S-104 plate",
    "T-205 device 4",
    "S-104 device 3",
  ]);
});

const lacked = (sheets: readonly Sheet[], others: readonly Sheet[] = []): string | undefined => {
  const { order, others: orders } = subject(sheets, others);
  const found = lackedElsewhere(order, orders);
  return found && told(found);
};

test("what an order lacks and an order like it has is told, the first of it", () => {
  const elsewhere = [3, 4].map((position) => deviceAt(position, { order: "BW-2270" }));
  expect(lacked(but(2, 3, 4), elsewhere)).toBe("S-104 device 3");
  expect(lacked(but(0), [plate({ order: "BW-2270" })])).toBe("S-104 plate");
  expect(lacked(but(2, 3))).toBeUndefined();
  expect(lacked(completeOrder(), elsewhere)).toBeUndefined();
});

test("of two stations the one is told that lacks it", () => {
  const both = [...but(2), ...at("S-205", plate(), deviceAt(1), deviceAt(3), deviceAt(4))];
  const elsewhere = at("S-205", deviceAt(2)).map((sheet) => ({ ...sheet, id: "1/99", order: "BW-2270" }));
  expect(lacked(both, elsewhere)).toBe("S-205 device 2");
});
