import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { leftOver, olderForwarded, perhapsAgain, unclearDates } from "../../src/orders/aside.ts";
import { type Known, nothingKnown } from "../../src/orders/stand.ts";
import type { Aside } from "../../src/trade/order.ts";
import type { Place } from "../../src/trade/place.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, device, deviceAt, plate } from "../make/sample.ts";

const told = (asides: readonly Aside[]) => asides.map(({ sheet, beside, why }) => [sheet.id, beside.id, why]);

/** Letters 1 and 2, of which the second arrived later and is dated earlier; letter 3 is newer than both. */
const odd: Known = {
  ...nothingKnown,
  arrivals: new Map(
    [
      [1, 5],
      [2, 4],
      [6, 6],
    ].map(([arrived = 0, dated = 0], i) => [
      `${i + 1}`,
      { receivedAt: new Date(2026, 10, arrived), dated: new Date(2026, 10, dated) },
    ]),
  ),
};

test("of two sheets for one place, of which nobody knows the newer, the second is kept aside", () => {
  const [first, second] = [deviceAt(2), deviceAt(2, { id: "2/1" })];
  expect(told(unclearDates([first, second], odd))).toEqual([["2/1", first.id, "dates"]]);
  expect(unclearDates([first, deviceAt(3, { id: "2/1" })], odd)).toEqual([]);
  expect(unclearDates([first, deviceAt(2, { id: "3/1" })], odd)).toEqual([]);
  const placeless = without(first, "position");
  expect(unclearDates([placeless, { ...placeless, id: "2/1" }], odd)).toEqual([]);
});

test("of sheets for one place in letters that were forwarded as one, all but the newest are kept aside", () => {
  const dated = (day: number, id: string, finish?: string) =>
    deviceAt(2, {
      id,
      written: `2026-11-0${day}T14:00:00.000Z`,
      ...(finish === undefined ? {} : { finish }),
    });
  const [first, newest, second] = [dated(2, "1/1", "one"), dated(5, "1/2"), dated(3, "1/3", "two")];
  expect(told(olderForwarded([first, newest, second], nothingKnown))).toEqual([
    ["1/1", "1/2", "forwarded"],
    ["1/3", "1/2", "forwarded"],
  ]);
  expect(olderForwarded([dated(2, "1/1"), newest], nothingKnown)).toEqual([]);
  expect(olderForwarded([first, dated(5, "2/2")], nothingKnown)).toEqual([]);
  expect(olderForwarded([first, deviceAt(3, { id: "1/2", written: "2026-11-05" })], nothingKnown)).toEqual(
    [],
  );
});

test("a device beyond the gangs of a plate in a later letter, forwarded with its own, is kept aside", () => {
  const [fourth, later] = [
    deviceAt(4, { id: "1/1", written: "2026-11-02" }),
    plate({ id: "1/2", written: "2026-11-05", gangs: 3 }),
  ];
  expect(told(leftOver([fourth, later], nothingKnown))).toEqual([["1/1", "1/2", "beyond"]]);
  expect(leftOver([{ ...fourth, written: "2026-11-05" }, later], nothingKnown)).toEqual([]);
});

/** What is kept aside where the first sheet was stopped for these places, and the others came. */
function again(stopped: Sheet, others: readonly Sheet[], ...toMend: Place[]) {
  const known = {
    ...nothingKnown,
    stopped: new Set([stopped.id]),
    toMend: new Map([[stopped.id, new Set(toMend)]]),
  };
  return told(perhapsAgain([stopped, ...others], known));
}
const placeless = without(device(), "position");
const newer = (changes: Partial<Sheet> = {}): Sheet =>
  deviceAt(3, { id: "2/1", file: device().file, ...changes } as object);

test("a stopped sheet without a place may have come again under its file's name", () => {
  const elsewhere = newer({ mark: "S-105" });
  expect(again(placeless, [elsewhere])).toEqual([["1/2", "2/1", "again"]]);
  expect(again(placeless, [{ ...elsewhere, file: "MARKED marked s-104 pos 2.PDF" }])).toHaveLength(1);
  expect(again(placeless, [{ ...elsewhere, file: "new marked s-104 pos 2.pdf" }])).toEqual([]);
  expect(again({ ...placeless, file: "a.pdf b" }, [{ ...elsewhere, file: "a b" }])).toEqual([]);
  expect(again(placeless, [{ ...elsewhere, named: device().file, file: "x.pdf" }])).toHaveLength(1);
  expect(again(placeless, [{ ...elsewhere, named: "x.pdf" }])).toEqual([]);
  expect(again(placeless, [plate({ id: "2/1", mark: "S-105", file: device().file })])).toEqual([]);
});

