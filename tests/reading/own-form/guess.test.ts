import { expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import { guessForm } from "../../../src/reading/own-form/guess.ts";
import type { OutlinedField, Printed } from "../../../src/reading/own-form/outline.ts";
import { trade } from "../../make/config.ts";

/** Fields below each other on one page, as high as a line, each 60 points below the one before. */
const lines = (...fields: (Partial<OutlinedField> & { readonly says?: string })[]) => {
  const at = (i: number, x: number, wide: number): Box => [x, 700 - 60 * i, x + wide, 716 - 60 * i];
  const outlined = fields.map(
    ({ says: _says, ...one }, i): OutlinedField => ({
      name: `f${i}`,
      kind: "text",
      values: [],
      frames: [{ page: 1, box: at(i, 400, one.kind === "tick" ? 12 : 100) }],
      ...one,
    }),
  );
  const printed = fields.flatMap(({ says }, i): Printed[] =>
    says === undefined ? [] : [{ page: 1, text: says, box: at(i, 330, 50) }],
  );
  const { form, guesses } = guessForm(
    { kind: "form", pages: 1, nameless: 0, fields: outlined, printed },
    trade.catalogue,
  );
  return {
    form,
    values: guesses.map(({ values }) => values),
    told: guesses.map(({ place, ticked, taken }) => [place, ticked, taken?.by].filter(Boolean).join(" ")),
  };
};
const list = (...values: string[]) => ({
  kind: "choice" as const,
  choices: values.map((value) => ({ value, shown: value })),
});
const others = (n: number): string[] => Array.from({ length: n }, (_, i) => `Other ${i}`);

test("a list is told by two of its choices, if they are a third of them", () => {
  expect(lines(list("Oat", "Chalk")).told).toEqual(["finish"]);
  expect(lines(list("Ink", "Milk", "Please choose")).told).toEqual(["lettering"]);
  expect(lines(list("Oat", "Chalk", ...others(4))).told).toEqual(["finish"]);
  expect(lines(list("Oat", "Chalk", ...others(5))).told).toEqual([""]);
  expect(lines(list("Ash", "Elm")).told).toEqual([""]);
});

test("of a list the values are told that are no code and no name, with the choice that they stand for", () => {
  expect(lines(list("OAT", "chalk ")).values).toEqual([undefined]);
  expect(lines(list("Oat", "chk", "the SLT one", "Elm", "Choose…")).values).toEqual([
    [
      ["the SLT one", "SLT"],
      ["Elm", undefined],
    ],
  ]);
});

test("a box is told by its label, if that is a choice of one place", () => {
  expect(lines({ kind: "tick", says: "Oat" }, { kind: "tick", says: "Chalk" }).told).toEqual([
    "finish OAT",
    "finish CHK",
  ]);
  expect(lines({ kind: "tick", says: "Elm" }).told).toEqual([""]);
});

test("a place is filled once, by the field that is told first, and a box by one of its kind", () => {
  expect(lines({ says: "Project" }, { says: "Job" }).told).toEqual(["project", "f0"]);
  expect(lines({ says: "Finish", ...list("Oat", "Chalk") }, { kind: "tick", says: "Oat" }).told).toEqual([
    "finish",
    "f0",
  ]);
  expect(lines({ kind: "tick", says: "Project" }).told).toEqual([""]);
  expect(lines({ says: "Same as billing" }).told).toEqual([""]);
  expect(lines({ kind: "tick", says: "Same as billing" }).told).toEqual(["ship.same"]);
});

test("only a device has a layout or a position; of what both may have a plate sheet is made", () => {
  expect(lines({ says: "Project" }).form).toBe("plate");
  expect(lines({ says: "Project" }, { says: "Position" }).form).toBe("device");
  expect(lines({ says: "Project" }, { says: "Layout", ...list("D2", "D4") }).form).toBe("device");
  expect(lines({ says: "Gang 1" }, { says: "Gang 2" }, { says: "Gang 3" }).form).toBe("plate");
});

test("a tip is believed before a label, and a label before a name", () => {
  const tipped = {
    frames: [{ page: 1, box: [400, 700, 500, 716] as const satisfies Box, tip: "Order number" }],
  };
  expect(lines({ ...tipped, name: "Finish", says: "Project" }).told).toEqual(["order"]);
  expect(lines({ name: "Notes", says: "Project" }).told).toEqual(["project"]);
  expect(lines({ name: "Notes", says: "Mounting height" }).told).toEqual(["notes"]);
});

test("parts of an address belong to the block that is printed above them, or to that of the field before", () => {
  const rest = [{ says: "City" }, { says: "Project" }, { says: "State" }];
  expect(lines({ says: "Ship to" }, ...rest).told).toEqual([
    "ship.name",
    "ship.city",
    "project",
    "ship.state",
  ]);
  expect(lines({ name: "ship_name" }, ...rest).told).toEqual([
    "ship.name",
    "ship.city",
    "project",
    "bill.state",
  ]);
});
