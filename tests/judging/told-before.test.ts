import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { sheetReport } from "../../src/judging/sheet-report.ts";
import { knownOf } from "../../src/judging/told-before.ts";
import type { Known } from "../../src/orders/stand.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { completeOrder, device, deviceAt, plate } from "../make/sample.ts";

const toldOf = (...earlier: Sheet[]): Known =>
  knownOf(earlier, new Map(), (sheet) => sheetReport(sheet, catalogue).problems, catalogue);

test("a sheet with a fault is stopped, with the places to mend", () => {
  const { stopped, toMend } = toldOf(
    plate(),
    deviceAt(1),
    deviceAt(2, { finish: "plaid", lettering: "plaid" }),
  );
  expect([...stopped]).toEqual(["1/3"]);
  expect([...toMend]).toEqual([["1/3", new Set(["finish", "lettering"])]]);
  expect(toldOf(...completeOrder())).toMatchObject({ stopped: new Set(), toMend: new Map() });
});

test("what is only asked about stops no sheet", () => {
  const misspelt = device({}, { "1": ["SALONA", ""] });
  expect(sheetReport(misspelt, catalogue).verdict).toBe("confirm");
  expect([...toldOf(plate(), misspelt).stopped]).toEqual([]);
});

test("devices may stand alone where their plate never came, and nowhere else", () => {
  const alone = (...earlier: Sheet[]): string[] => [...(toldOf(...earlier).perhapsAlone ?? [])];
  expect(alone(deviceAt(1), deviceAt(2))).toEqual(["1/2", "1/3"]);
  expect(alone(...completeOrder())).toEqual([]);
  // without a mark it cannot be matched, and is stopped for that
  expect(alone(plate(), without(deviceAt(1), "mark"))).toEqual([]);
  expect(alone(plate(), deviceAt(1, { finish: "plaid" }))).toEqual([]);
});
