import { expect, test } from "vitest";
import { legend, without } from "../../src/checks/sample.ts";
import { otherwiseIn, pairedWithLists } from "../../src/orders/beside-list.ts";
import type { ListOrigin, Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, device, deviceAt, plate } from "../make/sample.ts";

const origin: ListOrigin = { file: "stations.csv", row: 3, cells: { "row.1.1": "F3" }, unread: [] };
const listed = (sheet: Sheet, list: Partial<ListOrigin> = {}): Sheet => ({
  ...sheet,
  id: "1/8",
  list: { ...origin, ...list },
});

test("a sheet is held against the list that orders its place, and against no other sheet", () => {
  const pairs = (...sheets: Sheet[]) =>
    pairedWithLists(sheets).map((pair) => [pair.sheet.id, pair.listed.id]);
  expect(pairs(device(), listed(device()))).toEqual([["1/2", "1/8"]]);
  expect(pairs(listed(device()), device())).toEqual([["1/2", "1/8"]]);
  expect(pairs(deviceAt(1), listed(device()))).toEqual([]);
  expect(pairs(plate(), listed(device()))).toEqual([]);
  expect(pairs(device(), { ...device(), id: "1/3" })).toEqual([]);
  expect(pairs(listed(device()))).toEqual([]);
  expect(pairs(without(device(), "mark"), listed(without(device(), "mark")))).toEqual([]);
});

const [first, ...others] = aloneDevice().legends;
if (first === undefined) throw new Error("the sample has no legends");
test.each<[string, Sheet, string[]]>([
  ["the same", listed(aloneDevice()), []],
  ["another legend", listed(aloneDevice({}, { "1": ["LOBBY", ""] })), ["row.1.1 F3 ENTRY → LOBBY"]],
  [
    "a legend in small letters",
    listed(aloneDevice({}, { "1": ["Entry", ""] })),
    ["row.1.1 F3 ENTRY → Entry"],
  ],
  ["no legend", listed(aloneDevice({}, { "1": ["", ""] })), ["row.1.1 F3 ENTRY → "]],
  [
    "a face left plain",
    listed(aloneDevice({ legends: [{ ...first, plain: true }, ...others] })),
    ["plain.1   → yes"],
  ],
  ["another finish", listed(aloneDevice({ finish: "CHK" })), ["finish  OAT → CHK"]],
  ["the finish in small letters", listed(aloneDevice({ finish: "oat" })), []],
  ["no finish", listed(without(aloneDevice(), "finish")), []],
  ["another contact", listed(aloneDevice({ contact: { ...device().contact, name: "Omar Reyes" } })), []],
  [
    "a finish that nobody makes",
    listed(without(aloneDevice(), "finish"), {
      unread: [{ place: "finish", typed: "Mauve", wants: "a finish" }],
    }),
    ["finish  OAT → Mauve"],
  ],
])("beside its sheet, a list that says %s", (_name, list, says) => {
  const said = otherwiseIn({ sheet: aloneDevice(), listed: list });
  expect(
    said?.places.map(({ place, cell, typed, says: now }) => `${place} ${cell} ${typed} → ${now}`) ?? [],
  ).toEqual(says);
  expect(said?.file).toBe(says.length === 0 ? undefined : "stations.csv");
});

test("a row of a list that has blanks alone says nothing", () => {
  const sheet = device({ legends: [legend("1", "ENTRY", " ")] });
  expect(
    otherwiseIn({ sheet, listed: listed(device({ legends: [legend("1", "ENTRY", "")] })) }),
  ).toBeUndefined();
});
