import { expect, test } from "vitest";
import { checkOrder } from "../../src/checks/run.ts";
import { subject } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { deviceAt, plate } from "../make/sample.ts";

/** The files that one check points at: what stops an order takes its sheets out of it. */
function pointedAt(check: string, ...sheets: Sheet[]): string[] {
  return checkOrder(subject(sheets), catalogue)
    .filter((problem) => problem.check === check)
    .flatMap(({ spots }) => spots.map(({ file }) => file));
}

test("one device that counts other gangs than plate and sisters is sent again alone", () => {
  expect(pointedAt("gang-count-differs", plate(), deviceAt(1), deviceAt(2, { gangs: 6 }))).toEqual(["1/3"]);
});

test("where no device agrees with the plate, the plate is sent again as well", () => {
  expect(pointedAt("gang-count-differs", plate(), deviceAt(1, { gangs: 6 }))).toEqual(["1/2", "1/1"]);
});

test("of a device alone at a plate's station only the device is sent again", () => {
  const alone = deviceAt(2, { standing: "alone" });
  expect(pointedAt("standalone-in-plate", plate(), deviceAt(1), alone)).toEqual(["1/3", "1/3"]);
});

test("of two devices in one position both are sent again", () => {
  const other = deviceAt(1, { id: "1/8", finish: "CHK" });
  expect(pointedAt("position-taken-twice", plate(), deviceAt(1), other)).toEqual(["1/2", "1/8"]);
});

test("of two files whose names are exchanged each is asked about", () => {
  const exchanged = [deviceAt(1, { file: "S-104 pos 2.pdf" }), deviceAt(2, { file: "S-104 pos 1.pdf" })];
  expect(pointedAt("file-name-contradicts", plate(), ...exchanged)).toEqual(["1/2", "1/3"]);
});
