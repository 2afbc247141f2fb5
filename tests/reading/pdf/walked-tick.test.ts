import { PDFArray, PDFDict, PDFDocument, PDFName, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { isPushButton, type Leaf, stateOf } from "../../../src/reading/pdf/walked-tick.ts";

const { context } = await PDFDocument.create();
// Bit positions of ISO 32000-1:2008 table 226
const [radio, push] = [1 << 15, 1 << 16];

/** A widget with looks for these states, showing one of them. */
function widget(states: readonly string[], shown?: string): PDFDict {
  const looks = Object.fromEntries(states.map((state) => [state, context.obj({})]));
  return context.obj({
    ...(states.length === 0 ? {} : { AP: { N: looks } }),
    ...(shown === undefined ? {} : { AS: shown }),
  });
}

interface Odd {
  readonly states?: readonly string[];
  readonly shown?: string;
  readonly value?: string;
  readonly sisters?: readonly PDFDict[];
  readonly options?: readonly string[];
}

function leaf(flags: number, { states = [], shown, value, sisters = [], options }: Odd): Leaf {
  const dict = widget(states, shown);
  const list = PDFArray.withContext(context);
  for (const option of options ?? []) list.push(PDFString.of(option));
  return {
    name: "a",
    type: "Btn",
    flags,
    dict,
    sisters: [...sisters, dict],
    ...(value === undefined ? {} : { value: PDFName.of(value) }),
    ...(options === undefined ? {} : { options: list }),
  };
}

test.each<[string, Odd, ...string[]]>([
  ["shown and held", { states: ["Yes", "Off"], shown: "Yes", value: "Yes" }, "Yes"],
  ["held, and not shown", { states: ["Yes", "Off"], shown: "Off", value: "Yes" }, "Yes"],
  ["shown, and held off", { states: ["Yes"], shown: "Yes", value: "Off" }],
  ["shown, while a sister is held", { states: ["1"], shown: "1", value: "2", sisters: [widget(["2"])] }],
  ["shown, without a value", { states: ["Yes"], shown: "Yes" }, "Yes"],
  ["shown, without a value or a look for it", { states: ["Yes"], shown: "On" }, "On"],
  ["neither shown nor held", { states: ["Yes"] }],
  ["shown off, without a value", { states: ["Yes"], shown: "Off" }],
  ["shown, and held as no state of it", { states: ["Yes"], shown: "Yes", value: "X" }, "Yes"],
  ["shown and held as no states of it", { states: ["Yes"], shown: "On", value: "X" }, "X"],
  ["held as no state of it, and not shown", { states: ["Yes"], value: "X" }, "X"],
  ["shown off, and held as no state of it", { states: ["Yes"], shown: "Off", value: "X" }, "X"],
])("a box %s", (_, odd, ...state) => {
  expect(stateOf(leaf(0, odd))).toEqual(state);
});

test.each<[string, Odd, ...string[]]>([
  ["shown and held", { states: ["in"], shown: "in", value: "in" }, "in"],
  ["shown, while another is held", { states: ["in"], shown: "in", value: "out" }, "in"],
  ["shown off, while it is held", { states: ["in"], shown: "Off", value: "in" }],
  ["held, and not said to be shown", { states: ["in"], value: "in" }, "in"],
  ["not said to be shown, while another is held", { states: ["in"], value: "out" }],
  ["held, without looks", { value: "out" }, "out"],
  ["held, with a look for off alone", { states: ["Off"], value: "out" }, "out"],
  ["without anything", {}],
])("a radio button %s", (_, odd, ...state) => {
  expect(stateOf(leaf(radio, odd))).toEqual(state);
});

// ISO 32000-1:2008 table 227
test.each<[string, Odd, string]>([
  [
    "of its place among its sisters",
    { states: ["7"], shown: "7", sisters: [widget(["6"])], options: ["one", "two"] },
    "two",
  ],
  ["that its state counts, without looks", { shown: "1", options: ["one", "two"] }, "two"],
  ["that its state counts, from zero", { shown: "0", options: ["one", "two"] }, "one"],
  ["of none, beyond the last", { shown: "2", options: ["one", "two"] }, "2"],
  ["of none, before the first", { shown: "-1", options: ["one", "two"] }, "-1"],
  ["of none, between two", { shown: "0.5", options: ["one", "two"] }, "0.5"],
  ["of none, for a word", { shown: "in", options: ["one", "two"] }, "in"],
  ["that is empty", { shown: "0", options: ["", "two"] }, "0"],
  ["that nobody gave", { shown: "0" }, "0"],
])("a button stands for the option %s", (_, odd, value) => {
  expect(stateOf(leaf(radio, odd))).toEqual([value]);
});

test("a push button is known by its flag", () => {
  expect(isPushButton(leaf(push, {}))).toBe(true);
  expect(isPushButton(leaf(radio, {}))).toBe(false);
});
