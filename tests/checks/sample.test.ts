import { expect, test } from "vitest";
import type { Layout } from "../../src/catalogue/catalogue.ts";
import { roomOn } from "../../src/catalogue/faces.ts";
import { CannotShow, fullRow, swapped } from "../../src/checks/sample.ts";
import { usualFinishes, usualLayout } from "../../src/checks/sample-choices.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, blankDevice, blankPlate, device, plate } from "../make/sample.ts";

test("a row is filled by a word in front of its end, where a word of that length is known", () => {
  expect(fullRow({ rows: 2, characters: 8 }, "ON")).toBe("NORTH ON");
  expect(fullRow({ rows: 2, characters: 5 }, "ON")).toBe("TO ON");
  for (const characters of [2, 3, 4, 20])
    expect(() => fullRow({ rows: 2, characters }, "ON")).toThrow(CannotShow);
});

test("of a part key the first two characters that differ change places", () => {
  expect(swapped("AAB/OAT/INK-7")).toBe("ABA/OAT/INK-7");
  expect(swapped("A1/OAT")).toBe("1A/OAT");
});

const layouts = (...codes: string[]): Layout[] =>
  codes.flatMap((code) => catalogue.layouts.find((layout) => layout.code === code) ?? []);

test.each([
  [["D1", "D2", "D4", "D6"], "D4"],
  [["D6", "D4"], "D4"],
  [["D1", "D2"], "D2"],
  [["D1"], "D1"],
])("of the layouts %j examples are shown by %s", (codes, code) => {
  expect(usualLayout(layouts(...codes)).code).toBe(code);
});

test("two rows are more than one, and four buttons more than two rows", () => {
  const [four, two] = layouts("D4", "D2");
  if (four === undefined || two === undefined) throw new Error("no such layout");
  expect(usualLayout([{ ...four, rows: 1 }, two]).code).toBe("D4");
  expect(
    usualLayout([
      { ...four, rows: 1 },
      { ...four, code: "other" },
    ]).code,
  ).toBe("other");
  expect(() => usualLayout([])).toThrow("no layout");
});

test("finishes are shown that are made for many sizes of plate and not for all", () => {
  const codes = (gangs: number) => usualFinishes(catalogue, gangs).map((finish) => finish?.code);
  expect(codes(4)).toEqual(["OAT", "SLT"]);
  expect(codes(6)).toEqual(["CHK", "SOT"]);
  expect(codes(1)).toEqual(["OAT", "SLT"]);
  expect(codes(9)).toEqual(["CHK", undefined]);
  expect(() => usualFinishes({ ...catalogue, finishes: [] }, 4)).toThrow("no finish");
});

test("every legend of a sample sheet has the rows of its face, and blank ones where it says less", () => {
  const rowsOf = (sheet: Sheet) => sheet.legends.map(({ face, rows }) => `${face} ${rows.join("/")}`);
  expect(rowsOf(device())).toEqual(["1 ENTRY/", "2 STACKS/EAST", "3 DIM/", "4 ALL/OFF"]);
  expect(rowsOf(aloneDevice()).at(-1)).toBe("plate STAFF ROOM/");
  expect(rowsOf(plate())).toEqual(["1 FOYER/", "2 READING/ROOM", "3 CHILDREN/", "4 WORKROOM/"]);
  for (const sheet of [device(), blankDevice(), aloneDevice(), plate(), blankPlate()])
    for (const { face, rows } of sheet.legends)
      expect(rows).toHaveLength(roomOn(sheet, face, catalogue).rows);
});

test("a blank sheet has nothing chosen, ticked or typed", () => {
  const nothing = { contact: {}, billTo: {}, shipTo: {}, shipSame: false };
  for (const blank of [blankDevice(), blankPlate()]) {
    expect(blank).toMatchObject(nothing);
    for (const part of ["order", "project", "mark", "gangs", "finish", "lettering"] as const)
      expect(blank[part]).toBeUndefined();
    expect(blank.legends.flatMap(({ rows, plain }) => [plain, ...rows]).filter(Boolean)).toEqual([]);
  }
});
