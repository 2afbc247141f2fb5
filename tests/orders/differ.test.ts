import { expect, test } from "vitest";
import { type Odd, oddOnes, type Said, saidOfProject, usuallySaid } from "../../src/orders/differ.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice } from "../make/sample.ts";

/** Sheets that say this of their contact, in turn. */
function saying(...said: Said<"name" | "phone">[]): Sheet[] {
  return said.map((contact, i) => aloneDevice({ id: `1/${i + 1}`, contact }));
}
const contactOf = ({ contact }: Sheet): Said<"name" | "phone"> => contact;
const odd = (...said: Said<"name" | "phone">[]) =>
  oddOnes(saying(...said), contactOf).map(({ sheets, parts, typed, usual }: Odd<"name" | "phone">) => ({
    ids: sheets.map(({ id }) => id),
    parts,
    typed,
    usual,
  }));

const [ines, rosa] = [
  { name: "Ines Calloway", phone: "312-555-0117" },
  { name: "Rosa Imhoff", phone: "312-555-0117" },
];

test("sheets that agree with each other are odd together, and the parts that differ are told", () => {
  expect(odd(rosa, ines, ines, rosa, ines)).toEqual([
    { ids: ["1/1", "1/4"], parts: ["name"], typed: "Rosa Imhoff", usual: "Ines Calloway" },
  ]);
  expect(odd(ines, ines, { name: "Rosa Imhoff", phone: "312-555-0171" })).toEqual([
    {
      ids: ["1/3"],
      parts: ["name", "phone"],
      typed: "Rosa Imhoff, 312-555-0171",
      usual: "Ines Calloway, 312-555-0117",
    },
  ]);
});

test("of equal shares the one that came first is usual", () => {
  expect(odd(rosa, ines)).toMatchObject([{ ids: ["1/2"] }]);
  expect(usuallySaid(saying(rosa, ines), contactOf)).toEqual(rosa);
  expect(usuallySaid(saying(rosa, ines, ines), contactOf)).toEqual(ines);
});

test("a part that one side leaves empty is not compared", () => {
  expect(odd(ines, ines, { name: "Ines Calloway", phone: "" })).toEqual([]);
  expect(odd({ name: "Ines Calloway", phone: "" }, { name: "Ines Calloway" }, ines)).toEqual([]);
  expect(odd(ines, { name: "Rosa Imhoff", phone: " - " })).toMatchObject([{ parts: ["name"] }]);
});

test("an empty part counts as none, so that sheets with and without it are one share", () => {
  expect(usuallySaid(saying(ines, { name: "Rosa" }, { name: "ROSA", phone: "" }), contactOf)).toEqual({
    name: "Rosa",
  });
});

test("sheets that say nothing are no share of the order", () => {
  expect(odd({}, {}, {}, ines)).toEqual([]);
  expect(usuallySaid(saying({}, { name: "" }), contactOf)).toBeUndefined();
});

test("case, spacing and punctuation are no difference", () => {
  expect(odd(ines, ines, { name: "INES  CALLOWAY", phone: "(312) 555 0117" })).toEqual([]);
});

test("a placeholder says nothing of the project", () => {
  expect(saidOfProject(aloneDevice({ project: "TBD" }))).toEqual({});
  expect(saidOfProject(aloneDevice())).toEqual({ project: "Larkspur Library" });
});

test.each([
  ["Oak & Elm", "Oak and Elm", false],
  ["Quarry Street School", "Quarry St. School", false],
  ["The Larkspur Library", "Larkspur Library", false],
  ["Brightwire Electric, Inc.", "Brightwire Electric", false],
  ["60607-1234", "60607", false],
  ["Larkspur Library", "Larkspur Lib", true],
  ["Quarry Street School", "Quarry Road School", true],
  ["Thea Library", "a Library", true],
  ["Incline House", "House", true],
  ["60607", "60608", true],
  ["Oak", "Oak & Elm", true],
])("“%s” and “%s” differ: %s", (one, other, is) => {
  expect(odd({ name: one }, { name: other })).toHaveLength(is ? 1 : 0);
});

test.each([
  ["IL", "Illinois", false],
  ["N.Y.", "new york", false],
  ["QC", "Québec", false],
  ["FL", "Florida", false],
  ["IL", "IN", true],
  ["Virginia", "West Virginia", true],
])("the states “%s” and “%s” differ: %s", (one, other, is) => {
  const sheets = [one, other].map((state, i) => aloneDevice({ id: `1/${i + 1}`, billTo: { state } }));
  expect(oddOnes(sheets, ({ billTo }): Said<"state"> => billTo)).toHaveLength(is ? 1 : 0);
});

test("elsewhere than in an address a state's letters are letters", () => {
  expect(odd({ name: "ON" }, { name: "Ontario" })).toHaveLength(1);
});
