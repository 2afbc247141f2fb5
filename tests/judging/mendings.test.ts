import { expect, test } from "vitest";
import { unprinted, without } from "../../src/checks/sample.ts";
import { mendingsIn } from "../../src/judging/mendings.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { reportOn, sentEarlier } from "../make/report.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";

/** What is proposed for one of some sheets. */
function proposed(id: string, sheets: readonly Sheet[], earlier: readonly Sheet[] = []): object {
  return Object.fromEntries(mendingsIn(reportOn(sheets, { earlier })).get(id) ?? []);
}

/** The complete order with one device otherwise. */
function withDevice(n: number, change: (sheet: DeviceSheet) => Sheet): Sheet[] {
  return completeOrder().map((sheet) =>
    sheet.kind === "device" && sheet.position === n ? change(sheet) : sheet,
  );
}
const { id } = deviceAt(3);

test("a sheet that is right is left as it is", () => {
  for (const says of mendingsIn(reportOn(completeOrder())).values()) expect([...says]).toEqual([]);
});

test("the gangs are those of the plate, if another device agrees with it", () => {
  expect(
    proposed(
      id,
      withDevice(3, (sheet) => without(sheet, "gangs")),
    ),
  ).toEqual({ gangs: "4" });
  expect(
    proposed(
      id,
      withDevice(3, (sheet) => ({ ...sheet, gangs: 3 })),
    ),
  ).toEqual({ gangs: "4" });
  // one device against one plate: either may be wrong
  expect(proposed(id, [plate(), deviceAt(3, { gangs: 3 })])).toEqual({});
  expect(proposed(id, [plate(), without(deviceAt(3), "gangs")])).toEqual({ gangs: "4" });
  // there is no fifth position in a plate of four
  const fifth = { ...without(deviceAt(5), "gangs"), id };
  expect(proposed(id, [...completeOrder().filter((sheet) => sheet.id !== id), fifth])).toEqual({});
  expect(proposed(id, [without(deviceAt(3), "gangs")])).toEqual({});
  // a form that does not ask for them has no place for them
  const unasked = withDevice(3, (sheet) => unprinted(without(sheet, "gangs"), "gangs"));
  expect(proposed(id, unasked)).toEqual({});
});

test("a device that stands alone gets no gangs from the plate of its mark", () => {
  const unread = [{ place: "gangs" as const, typed: "single", wants: "a number from 2 to 6" }];
  const alone = { ...without(aloneDevice({ id, mark: "S-104" }), "gangs"), unread };
  expect(proposed(id, [plate(), deviceAt(1), alone])).toEqual({});
});

test("of two plates at a station neither says the gangs or the position", () => {
  const other = plate({ id: "1/9", file: "again.pdf", finish: "CHK" });
  const unsaid = (...keys: ("gangs" | "position")[]) =>
    proposed(id, [...withDevice(3, (sheet) => without(sheet, ...keys)), other]);
  expect(unsaid("gangs")).toEqual({});
  expect(unsaid("position")).toEqual({});
});

test("the position is the only one that is free", () => {
  const nameless = withDevice(3, (sheet) => without(sheet, "position"));
  expect(proposed(id, nameless)).toEqual({ position: "3" });
  expect(
    proposed(
      id,
      nameless.filter((sheet) => sheet.id !== deviceAt(4).id),
    ),
  ).toEqual({});
  const doubled = nameless.map((sheet) =>
    sheet.id === deviceAt(4).id ? ({ ...sheet, position: 2 } as Sheet) : sheet,
  );
  expect(proposed(id, doubled)).toEqual({});
});

test("an order number is that of the sheets that came with it, if nobody asks about theirs", () => {
  expect(
    proposed(
      id,
      withDevice(3, (sheet) => without(sheet, "order")),
    ),
  ).toEqual({ order: "BW-2207" });
  const alone = without(deviceAt(3, { id: "2/1" }), "order");
  expect(proposed("2/1", [alone], sentEarlier(completeOrder().slice(0, 2)))).toEqual({});
  const mistyped = [deviceAt(2, { order: "BW-22O7" }), without(deviceAt(3), "order")];
  expect(proposed(id, mistyped, sentEarlier([plate(), deviceAt(1)]))).toEqual({});
});

test("what a sheet has inherited is filled in on its copy", () => {
  const sheets = withDevice(3, (sheet) => ({ ...without(sheet, "project", "finish"), billTo: {} }));
  expect(proposed(id, sheets)).toEqual({
    project: "Larkspur Library",
    "bill.name": "Brightwire Electric",
    "bill.street": "48 Foundry Row",
    "bill.city": "Chicago",
    "bill.state": "IL",
    "bill.postcode": "60607",
  });
});

test("a sheet that comes alone is filled in as the order's earlier sheets are, where all agree", () => {
  const alone = { ...deviceAt(3, { id: "2/1" }), contact: {}, shipSame: false };
  const earlier = sentEarlier(completeOrder().filter((sheet) => sheet.id !== id));
  const all = {
    "contact.name": "Ines Calloway",
    "contact.email": "ines@brightwire.example",
    "contact.phone": "312-555-0117",
  };
  expect(proposed("2/1", [alone], earlier)).toEqual({ ...all, "ship.same": "yes" });
  const [first, ...more] = earlier as [Sheet, ...Sheet[]];
  const other = { ...first, contact: { name: "Dale Okafor", phone: "312-555-0118" } };
  const { "contact.name": _name, "contact.phone": _phone, ...rest } = all;
  expect(proposed("2/1", [alone], [other, ...more])).toEqual({ ...rest, "ship.same": "yes" });
  // an address that differs from theirs is not completed by theirs
  const elsewhere = {
    ...alone,
    contact: first.contact,
    billTo: { name: "Teasel Lane Library", city: "Chicago" },
  };
  expect(proposed("2/1", [elsewhere], earlier)).toEqual({});
});

test("a legend, a layout, a finish and a lettering are never proposed", () => {
  const empty = withDevice(3, (sheet) => ({
    ...without(sheet, "finish", "lettering"),
    layouts: [],
    legends: sheet.legends.map((legend) => ({ ...legend, rows: legend.rows.map(() => "") })),
  }));
  expect(proposed(id, empty)).toEqual({});
});
