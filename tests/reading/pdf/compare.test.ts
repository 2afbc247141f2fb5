import { expect, test } from "vitest";
import type { FormField } from "../../../src/reading/form.ts";
import { compareForms } from "../../../src/reading/pdf/compare.ts";

const text = (...values: readonly string[]): FormField[] => [{ name: "a", kind: "text", values }];
const choice = (...values: readonly string[]): FormField[] => [{ name: "a", kind: "choice", values }];

test("readings that agree are certain", () => {
  expect(compareForms(text("LOBBY"), text("LOBBY"))).toEqual(text("LOBBY"));
});

test.each([
  ["trailing blanks", text("LOBBY  "), text("LOBBY")],
  ["blanks at the end of a line", text("A \nB"), text("A\nB")],
  ["a line end at the end", text("A\n"), text("A")],
  ["the order of a selection", choice("B", "A"), choice("A", "B")],
])("%s are no difference, and the first reading is kept", (_, one, other) => {
  expect(compareForms(one, other)).toEqual(one);
});

test.each([
  ["a letter", text("LOBBY"), text("L0BBY")],
  ["leading blanks", text(" LOBBY"), text("LOBBY")],
  ["blanks within", text("A  B"), text("A B")],
  ["an empty line", text("A\n\nB"), text("A\nB")],
  ["a selected value", choice("A"), choice("A", "B")],
])("%s is a difference", (_, one, other) => {
  expect(compareForms(one, other)).toEqual([
    { ...one[0], unsure: { one: one[0]?.values.join(", "), other: other[0]?.values.join(", ") } },
  ]);
});

test("where the first reader finds nothing, the other's value is shown, unsure", () => {
  expect(compareForms(text(""), text("LONG"))).toEqual([
    { name: "a", kind: "text", values: ["LONG"], unsure: { one: "", other: "LONG" } },
  ]);
});

test("a field that one reader sees is unsure if it is filled", () => {
  expect(compareForms([], text("X"))).toMatchObject([{ values: ["X"], unsure: { one: "", other: "X" } }]);
  expect(compareForms(text("X"), [])).toMatchObject([{ values: ["X"], unsure: { one: "X", other: "" } }]);
  expect(compareForms([], text(""))).toEqual(text(""));
});
