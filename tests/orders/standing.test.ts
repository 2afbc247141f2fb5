import { expect, test } from "vitest";
import { goesIntoPlate } from "../../src/orders/standing.ts";
import type { DeviceSheet } from "../../src/trade/sheet.ts";
import { device } from "../make/sample.ts";

const { standing: _standing, position: _position, gangs: _gangs, ...unsaid } = device();

test.each<[string, Partial<DeviceSheet>, boolean]>([
  ["marked as standing alone, whatever else it says", { standing: "alone", position: 2, gangs: 4 }, false],
  ["marked as going into a plate", { standing: "in-plate" }, true],
  ["with a position and no other word", { position: 2 }, true],
  ["for a plate of four", { gangs: 4 }, true],
  ["for a plate of two", { gangs: 2 }, true],
  ["for a plate of one", { gangs: 1 }, false],
  ["as position 1 of 1", { position: 1, gangs: 1 }, false],
  ["that says nothing of it", {}, false],
])("a device %s", (_, said, fitted) => {
  expect(goesIntoPlate({ ...unsaid, ...said })).toBe(fitted);
});
