import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { buttonsOf, readCatalogue, readMakes } from "../../src/catalogue/catalogue.ts";
import { faultLine } from "../../src/yaml/yaml.ts";
import { catalogue } from "../make/config.ts";

const text = readFileSync("fixtures/trade/catalogue.yaml", "utf8");

function faultsOf(changed: string): string[] {
  const read = readCatalogue(changed, "catalogue.yaml");
  return read.ok ? [] : read.faults.map((fault) => faultLine(fault).replace(/^catalogue.yaml:\d+:\d+ /, ""));
}

test("rows and characters are those of common practice", () => {
  // Common practice, no source: a button takes two rows of 8 characters, a plate two rows of 12 for each gang.
  for (const { rows, characters } of catalogue.layouts) expect([rows, characters]).toEqual([2, 8]);
  expect([catalogue.plate.rows, catalogue.plate.characters]).toEqual([2, 12]);
});

test("there are devices of 1, 2, 4 and 6 buttons and plates of 1 to 6 gangs", () => {
  expect(catalogue.layouts.map(buttonsOf)).toEqual([1, 2, 4, 6]);
  expect(catalogue.plate.widths).toHaveLength(6);
});

test("plates widen by 1-13/16 inch a gang", () => {
  // NEMA WD 6 as cited in architectural references: 2.75, 4.56, 6.375, 8.1875, 10, 11.8125 in.
  const inches = [2.75, 4.5625, 6.375, 8.1875, 10, 11.8125];
  for (const [i, inch] of inches.entries()) expect(catalogue.plate.widths[i]).toBeCloseTo(inch * 25.4, 1);
});

test("the larger the plate, the fewer the finishes", () => {
  const made = catalogue.plate.widths.map(
    (_, i) => catalogue.finishes.filter(({ plates }) => plates.includes(i + 1)).length,
  );
  expect(catalogue.finishes.length).toBeGreaterThanOrEqual(7);
  expect(made).toEqual(made.toSorted((a, b) => b - a));
  expect(made[5]).toBeLessThan(made[0] ?? 0);
});

test("a code given twice is a fault", () => {
  expect(faultsOf(text.replace("code: SOT", "code: CHK"))).toEqual([
    "finishes.1.code: the code CHK is taken by an entry above",
  ]);
});

test("a plate that does not exist is a fault", () => {
  expect(faultsOf(text.replace("devices: true,  plates: [1] }", "devices: true,  plates: [7] }"))).toEqual([
    "finishes.7.plates.0: no plate has 7 gangs; the widest has 6",
  ]);
});

test("faces that do not fit are a fault", () => {
  expect(faultsOf(text.replace("height: 16.5", "height: 19"))).toEqual([
    "layouts.2.face: the faces do not fit into the opening",
  ]);
});

test("one fault hides no other", () => {
  const changed = text
    .replace("email: orders@quillgate.example", "email: orders")
    .replace("code: SOT", "code: CHK")
    .replace("plates: [1] }", "plates: [7] }")
    .replace("widths: [69.85, 115.89", "widths: [69.85, 15.89")
    .replace("columns: 2", "columns: two")
    .replace("height: 16.5", "height: 19")
    .replace("    legend_top: 8", "    # legend_top: 8");
  expect(faultsOf(changed)).toEqual([
    "maker.email: Invalid email address",
    "layouts.0: say in legend_top how far from the edge a legend at the top is",
    "layouts.2.face: the faces do not fit into the opening",
    "layouts.3.columns: Invalid input: expected number, received string",
    "plate.widths.1: a plate with more gangs must be wider",
    "finishes.1.code: the code CHK is taken by an entry above",
    "finishes.7.plates.0: no plate has 7 gangs; the widest has 6",
  ]);
  expect(readMakes(changed.replace("columns: two", "columns: 2"))).toBe(undefined);
  expect(readMakes(text.replace("email: orders@quillgate.example", "email: orders"))?.layouts).toHaveLength(
    4,
  );
});
