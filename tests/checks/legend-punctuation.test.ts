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
  ["STUDY!", "1 ! → STUDY"],
  ["STUDY..", "1 .. → STUDY"],
  ["STUDY ...", "1 ... → STUDY"],
  ["STUDY=", "1 = → STUDY"],
  ["STUDY#", "1 # → STUDY"],
  ["STUDY+", "1 + → STUDY"],
  ["DEN+", "1 + → DEN"],
  ["STUDY%", "1 % → STUDY"],
  ["*STUDY", "1 * → STUDY"],
  ["- STUDY", "1 - → STUDY"],
  ["-STUDY", "1 - → STUDY"],
  [".STUDY", "1 . → STUDY"],
  ["#STUDY", "1 # → STUDY"],
  ["& STUDY", "1 & → STUDY"],
  ["/STUDY", "1 / → STUDY"],
  ['STUDY"', '1 " → STUDY'],
  ['"STUDY', '1 " → STUDY'],
  ["STUDY'", "1 ' → STUDY"],
  ["'STUDY", "1 ' → STUDY"],
  ["STUDY)", "1 ) → STUDY"],
  ["(STUDY", "1 ( → STUDY"],
  ["STUDY (EAST", "1 ( → STUDY EAST"],
  ["S.TUDY", "1 . → STUDY"],
  ["ST,UDY", "1 , → STUDY"],
  ["MAIN STU:DY", "1 : → MAIN STUDY"],
  ["MAIN--STUDY", "1 - → MAIN-STUDY"],
  ["ON//OFF", "1 / → ON/OFF"],
  ["MEN''S", "1 ' → MEN'S"],
  ["1. STUDY", "1 1. → STUDY"],
  ["1) STUDY", "1 1) → STUDY"],
  ["(1) STUDY", "1 (1) → STUDY"],
  ["STUDY X2", "1 X2 → STUDY"],
  ["STUDY 2X", "1 2X → STUDY"],
  ["STUDY (2)", "1 (2) → STUDY"],
  ["STUDY(2)", "1 (2) → STUDY"],
  ["STUDY AND", "1 AND → STUDY"],
  ["STUDY &", "1 & → STUDY"],
  ["HALL with", "1 with → HALL"],
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
  "KIDS'",
  "MAITRE D'",
  "'TIS",
  "'90S",
  '24"',
  "A+",
  "AB+",
  "18+",
  "+5",
  "-1",
  ".5",
  "#2",
  "50%",
  "+",
  "-",
  "&",
  "A.V.",
  "ST.JOHN",
  "MR.LEE",
  "ON,OFF",
  "2. STUDY",
  "HALL 1. STUDY",
  "1. OG",
  "1. STOCK",
  "1.5",
  "STUDY X",
  "STUDY 2",
  "OR (2)",
  "MAIN (EAST) STUDY",
  "A+B",
  "D&D",
  "BRAND",
  "R AND",
  "WELCOME TO",
])("“%s” is not", (row) => {
  expect(asked(row)).toEqual([]);
});

test("a sign that another legend answers is meant, and so is one that joins a second row", () => {
  const beside = (row: string, other: string): unknown[] => [
    ...legendPunctuation.find(plate({ legends: [legend("1", row), legend("2", other)] }), catalogue),
  ];
  expect(beside("VOL -", "VOL +")).toEqual([]);
  expect(beside("STUDY+", "STUDY-")).toEqual([]);
  expect(beside("+STUDY", "-STUDY")).toEqual([]);
  expect(beside("STUDY+", "HALL+")).toHaveLength(2);
  expect(beside("STUDY!", "-1")).toHaveLength(1);
  expect(beside("MAIN -STUDY!", "HALL +")).toHaveLength(1);
  expect(asked("BAR AND", "GRILL")).toEqual([]);
  expect(asked("BAR", "& GRILL")).toEqual([]);
  expect(asked("HALL", "/FOYER")).toEqual([]);
  expect(asked("HALL", "- EAST")).toEqual([]);
  expect(asked("HALL", ".EAST")).toEqual(["2 . → EAST"]);
  expect(asked("HALL", "1. EAST")).toEqual([]);
  expect(asked("STUDY (EAST", "WING)")).toEqual([]);
  expect(asked('THE "OLD', 'STUDY"')).toEqual([]);
});

test("a stroke joins the next row to its own, and only words in brackets that stand alone are asked about", () => {
  expect(asked("STUDY-", "EAST")).toEqual([]);
  expect(asked("STUDY-", "  ")).toEqual(["1 - → STUDY"]);
  expect(asked("EAST", "STUDY-")).toEqual(["2 - → STUDY"]);
  expect(asked("STUDY", "(EAST)")).toEqual([]);
  expect(asked("  ", "(EAST)")).toEqual(["2 around → EAST"]);
  expect(asked("STUDY", '"EAST"')).toEqual(["2 around → EAST"]);
});
