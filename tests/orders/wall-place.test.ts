import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { wallPlaceOf } from "../../src/orders/wall-place.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

test("a sheet belongs to its order's station: as the plate, alone, or in a position", () => {
  expect(wallPlaceOf(plate())).toBe("BW2207/S104/plate");
  expect(wallPlaceOf(aloneDevice({ position: 2 }))).toBe("BW2207/S110/alone");
  expect(wallPlaceOf(device())).toBe("BW2207/S104/2");
  expect(wallPlaceOf(device({ order: "PO bw 2207", mark: "s 104" }))).toBe("BW2207/S104/2");
});

test("its notes may name the station", () => {
  expect(wallPlaceOf({ ...without(device(), "mark"), notes: "plate S-105" })).toBe("BW2207/S105/2");
});

test("nothing is known of a sheet without number, mark or position", () => {
  expect(wallPlaceOf(without(device(), "order"))).toBeUndefined();
  expect(wallPlaceOf(device({ order: "TBD" }))).toBeUndefined();
  expect(wallPlaceOf(without(device(), "mark"))).toBeUndefined();
  expect(wallPlaceOf(without(device(), "position"))).toBeUndefined();
});
