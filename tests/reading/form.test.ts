import { expect, test } from "vitest";
import { type FormField, gatherFields, isFillable, plainName } from "../../src/reading/form.ts";

test.each([
  ["mark", "mark"],
  ["form.mark", "form.mark"],
  // Each widget has a name of its own there, which repeats the field's.
  ["mark.mark", "mark"],
  ["form.mark.mark", "form.mark"],
  ["mark.form.mark", "mark.form.mark"],
  ["form.form.mark", "form.form.mark"],
])("a field that is written as %s has the name %s", (written, name) => {
  expect(plainName(written)).toBe(name);
});

const text = (name: string, ...values: string[]): FormField => ({ name, kind: "text", values });

test("what stands under one name is one field, with each value once and its line ends plain", () => {
  expect(gatherFields([text("a", "LOBBY"), text("b", ""), text("a.a", "LOBBY"), text("a", "ENTRY")])).toEqual(
    [text("a", "LOBBY", "ENTRY"), text("b", "")],
  );
  expect(gatherFields([text("a", ""), text("a", "ONE\r\nTWO\rTHREE\n")])).toEqual([
    text("a", "ONE\nTWO\nTHREE\n"),
  ]);
});

test("what is not filled in has no value, and a text then is empty", () => {
  expect(gatherFields([{ name: "t", kind: "tick", values: [""] }, text("a")])).toEqual([
    { name: "t", kind: "tick", values: [] },
    text("a", ""),
  ]);
  const signed = { name: "s", kind: "signature", values: ["x"] } as const;
  expect(gatherFields([signed])).toEqual([{ ...signed, values: [] }]);
});

test("a field without a name counts only if it is filled in", () => {
  expect(gatherFields([text("", ""), text("a", "x")])).toEqual([text("a", "x")]);
  expect(gatherFields([text("", "LOBBY")])).toEqual([text("", "LOBBY")]);
});

test("signatures and push buttons are not to be filled in", () => {
  const kinds = ["text", "tick", "choice", "signature", "button"] as const;
  expect(kinds.filter((kind) => isFillable({ kind }))).toEqual(["text", "tick", "choice"]);
});
