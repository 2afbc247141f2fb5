import { expect, test } from "vitest";
import { checkOrder, checkSheet, wordsOf } from "../../src/checks/run.ts";
import { subject } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { device, deviceAt, plate } from "../make/sample.ts";

function wordsOn(sheet: Sheet): string[] {
  return checkSheet(sheet, catalogue)
    .map(wordsOf)
    .map(({ says, fix }) => `${says} ${fix}`);
}

test("choices are joined with “or”", () => {
  expect(wordsOn(plate({ finish: "FRN", lettering: "MLK" }))).toEqual([
    expect.stringContaining("Choose Soot or Slate instead."),
  ]);
});

function missingFrom(...devices: Sheet[]): string | undefined {
  return checkOrder(subject([plate(), ...devices]), catalogue)
    .map((problem) => wordsOf(problem).says)
    .find((says) => says.includes("positions"));
}

test("numbers in a row are told by the first and the last", () => {
  expect(missingFrom()).toContain("positions 1 to 4 are");
  expect(missingFrom(deviceAt(1))).toContain("positions 2 to 4 are");
  expect(missingFrom(deviceAt(2))).toContain("positions 1, 3 and 4 are");
  expect(missingFrom(deviceAt(1), deviceAt(2))).toContain("positions 3 and 4 are");
});

test.each([
  ["layout", "D2", "D4", "reads “Two buttons” in one PDF program and “Four buttons” in another"],
  ["standing", "", "in-plate", "“Where the device goes” reads “in a plate” in one"],
  ["layout", "2 buttons", "", "reads “2 buttons” in one"],
] as const)(
  "two readings of %s, “%s” and “%s”, are told by the names of the choices",
  (place, one, other, words) => {
    expect(wordsOn(device({ unsure: [{ place, one, other }] }))).toEqual([expect.stringContaining(words)]);
  },
);

test("notes that end in a full stop do not bring a second one", () => {
  expect(wordsOn(device({ notes: "Please add one spare." }))[0]).toMatch(
    /^The notes say “Please add one spare”\. No field /,
  );
});

test("only a device that may stand alone is told to leave its position empty", () => {
  const unread = [{ place: "position", typed: "1 pc", wants: "a number such as 2, or 2 of 4" }] as const;
  const told = (standing: "alone" | "in-plate"): string | undefined =>
    wordsOn(device({ unread, standing })).find((words) => words.includes("1 pc"));
  expect(told("alone")).toContain(
    "It wants a number such as 2, or 2 of 4. For a device standing alone leave it empty.",
  );
  expect(told("in-plate")).not.toContain("standing alone");
});

test("where most buttons are empty their marks are not told one by one", () => {
  const rows = { "1": ["", ""], "2": ["", ""], "3": ["", ""] };
  expect(wordsOn(device({}, rows))).toEqual([
    expect.stringContaining("tick the “leave plain” mark of each."),
  ]);
});

test("finishes are offered that the plate is made in and the lettering reads on", () => {
  const offered = (sheet: Sheet): unknown =>
    checkSheet(sheet, catalogue).find(({ check }) => check === "finish-not-made")?.facts["made"];
  expect(offered(device({ finish: "TIN", gangs: 6, lettering: "INK" }))).toEqual(["Chalk"]);
  expect(offered(device({ finish: "TIN", gangs: 2, lettering: "MLK" }))).toEqual(["Soot", "Slate", "Fern"]);
  expect(offered(plate({ finish: "Mauve", lettering: "Gold", gangs: 5 }))).toEqual(["Chalk", "Soot", "Oat"]);
});
