import { expect, test } from "vitest";
import { sheetReport } from "../../src/judging/sheet-report.ts";
import { withKept } from "../../src/lettering/with-kept.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice } from "../make/sample.ts";

const sheet = (legend: string) => aloneDevice({ project: "Larkspur Library" }, { "1": [legend, ""] });
const found = (legend: string, knows = catalogue): string[] =>
  sheetReport(sheet(legend), knows).problems.map(({ check }) => check);

test("a sheet that says something else is judged anew, and so is one whose words its buyer has kept meanwhile", () => {
  const kept = withKept(catalogue, [{ word: "KITHCEN", project: "Larkspur Library" }]);
  expect(found("KITCHEN")).toEqual([]);
  expect(found("KITHCEN")).toEqual(["spelling"]);
  expect(found("KITHCEN", kept)).toEqual([]);
  expect(found("KITHCEN")).toEqual(["spelling"]);
  // The same words kept give the same object, and other words another.
  expect(withKept(catalogue, [{ word: "KITHCEN", project: "Larkspur Library" }])).toBe(kept);
  expect(withKept(catalogue, [{ word: "KITHCEN", project: "Tern Point" }])).not.toBe(kept);
});

test("what is remembered of a sheet is what is found on it anew", () => {
  const first = sheetReport(sheet("FRONT DOR"), catalogue);
  const again = sheetReport(sheet("FRONT DOR"), catalogue);
  expect(again).toEqual(first);
  expect(again).toEqual(sheetReport(sheet("FRONT DOR"), { ...catalogue }));
  expect(first.problems.length).toBeGreaterThan(0);
});
