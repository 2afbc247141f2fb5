import { PDFRef, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { blankPrint, textLook } from "../../../src/reading/page/blank-print.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { lookOf, madeForm } from "./made-form.ts";

const text = PDFString.of;

/** What the print of a blank form says of its only widget. */
async function widgetOf(entries: Entries) {
  const widget = blankPrint(await madeForm([entries]))?.pages[0]?.widgets[0];
  return widget && { look: widget.look, values: widget.values, state: widget.state, choices: widget.choices };
}
const look = (states: Entries): Entries => ({ AP: { N: states } });
const box: Entries = { FT: "Btn", T: text("box"), ...look({ Off: 1, Yes: 2 }) };
const list: Entries = { FT: "Ch", Ff: 1 << 17, T: text("list") };
const nothing = { look: undefined, values: [], state: undefined, choices: [{ value: "", shows: "" }] };

test("a blank form tells of each field how it is drawn and what it holds", async () => {
  expect(await widgetOf({ FT: "Tx", T: text("row") })).toEqual({ ...nothing, values: [""] });
  expect(await widgetOf({ FT: "Tx", T: text("row"), V: text("26c"), AP: { N: 7 } })).toEqual({
    ...nothing,
    look: "/N 7",
    values: ["26c"],
  });
});

describe("the box of a blank form", () => {
  test("tells under which name it is drawn ticked", async () => {
    expect(await widgetOf(box)).toMatchObject({ look: "/N /Off 1\n/Yes 2", state: "Yes" });
    expect((await widgetOf({ ...box, ...look({ "Gr#C3#BCn": 1 }) }))?.state).toBe("Grün");
  });
  test.each<[string, Entries]>([
    ["that is drawn in two ways", look({ Off: 1, Yes: 2, No: 3 })],
    ["that is never drawn ticked", look({ Off: 1 })],
    ["that has one drawing for all", look(7 as never)],
    ["that is not drawn", { AP: 7 }],
    ["that stands for another value", { Opt: [text("A")] }],
    ["that is drawn nobody knows where", { AP: PDFRef.of(9_999) }],
  ])("%s leaves the form without a print", async (_, entries) => {
    expect(await widgetOf({ ...box, ...entries })).toBeUndefined();
  });
});

test("a list tells what it shows for each value", async () => {
  const pair: Entries[string] = [text("OAT"), text("Oatmeal")];
  expect((await widgetOf({ ...list, Opt: [pair as never, text("CHK")] }))?.choices).toEqual([
    { value: "OAT", shows: "Oatmeal" },
    { value: "CHK", shows: "CHK" },
  ]);
});

test("a form that viewers draw has no print", async () => {
  const pdf = await madeForm([], ({ form, set }) => set(form, { NeedAppearances: 7 }));
  expect(blankPrint(pdf)).toBeUndefined();
  expect(blankPrint(await madeForm([]))?.pages).toMatchObject([{ widgets: [] }]);
});

test("the drawing of a text is the only one that its field has", async () => {
  const { context } = await madeForm([]);
  const drawn = context.register(lookOf("q Q"));
  const found = (AP: Entries[string]) => textLook(context.obj({ AP })) !== undefined;
  expect(found({ N: drawn })).toBe(true);
  expect([found({ N: drawn, R: drawn }), found({ D: drawn }), found({ N: {} }), found(7)]).toEqual([
    false,
    false,
    false,
    false,
  ]);
  expect(textLook(context.obj({}))).toBeUndefined();
});
