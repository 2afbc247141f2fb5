import { expect, test } from "vitest";
import { isOf, managerOf, piecesKey } from "../../src/orders/managed.ts";
import type { Managing } from "../../src/trade/manager.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

const ana = { name: "Ana Reyes", address: "ana@quillgate.example" };
const managing = (of: Partial<Managing>): Managing => ({ manager: ana, waits: false, ...of });
const order = {
  buyer: "ines@brightwire.example",
  project: "Larkspur Library",
  sheets: [plate(), deviceAt(1), aloneDevice({ mark: "T-1" })],
};

test.each<[string, Partial<Managing>, boolean]>([
  ["nothing else is named", {}, true],
  ["its project is named, however it is typed", { project: "LARKSPUR library" }, true],
  ["another project is", { project: "Larkspur" }, false],
  ["its buyer is", { buyer: "ines@brightwire.example" }, true],
  ["its buyer's domain is", { buyer: "brightwire.example" }, true],
  ["another buyer is", { buyer: "omar@brightwire.example" }, false],
  ["another domain is", { buyer: "wire.example" }, false],
  ["it has more stations than are named", { stationsAbove: 1 }, true],
  ["it has as many", { stationsAbove: 2 }, false],
  [
    "all that is named fits",
    { project: "Larkspur Library", buyer: "brightwire.example", stationsAbove: 1 },
    true,
  ],
  ["the project fits and the buyer does not", { project: "Larkspur Library", buyer: "other.example" }, false],
  ["the buyer fits and the stations do not", { buyer: "brightwire.example", stationsAbove: 2 }, false],
])("an order is a manager's where %s: %j %j", (_name, of, fits) => {
  expect(managerOf(order, [managing(of)]) !== undefined).toBe(fits);
});

test("an order without a project is none of a named one's", () => {
  const { project: _project, ...nameless } = order;
  expect(managerOf(nameless, [managing({ project: "Larkspur Library" })])).toBeUndefined();
});

test("the first whom an order fits manages it", () => {
  const [wide, narrow] = [managing({ stationsAbove: 1 }), managing({ buyer: "brightwire.example" })];
  expect(managerOf(order, [wide, narrow])).toBe(wide);
  expect(managerOf(order, [narrow, wide])).toBe(narrow);
});

test("sheets of one mark are one station, and each without a mark is one of its own", () => {
  const isAbove = (stationsAbove: number, marks: readonly string[]): boolean =>
    managerOf({ ...order, sheets: marks.map((mark) => aloneDevice({ mark })) }, [
      managing({ stationsAbove }),
    ]) !== undefined;
  expect([isAbove(0, ["S-104", "s 104"]), isAbove(1, ["S-104", "s 104"])]).toEqual([true, false]);
  expect([isAbove(2, ["S-104", "", "-"]), isAbove(3, ["S-104", "", "-"])]).toEqual([true, false]);
});

test("a domain is not another that ends so", () => {
  expect(isOf("a@brightwire.example", "brightwire.example")).toBe(true);
  expect(isOf("a@my-brightwire.example", "brightwire.example")).toBe(false);
});

test("the same pieces have the same key in whatever order they came, and twice is once", () => {
  const [one, two] = [deviceAt(1), deviceAt(2)];
  expect(piecesKey([two, one, one])).toBe(piecesKey([one, two]));
  expect(piecesKey([one])).not.toBe(piecesKey([one, two]));
  expect(piecesKey([one])).toMatch(/^[0-9a-f]{24}$/);
});
