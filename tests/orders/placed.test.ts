import { expect, test } from "vitest";
import { unprinted, without } from "../../src/checks/sample.ts";
import { isMarked, placed } from "../../src/orders/placed.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

test.each([
  ["S-104", true],
  ["X-1", true],
  ["NA-1", true],
  ["Tbd 2", true],
  ["LUNA", true],
  ["", false],
  ["  -", false],
  ["n/a", false],
  ["nil", false],
  ["none", false],
  ["TBA", false],
  ["T.B.D.", false],
  ["xxx", false],
])("“%s” in the field of the mark is a station mark: %j", (mark, is) => {
  expect(isMarked(aloneDevice({ mark }))).toBe(is);
});

const place = (sheet: Sheet): Partial<Record<string, unknown>> => {
  const { mark, gangs, ...rest } = placed(sheet, ["S-104"], ["BW-2207"]);
  return {
    mark,
    gangs,
    ...(rest.kind === "device" ? { position: rest.position, standing: rest.standing } : {}),
  };
};
const notes = "plate S-104 pos 3 of 4";

test("the notes say where a sheet belongs that has no mark", () => {
  const nowhere = without(deviceAt(2), "mark", "position", "gangs");
  expect(place({ ...nowhere, notes })).toEqual({
    mark: "S-104",
    gangs: 4,
    position: 3,
    standing: "in-plate",
  });
  expect(place({ ...without(plate(), "mark"), notes })).toEqual({ mark: "S-104", gangs: 4 });
});

test("a field that is filled in goes before the notes", () => {
  const half = { ...without(deviceAt(2), "mark"), notes };
  expect(place(half)).toEqual({ mark: "S-104", gangs: 4, position: 2, standing: "in-plate" });
  expect(place({ ...deviceAt(2, { mark: "S-105" }), notes })).toMatchObject({ mark: "S-105", position: 2 });
});

test("notes without a mark say nothing", () => {
  const nowhere = without(deviceAt(2), "mark", "position");
  expect(placed({ ...nowhere, notes: "pos 3 of 4" }, ["S-104"], [])).toEqual({
    ...nowhere,
    notes: "pos 3 of 4",
  });
});

test("a device that stands alone takes nothing of its notes, unless its form does not ask and they name a position", () => {
  const alone = without(aloneDevice(), "mark", "position", "gangs");
  const onOtherForm = unprinted(alone, "standing");
  for (const sheet of [
    { ...alone, notes },
    { ...onOtherForm, notes: "plate S-104" },
  ])
    expect(placed(sheet, ["S-104"], [])).toEqual(sheet);
  expect(place({ ...onOtherForm, notes })).toEqual({
    mark: "S-104",
    gangs: 4,
    position: 3,
    standing: "in-plate",
  });
});
