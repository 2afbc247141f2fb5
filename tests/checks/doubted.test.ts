import { expect, test } from "vitest";
import { doubtedPlaces, fieldsIn, isDoubted, shownLonger, spotsOf } from "../../src/checks/doubted.ts";
import type { Place } from "../../src/trade/place.ts";
import type { Doubt } from "../../src/trade/sheet.ts";
import { device } from "../make/sample.ts";

const rows: readonly Place[] = ["1", "2", "3", "4"].flatMap((face) =>
  (["1", "2"] as const).map((row) => `row.${face}.${row}` as Place),
);

test("six fields are named, and of seven the first five", () => {
  const names = (count: number) => fieldsIn(device(), rows.slice(0, count));
  expect(names(6)).toEqual([
    "“Face 1, row 1”",
    "“Face 1, row 2”",
    "“Face 2, row 1”",
    "“Face 2, row 2”",
    "“Face 3, row 1”",
    "“Face 3, row 2”",
  ]);
  expect(names(7)).toEqual([...names(6).slice(0, 5), "2 more fields"]);
  expect(fieldsIn(device(), ["row.1.1", "row.1.1"])).toEqual(["“Face 1, row 1”"]);
});

test("doubts are told apart by their kind, and a place or a spot with two of them is told once", () => {
  const seen = { page: 1 };
  const doubts: Doubt[] = [
    { what: "handwriting", place: "row.1.1", seen },
    { what: "handwriting", place: "row.1.1", seen },
    { what: "handwriting" },
    { what: "typed-over", place: "row.2.1" },
  ];
  const sheet = device({ doubts });
  expect(isDoubted(sheet, "handwriting")).toBe(true);
  expect(isDoubted(sheet, "flattened", "typed-over")).toBe(true);
  expect(isDoubted(sheet, "flattened")).toBe(false);
  expect(doubtedPlaces(sheet, "handwriting")).toEqual(["row.1.1"]);
  expect(spotsOf(sheet, doubts)).toEqual([
    { file: "1/2", place: "row.1.1", seen },
    { file: "1/2" },
    { file: "1/2", place: "row.2.1" },
  ]);
});

test.each<[string, Partial<Doubt>, Place[]]>([
  ["the rest of the word", { text: "RECEPT", shown: "RECEPTION" }, ["row.1.1"]],
  ["another word", { text: "RECEPT", shown: "ENTRY" }, []],
  ["nothing that could be read", { text: "RECEPT" }, []],
  ["a word where the field is not known", { shown: "RECEPTION" }, []],
  ["the rest of the word by another doubt", { what: "typed-over", text: "REC", shown: "RECEPTION" }, []],
])("where the page shows %s, the field was cut off: %j %j", (_name, doubt, places) => {
  const sheet = device({ doubts: [{ what: "value-hidden", place: "row.1.1", ...doubt }] });
  expect(shownLonger(sheet)).toEqual(places);
});
