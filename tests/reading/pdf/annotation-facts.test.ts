import { expect, test } from "vitest";
import { marksOf, widgetsOf } from "../../../src/reading/pdf/annotation-facts.ts";
import type { Annotation } from "../../../src/reading/pdf/pdfjs-annotations.ts";

const view = [10, 20, 600, 800] as const;
const annotation = (entries: Partial<Annotation>): Annotation => ({
  id: "1R",
  rect: [30, 50, 90, 70],
  ...entries,
});
const marks = (entries: Partial<Annotation>) => marksOf({ view, annotations: [annotation(entries)] });
const box = [20, 30, 80, 50];

// ISO 32000-1:2008 table 169
test.each<[Partial<Annotation>, unknown[]]>([
  [{ subtype: "Ink" }, [{ what: "ink", box }]],
  [{ subtype: "Square", contentsObj: { str: " see here " } }, [{ what: "stamp", box, text: "see here" }]],
  [
    { subtype: "FreeText", textContent: ["LOBBY", "EAST"] },
    [{ what: "free-text", box, text: "LOBBY\nEAST" }],
  ],
  [
    { subtype: "FreeText", textContent: ["LOBBY"], contentsObj: { str: "FOYER" } },
    [{ what: "free-text", box, text: "LOBBY" }],
  ],
  [{ subtype: "FreeText", textContent: [" "] }, []],
  [{ subtype: "Text", contentsObj: {} }, []],
  [{ subtype: "Stamp" }, [{ what: "stamp", box }]],
  [{ subtype: "Link", contentsObj: { str: "a page" } }, []],
  [{}, []],
])("%j is a mark on the page, or none", (entries, expected) => {
  expect(marks(entries)).toEqual(expected);
});

const text = { fieldName: "a", fieldType: "Tx", hasAppearance: true, textContent: ["LOBBY", "EAST"] };
const options = [
  { exportValue: "OAT", displayValue: "Outdoor  ash" },
  { exportValue: "CHK", displayValue: "Chalk" },
];
const choice = { fieldName: "a", fieldType: "Ch", combo: true, options };
const shownBy = (entries: Partial<Annotation>, drawn?: string) =>
  widgetsOf({ view, annotations: [annotation(entries)] }, 3, () => drawn);

const widget = { field: "a", page: 3, box, hidden: false };
test.each<[string, Partial<Annotation>, string | undefined, unknown[]]>([
  ["the lines in a text field", text, undefined, [{ ...widget, shown: "LOBBY\nEAST" }]],
  [
    "nothing in one without lines",
    { ...text, textContent: undefined as never },
    undefined,
    [{ ...widget, shown: "" }],
  ],
  ["nobody knows what in one without a drawing", { ...text, hasAppearance: false }, undefined, [widget]],
  ["a choice by what it stands for", choice, "Outdoorash", [{ ...widget, shown: "OAT" }]],
  ["a choice in the words of its drawing", choice, "Oak", [{ ...widget, shown: "Oak" }]],
  [
    "a choice in a form that lists none",
    { ...choice, options: undefined as never },
    "Oak",
    [{ ...widget, shown: "Oak" }],
  ],
  ["nobody knows which choice", choice, undefined, [widget]],
  ["nobody knows which of a list that does not open", { ...choice, combo: false }, "Chalk", [widget]],
  ["nobody knows what in a box", { fieldName: "a", fieldType: "Btn", checkBox: true }, "Chalk", [widget]],
])("a page shows %s", (_, entries, drawn, expected) => {
  expect(shownBy(entries, drawn)).toEqual(expected);
});

test("where drawings in a file mean nothing, nobody knows what shows", () => {
  expect(widgetsOf({ view, annotations: [annotation(text)] }, 3, undefined)).toEqual([widget]);
});

test.each<[string, Partial<Annotation>]>([
  ["a field without a name", { ...text, fieldName: "" }],
  ["a push button", { fieldName: "a", fieldType: "Btn" }],
  ["a signature", { fieldName: "a", fieldType: "Sig" }],
  ["no field", { fieldName: "a", subtype: "Link" }],
])("%s shows nothing that was filled in", (_, entries) => {
  expect(shownBy(entries)).toEqual([]);
});

// ISO 32000-1:2008 table 165: hidden is bit 2, not to be seen on a screen bit 6.
test.each([
  [0, false],
  [2, true],
  [32, true],
  [1, false],
  [4, false],
  [64, false],
])("a field with the flags %d is hidden: %s", (annotationFlags, hidden) => {
  expect(shownBy({ ...text, annotationFlags })).toMatchObject([{ hidden }]);
});

test("a field of no size is hidden", () => {
  expect(shownBy({ ...text, rect: [30, 50, 90, 50] })).toMatchObject([{ hidden: true }]);
});
