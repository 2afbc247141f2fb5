import { expect, test } from "vitest";
import { checkSheet, wordsOf } from "../../src/checks/run.ts";
import { withKept } from "../../src/lettering/with-kept.ts";
import { catalogue } from "../make/config.ts";
import { device, plate } from "../make/sample.ts";

const onButton = (...rows: string[]) => checkSheet(device({}, { "1": rows }), catalogue);
const asks = (...rows: string[]): string[] => onButton(...rows).map(({ check }) => check);

// Legends of more than eight characters, as a form of eight leaves them.
test.each(["LIGHTS O", "DINING R", "SHADES U", "SHADES D", "BLINDS C", "READING ", "SCRN 2 D", "ZONE 4 O"])(
  "“%s” is asked about once, and not otherwise mentioned",
  (row) => expect(asks(row)).toEqual(["row-maybe-cut-off"]),
);

test.each([
  ["STAIRS B"],
  ["HALL 2 N"],
  ["BALLRM A"],
  ["LEVEL 2"],
  ["LEVEL P1"],
  ["UNIT 4 C"],
  ["LOCKER M"],
  ["SHADES N"],
  ["STUDIO X"],
  ["DEPT R&D"],
  ["LOBBY A/V"],
  ["TAKING A", "BREAK"],
  ["LIGHTS O", "FF"],
  ["DINING R", "OOM"],
])("“%s” %s is not asked about", (...rows) => expect(asks(...rows)).not.toContain("row-maybe-cut-off"));

test("it says what the row may have been, as far as that is known", () => {
  const says = (row: string) => onButton(row).map((problem) => wordsOf(problem).says);
  expect(says("LIGHTS O")).toEqual([
    "Row 1 of button 1, “LIGHTS O”, is full and ends in a single letter, perhaps the beginning of ON or OFF. The form may have cut your word. What should it say?",
  ]);
  expect(says("HAMPER Z")).toEqual([
    "Row 1 of button 1, “HAMPER Z”, is full and ends in a single letter, perhaps the beginning of a longer word. The form may have cut your word. What should it say?",
  ]);
});

test("a blank is counted as the form counts: an accent typed by itself is none of its characters", () => {
  const row = "CAFE\u0301 RM ";
  expect([...row].length).toBe(9);
  expect(asks(row)).toEqual(["row-maybe-cut-off"]);
});

test("a blank at the end of a full row is noted where the legend goes on, and where the row is kept", () => {
  expect(asks("READING ", "ROOM")).toEqual(["legend-spacing"]);
  const kept = withKept(catalogue, [{ word: "READING", project: "Larkspur Library" }]);
  expect(checkSheet(device({}, { "1": ["READING "] }), kept).map(({ check }) => check)).toEqual([
    "legend-spacing",
  ]);
});

test("a blank at the end is asked about in each full row that ends its legend, and in no other", () => {
  expect(asks("READING ", "  ")).toContain("row-maybe-cut-off");
  expect(asks("DINING", "TERRACE ")).toEqual(["row-maybe-cut-off"]);
  for (const row of ["LOUNGE ", "TERRACE  ", "READING"]) expect(asks(row)).not.toContain("row-maybe-cut-off");
  const both = device({}, { "1": ["READING ", ""], "2": ["TERRACE ", ""] });
  expect(checkSheet(both, catalogue).map(({ check, spots }) => [check, spots[0]?.place])).toEqual([
    ["row-maybe-cut-off", "row.1.1"],
    ["row-maybe-cut-off", "row.2.1"],
  ]);
});

test("a full row with a blank is asked about once where its word is, and anyhow where another is", () => {
  expect(asks("REEDING ")).not.toContain("row-maybe-cut-off");
  const other = device({}, { "1": ["READING ", ""], "2": ["KITCHN", ""] });
  expect(checkSheet(other, catalogue).map(({ check }) => check)).toEqual(
    expect.arrayContaining(["row-maybe-cut-off", "spelling"]),
  );
});

test("blanks that place the words are asked about as gaps alone, and those of a plain face not at all", () => {
  for (const row of [" LOUNGE ", "ALL  ON "]) expect(asks(row)).toEqual(["legend-spacing"]);
  const legends = plate().legends.map((legend) =>
    legend.face === "1" ? { ...legend, rows: ["DINING ROOM "], plain: true } : legend,
  );
  const checks = checkSheet(plate({ legends }), catalogue).map(({ check }) => check);
  expect(checks).not.toContain("row-maybe-cut-off");
});

test("a name with an initial on the sheet does not vouch for that letter", () => {
  const sheet = device({ contact: { ...device().contact, name: "Ines O. Calloway" } }, { "1": ["LIGHTS O"] });
  expect(checkSheet(sheet, catalogue).map(({ check }) => check)).toEqual(["row-maybe-cut-off"]);
});
