import { expect, test } from "vitest";
import { standingAfter } from "../../src/orders/stand.ts";
import { untouchedAmong } from "../../src/orders/untouched.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, blankDevice, deviceAt, plate } from "../make/sample.ts";

/** Position 2 as it was sent out: what its sisters say, and nothing else. */
function sentOut(changes: Partial<DeviceSheet> = {}): DeviceSheet {
  const { layouts: _, legends: __, partKey: ___, ...said } = deviceAt(2);
  return {
    ...said,
    id: "1/8",
    file: "sent out.pdf",
    layouts: [],
    legends: blankDevice().legends,
    ...changes,
  };
}
const filled = deviceAt(2);

const found = (sheets: readonly Sheet[], earlier: readonly Sheet[] = []): string[] =>
  untouchedAmong(sheets, earlier).map(({ blank, beside }) => `${blank.file} beside ${beside.file}`);

test("a sheet that came as it was sent out does not count beside the one for its place", () => {
  expect(found([plate(), sentOut(), filled])).toEqual(["sent out.pdf beside S-104 pos 2.pdf"]);
  const after = standingAfter([], [plate(), sentOut(), filled]);
  expect(after.sheets.map(({ file }) => file)).toEqual(["S-104 plate.pdf", "S-104 pos 2.pdf"]);
  expect(after.untouched).toEqual([{ blank: sentOut(), beside: filled }]);
});

test("it counts by itself, for another place, and beside one like it", () => {
  expect(found([plate(), sentOut()])).toEqual([]);
  expect(found([sentOut({ position: 3 }), filled])).toEqual([]);
  expect(found([sentOut({ order: "BW-2208" }), filled])).toEqual([]);
  expect(found([sentOut(), sentOut({ id: "1/9", file: "again.pdf" })])).toEqual([]);
});

test.each<[string, Partial<DeviceSheet>]>([
  ["a layout", { layouts: filled.layouts }],
  ["a legend", { legends: filled.legends }],
  [
    "a face that is left plain",
    { legends: filled.legends.map((one) => ({ ...one, rows: [], plain: true })) },
  ],
  ["a note", { notes: "as before" }],
  ["a part key", { partKey: "K" }],
  ["something that could not be read", { unread: [{ place: "layout", typed: "D9", wants: "a layout" }] }],
  ["something that two readers read in two ways", { unsure: [{ place: "row.1.1", one: "A", other: "" }] }],
  ["handwriting", { doubts: [{ what: "handwriting" }] }],
  ["a field of no edition", { unmapped: [{ name: "extra", value: "A" }] }],
])("one with %s is not as it was sent out", (_, changes) => {
  expect(found([sentOut(changes), filled])).toEqual([]);
});

test("one whose form asks for no layout is not known to be empty", () => {
  const { layout: _, ...prints } = filled.prints;
  expect(found([sentOut({ prints }), filled])).toEqual([]);
});

test("beside a sheet that came again as it stood it may be the one that was to be filled in", () => {
  expect(found([sentOut({ id: "2/1" }), { ...filled, id: "2/2" }], [filled])).toEqual([]);
  const changed = { ...filled, id: "2/2", file: "changed.pdf", finish: "CHK" };
  expect(found([sentOut({ id: "2/1" }), changed], [filled])).toEqual(["sent out.pdf beside changed.pdf"]);
});

test("a plate is complete without a legend, so none is put aside", () => {
  expect(found([plate(), plate({ id: "1/8", finish: "CHK", legends: [] })])).toEqual([]);
});

test("a device that stands alone has a place too", () => {
  const blank = { layouts: [], legends: blankDevice().legends };
  expect(found([aloneDevice(), aloneDevice({ id: "1/10", file: "again.pdf", ...blank })])).toEqual([
    "again.pdf beside S-110.pdf",
  ]);
});

test("in a letter of its own it takes the place of what came before, since what was typed may be lost", () => {
  const after = standingAfter([filled], [sentOut({ id: "2/1" })]);
  expect(after.sheets.map(({ file }) => file)).toEqual(["sent out.pdf"]);
});