test("so may one that was stopped for its place, and no other", () => {
  for (const place of ["order", "project", "mark", "standing", "position", "gangs"] as const)
    expect(again(device(), [newer()], place)).toEqual([["1/2", "2/1", "again"]]);
  expect(again(device(), [newer()], "finish", "row.1.1")).toEqual([]);
  expect(perhapsAgain([placeless, newer()], nothingKnown)).toEqual([]);
});

test("so may a device whose plate never came, and none beside it whose place is certain", () => {
  const asides = (...perhaps: string[]) => {
    const stopped = new Set([device().id]);
    const perhapsAlone = new Set(perhaps);
    return told(perhapsAgain([device(), newer()], { ...nothingKnown, stopped, perhapsAlone }));
  };
  expect(asides(device().id)).toEqual([["1/2", "2/1", "again"]]);
  expect(asides("9/9")).toEqual([]);
});

test("it has not come again in an older letter, or in a sheet that is stopped too", () => {
  expect(again(placeless, [newer({ id: "0/1" })])).toEqual([]);
  const stopped = new Set([placeless.id, "2/1"]);
  expect(perhapsAgain([placeless, newer()], { ...nothingKnown, stopped })).toEqual([]);
});

test("without a place it may also have come under its mark", () => {
  const renamed = newer({ file: "x.pdf" });
  expect(again(placeless, [renamed])).toEqual([["1/2", "2/1", "again"]]);
  expect(again(placeless, [{ ...renamed, mark: "s 104" }])).toHaveLength(1);
  expect(again(placeless, [{ ...renamed, mark: "S-105" }])).toEqual([]);
  expect(again(placeless, [plate({ id: "2/1" })])).toEqual([]);
  expect(again(device(), [renamed], "position")).toEqual([]);
  expect(again(without(placeless, "mark"), [without(renamed, "mark")])).toEqual([]);
});

test("of several the last is told", () => {
  const [one, two] = [newer(), newer({ id: "3/1" })];
  expect(again(placeless, [one, two])).toEqual([["1/2", "3/1", "again"]]);
});

const left = (...sheets: Sheet[]) => told(leftOver(sheets, nothingKnown));

test("a device beyond the gangs of a newer plate is kept aside", () => {
  const narrow = plate({ id: "2/1", gangs: 2 });
  expect(left(narrow, deviceAt(2), deviceAt(3))).toEqual([["1/4", "2/1", "beyond"]]);
  expect(left(plate({ gangs: 2 }), deviceAt(3, { id: "2/1" }))).toEqual([]);
  expect(left(plate({ gangs: 2 }), deviceAt(3))).toEqual([]);
  expect(left(without(narrow, "gangs"), deviceAt(3))).toEqual([]);
  expect(left(plate({ id: "2/1", gangs: 0 }), without(deviceAt(3), "position"))).toEqual([]);
});

test("a device that stands alone is kept aside where newer sheets make a plate of its station", () => {
  const alone = aloneDevice({ mark: "S-104" });
  expect(left(alone, plate({ id: "2/1" }))).toEqual([["1/9", "2/1", "alone"]]);
  expect(left(alone, deviceAt(1, { id: "2/1" }))).toEqual([["1/9", "2/1", "alone"]]);
  expect(left(alone, deviceAt(1, { id: "2/1" }), plate({ id: "2/2" }))).toEqual([["1/9", "2/2", "alone"]]);
  expect(left(alone, plate({ id: "2/1" }), plate({ id: "3/1" }))).toEqual([["1/9", "3/1", "alone"]]);
  expect(left({ ...alone, id: "2/1" }, plate(), deviceAt(1))).toEqual([]);
});

test("a device of a plate that never came is kept aside for a newer one that stands alone", () => {
  const alone = aloneDevice({ id: "2/1", mark: "S-104" });
  expect(left(deviceAt(1), alone)).toEqual([["1/2", "2/1", "in-plate"]]);
  expect(left(deviceAt(1), plate(), alone)).toEqual([]);
  expect(left(deviceAt(1), deviceAt(2, { id: "2/1" }))).toEqual([]);
  expect(left(alone, deviceAt(1, { id: "3/1" }))).toEqual([["2/1", "3/1", "alone"]]);
});
