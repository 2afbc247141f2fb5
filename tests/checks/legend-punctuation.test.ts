import { expect, test } from "vitest";
import { legend } from "../../src/checks/sample.ts";
import { legendPunctuation } from "../../src/checks/sheet/legend-punctuation.ts";
import { catalogue } from "../make/config.ts";
import { plate } from "../make/sample.ts";

/** What is asked about a legend of these rows, beside another legend. */
const asked = (...rows: string[]): string[] => {
  const legends = [legend("1", ...rows), legend("2", "HALL", "EAST")];
  return [...legendPunctuation.find(plate({ legends }), catalogue)].map(({ facts }) =>
    [facts["row"], facts["mark"] ?? "around", "→", facts["closed"]].map(String).join(" "),
  );
};

test.each([
  ['"STUDY"', "1 around → STUDY"],
  ["“ STUDY ”", "1 around → STUDY"],
  ["«STUDY»", "1 around → STUDY"],
  ["‘STUDY’", "1 around → STUDY"],
  ["(STUDY)", "1 around → STUDY"],
  [" (STUDY) ", "1 around → STUDY"],
  ['"STUDY,"', "1 around → STUDY,"],
  ["STUDY;", "1 ; → STUDY"],
  ["STUDY :", "1 : → STUDY"],
  ["STUDY**", "1 ** → STUDY"],
  ["STUDY, *", "1 , * → STUDY"],
  ["STUDY__", "1 __ → STUDY"],
  ["STUDY-", "1 - → STUDY"],
  ["STUDY –", "1 – → STUDY"],
  ["STUDY/", "1 / → STUDY"],
  ["MAIN STUDY.", "1 . → MAIN STUDY"],
])("“%s” is asked about", (row, question) => {
  expect(asked(row)).toEqual([question]);
});

test.each([
  'THE "STUDY"',
  '"MAIN" STUDY',
  "MAIN (EAST)",
  "(EAST) MAIN",
  '"',
  "()",
  "*",
  "STUDY, MAIN",
  "*STUDY",
  "STUDY-EAST",
  "A/V",
  "2-",
  "STUDY. EAST",
  "ST. STUDY.",
  "STUDY 2.",
  "ON.",
  "CONF.",
  "DEPT.",
  "ZYQX.",
])("“%s” is not", (row) => {
  expect(asked(row)).toEqual([]);
});

test("a stroke joins the next row to its own, and only words in brackets that stand alone are asked about", () => {
  expect(asked("STUDY-", "EAST")).toEqual([]);
  expect(asked("STUDY-", "  ")).toEqual(["1 - → STUDY"]);
  expect(asked("EAST", "STUDY-")).toEqual(["2 - → STUDY"]);
  expect(asked("STUDY", "(EAST)")).toEqual([]);
  expect(asked("  ", "(EAST)")).toEqual(["2 around → EAST"]);
  expect(asked("STUDY", '"EAST"')).toEqual(["2 around → EAST"]);
});
