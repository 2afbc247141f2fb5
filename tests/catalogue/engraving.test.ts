import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readCatalogue } from "../../src/catalogue/catalogue.ts";
import { leastCap, readableCap } from "../../src/catalogue/engraving.ts";
import { faultLine } from "../../src/yaml/yaml.ts";
import { catalogue } from "../make/config.ts";

// ISO 9241-3:1992, character height: at least 16 minutes of arc (quoted at second hand); that is 2.327 mm at 500 mm.
test("16 minutes of arc are 2.327 mm at 500 mm, and twice as much at twice the distance", () => {
  expect(readableCap(500)).toBeCloseTo(2.327, 3);
  expect(readableCap(1000)).toBeCloseTo(4.654, 3);
});

test("the least height is the greater of what the maker cuts and what can be read", () => {
  const { engraving } = catalogue;
  expect(leastCap({ ...engraving, least_cap: 2, reading_distance: 500 })).toBeCloseTo(2.327, 3);
  expect(leastCap({ ...engraving, least_cap: 2.5, reading_distance: 500 })).toBe(2.5);
});

const text = readFileSync("fixtures/trade/catalogue.yaml", "utf8");

test.each([
  ["cap: 2.4", "cap: 2.2", "layouts.3.face.cap: letters of 2.2 mm are too small; 2.33 mm is the least"],
  // NUREG-0700 Revision 2 (2002), 11.4, from memory: rows at least half a letter's height apart.
  [
    "row_gap: 2.1",
    "row_gap: 1.3",
    "plate.face.row_gap: rows must stand at least half a letter's height apart",
  ],
  ["height: 13", "height: 10", "plate.face.height: 2 rows do not fit"],
  ["{ code: RN, name", "{ code: RS, name", "layouts.3.face.font: the font RN is not in the list of fonts"],
  [
    "    legend_top: 8",
    "    # 8",
    "layouts.0: say in legend_top how far from the edge a legend at the top is",
  ],
  ["legend_top: 8", "legend_top: 61", "layouts.0.legend_top: 2 rows do not fit so far from the edge"],
])("“%s” as “%s” is a fault", (right, wrong, fault) => {
  const read = readCatalogue(text.replace(right, wrong), "catalogue.yaml");
  const faults = read.ok
    ? []
    : read.faults.map((one) => faultLine(one).replace(/^catalogue.yaml:\d+:\d+ /, ""));
  expect(faults).toEqual([fault]);
});
