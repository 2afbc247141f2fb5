import { PDFName, PDFRef, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import type { FormField } from "../../../src/reading/form.ts";
import { blankPrint } from "../../../src/reading/page/blank-print.ts";
import { explainedBy } from "../../../src/reading/page/explained.ts";
import { printOf } from "../../../src/reading/page/print.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { drawn, lookOf, type Making, madeForm } from "./made-form.ts";

const text = PDFString.of;
type Change = (making: Making) => void;

/** What a sheet shows, by its blank and what its fields hold. Undefined if it is not explained. */
async function explained(
  blank: readonly Entries[],
  sheet: readonly Entries[],
  values: Readonly<Record<string, readonly string[]>>,
  change?: Change,
) {
  const [print, own] = [blankPrint(await madeForm(blank)), printOf(await madeForm(sheet, change))];
  if (print === undefined || own === undefined) throw new Error("no print");
  const fields = Object.entries(values).map(
    ([name, held]): FormField => ({ name, kind: "text", values: held }),
  );
  return explainedBy(own, fields, print);
}

const row: Entries = { FT: "Tx", T: text("row") };
const look = (content: string, entries?: Entries): Entries => ({ AP: { N: lookOf(content, entries) } });
const lobby = look(drawn("2 15 Td (LOBBY) Tj"));
const two = look(drawn("2 25 Td (MAIN  ) Tj 0 -10 Td (LOBBY) Tj"));

test("a sheet is explained by telling what each field shows, and where", async () => {
  const below: Entries = { FT: "Tx", T: text("notes"), F: 2, Rect: [10, 120, 160, 160] };
  const push: Entries = { FT: "Btn", Ff: 1 << 16, T: text("push") };
  const pages: Change = ({ page, set }) => set(page, { MediaBox: [5, 7, 300, 200] });
  const [blank, sheet] = [
    blankPrint(await madeForm([row, push, below], pages)),
    printOf(await madeForm([{ ...row, ...lobby }, push, below], pages)),
  ];
  if (blank === undefined || sheet === undefined) throw new Error("no print");
  expect(explainedBy(sheet, [{ name: "row", kind: "text", values: ["LOBBY"] }], blank)).toEqual([
    { field: "row", page: 1, box: [5, 13, 155, 53], shown: "LOBBY", hidden: false },
    { field: "notes", page: 1, box: [5, 113, 155, 153], hidden: true },
  ]);
});

test.each<[string, Change]>([
  ["says something else of its form", ({ form, set }) => set(form, { DA: text("/F 9 Tf") })],
  ["says something else of itself", ({ pdf, set }) => set(pdf.catalog, { Dests: {} })],
  ["says something else of its page", ({ page, set }) => set(page, { Rotate: 90 })],
  [
    "draws something else on its page",
    ({ pdf: { context }, page, set }) =>
      set(page, { Contents: context.register(context.stream("Q q", { Length: 3 })) }),
  ],
  ["has a field less", ({ page, set }) => set(page, { Annots: [] })],
  [
    "has a field more",
    ({ pdf: { context }, page, set }) =>
      set(page, {
        Annots: [1, 2].map(() =>
          context.obj({ Type: "Annot", Subtype: "Widget", Rect: [10, 20, 160, 60], ...row }),
        ),
      }),
  ],
  [
    "has a page more",
    ({ pdf, set }) =>
      set(pdf.addPage([9, 9]).node, {
        Contents: pdf.context.register(pdf.context.stream("q Q", { Length: 3 })),
        Annots: [],
      }),
  ],
])("a sheet is not explained that %s", async (_, change) => {
  expect(await explained([row], [row], { row: [""] })).toHaveLength(1);
  expect(await explained([row], [row], { row: [""] }, change)).toBeUndefined();
});

test("a sheet is not explained that has a page less", async () => {
  const two: Change = ({ pdf, set }) =>
    set(pdf.addPage([9, 9]).node, {
      Contents: pdf.context.register(pdf.context.stream("q Q", { Length: 3 })),
      Annots: [],
    });
  const [blank, sheet] = [blankPrint(await madeForm([row], two)), printOf(await madeForm([row]))];
  if (blank === undefined || sheet === undefined) throw new Error("no print");
  expect(explainedBy(sheet, [], blank)).toBeUndefined();
  expect(explainedBy(blank, [], blank)).toHaveLength(1);
});

test("a list of several lines says what its blank says, whatever that is", async () => {
  const lines: Entries = { FT: "Ch", T: text("list"), V: [text("A"), text("B")] };
  expect(await explained([lines], [lines], { list: ["A", "B"] })).toEqual([]);
});

test("a field is not explained of which the file says something else, or something that leads nowhere", async () => {
  expect(await explained([row], [{ ...row, TU: text("tip") }], {})).toBeUndefined();
  expect(await explained([row], [{ ...row, AP: PDFRef.of(9_999) }], {})).toBeUndefined();
});

describe("a text is explained", () => {
  test.each<[string, Entries, string[], string | undefined]>([
    ["in one line", lobby, ["LOBBY"], "LOBBY"],
    ["in one line, blanks around it aside", look(drawn("2 15 Td ( LOBBY ) Tj")), ["LOBBY  "], " LOBBY"],
    ["in several, word by word", two, ["MAIN LOBBY\n"], "MAIN\nLOBBY"],
    ["drawn as nothing", look(""), [""], ""],
    ["in several, whatever stands around its value", two, [" MAIN LOBBY"], "MAIN\nLOBBY"],
    ["not in other letters", lobby, ["LOBBV"], undefined],
    ["not with another gap in one line", look(drawn("2 15 Td (A  B) Tj")), ["A B"], undefined],
    ["not in other words", two, ["LOBBY MAIN"], undefined],
    ["not drawn as nothing", look(""), ["LOBBY"], undefined],
    ["not undrawn", {}, ["LOBBY"], undefined],
    ["not with two values", lobby, ["LOBBY", "LOBBY"], undefined],
    [
      "not drawn smaller than its field",
      look(drawn("2 15 Td (LOBBY) Tj"), { BBox: [0, 0, 140, 40] }),
      ["LOBBY"],
      undefined,
    ],
    [
      "not drawn lower than its field",
      look(drawn("2 15 Td (LOBBY) Tj"), { BBox: [0, 0, 150, 30] }),
      ["LOBBY"],
      undefined,
    ],
    ["not in curves", look("0 0 m 9 9 l S"), ["LOBBY"], undefined],
  ])("%s", async (_, drawing, values, shown) => {
    const box = [10, 20, 160, 60];
    expect(await explained([row], [{ ...row, ...drawing }], { row: values })).toEqual(
      shown === undefined ? undefined : [{ field: "row", page: 1, box, shown, hidden: false }],
    );
  });

  test("without a value and undrawn, whether or not its field is read", async () => {
    const empty = [{ field: "row", page: 1, box: [10, 20, 160, 60], hidden: false }];
    expect(await explained([row], [row], { row: [""] })).toEqual(empty);
    expect(await explained([row], [row], {})).toEqual(empty);
  });

  test("as its blank has it, however that is drawn", async () => {
    const curves = look("0 0 m 9 9 l S");
    const printed = { ...row, V: text("26c"), ...curves };
    expect(await explained([printed], [printed], { row: ["26c"] })).toMatchObject([{ shown: "26c" }]);
    expect(await explained([printed], [printed], { row: ["26d"] })).toBeUndefined();
    const other = look("9 9 m 0 0 l S");
    expect(await explained([printed], [{ ...printed, ...other }], { row: ["26c"] })).toBeUndefined();
  });
});

describe("a list is explained", () => {
  const Opt = [[text("OAT"), text("Oatmeal")] as never, text("CHK")];
  const list: Entries = { FT: "Ch", Ff: 1 << 17, T: text("list"), Opt };
  test.each<[string, string, string, string | undefined]>([
    ["by what it shows for its value", "OAT", "Oatmeal", "OAT"],
    ["not by the value for which it shows another word", "OAT", "OAT", undefined],
    ["by its value, if it shows that", "CHK", "CHK", "CHK"],
    ["by a value that it has not", "WHT", "WHT", "WHT"],
  ])("%s", async (_, value, words, shown) => {
    const sheet = { ...list, ...look(drawn(`2 15 Td (${words}) Tj`)) };
    const found = await explained([list], [sheet], { list: [value] });
    expect(found?.map((one) => one.shown)).toEqual(shown === undefined ? undefined : [shown]);
  });
  test("but no text that has the same choices", async () => {
    const typed: Entries = { FT: "Tx", T: text("list"), Opt };
    const sheet = { ...typed, ...look(drawn("2 15 Td (Oatmeal) Tj")) };
    expect(await explained([typed], [sheet], { list: ["OAT"] })).toBeUndefined();
  });
});

describe("a box is explained", () => {
  const box: Entries = { FT: "Btn", T: text("box"), AP: { N: { Off: 1, Yes: 2 } } };
  test.each<[string, Entries, string[], boolean]>([
    ["that is on", { AS: "Yes" }, ["Yes"], true],
    ["that is off", { AS: "Off" }, [], true],
    ["that is off and holds it", { AS: "Off" }, ["Off"], true],
    ["not where it looks off", { AS: "Off" }, ["Yes"], false],
    ["not where it looks on", { AS: "Yes" }, [], false],
    ["not in a state that it has not", { AS: "No" }, [], false],
    ["not in a state that is no name", { AS: text("Yes") }, ["Yes"], false],
    ["not in no state", {}, [], false],
    ["not drawn otherwise", { AS: "Yes", AP: { N: { Off: 1, Yes: 3 } } }, ["Yes"], false],
  ])("%s", async (_, entries, values, is) => {
    const found = await explained([{ ...box, AS: PDFName.of("Off") }], [{ ...box, ...entries }], {
      box: values,
    });
    const told = { field: "box", page: 1, box: [10, 20, 160, 60], hidden: false };
    expect(found).toEqual(is ? [told] : undefined);
  });
});
