import { PDFDocument, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { formsBeside } from "../../../src/reading/page/xfa.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const { context } = await PDFDocument.create();
const part = (xml: string, entries: Entries = {}) =>
  context.register(context.stream(Buffer.from(xml), entries));
const beside = (XFA: unknown, ...values: string[]) =>
  formsBeside(context.obj({ XFA } as Entries), new Set(values));
/** What is typed in the data of such a form, as far as no field holds it. */
const typed = (xml: string, ...values: string[]) => beside([PDFString.of("datasets"), part(xml)], ...values);

test.each<[string, string[]]>([
  ["<data><a>LOBBY</a><b> EAST </b></data>", ["LOBBY", "EAST"]],
  ["<a>One\nTwo</a>", ["One", "Two"]],
  ["<a>1</a><b>0</b><c></c><d>10</d><e>2</e>", ["10", "2"]],
  ["<a>A &amp; B &lt;&gt;&quot;&apos;</a>", [`A & B <>"'`]],
  ["<a>&#65;&#x42;&#X43;&#xe9;é</a>", ["ABCéé"]],
  ["<a>&nbsp;&#1114112;&#9999999;</a>", ["&nbsp;&#1114112;&#9999999;"]],
  ["<a>&#x10ffff;&#x000041;&#0000065;</a>", ["\u{10ffff}AA"]],
  ["<a>&#x0000041;&#00000065;</a>", ["&#x0000041;&#00000065;"]],
])("%s says %j", (xml, texts) => {
  expect(typed(xml)).toEqual(texts);
});

test("what the fields hold is left out, and what is typed while the form is shown counts too", () => {
  expect(typed("<a>LOBBY</a><b>EAST</b>", "LOBBY")).toEqual(["EAST"]);
  expect(beside([PDFString.of("form"), part("<a>LOBBY</a>")])).toEqual(["LOBBY"]);
});

test("every other part has a key of its own", () => {
  const keys = beside([
    PDFString.of("template"),
    part("<a>LOBBY</a>"),
    PDFString.of("config"),
    part("<b/>"),
    PDFString.of("datasets"),
    7,
  ]);
  expect(new Set(keys).size).toBe(3);
  for (const key of keys) expect(key).toMatch(/^[0-9a-f]{64}$/);
  expect(beside(part("<a>LOBBY</a>"))).toEqual([expect.stringMatching(/^[0-9a-f]{64}$/)]);
  expect(beside([PDFString.of("template")])).toHaveLength(1);
});

test("data that cannot be read may say anything", () => {
  expect(beside([PDFString.of("datasets"), part("x", { Filter: "Unknown" })], "x")).toEqual([undefined]);
  const long = (bytes: number, more = "") => typed(`${"<a/>".repeat(bytes / 4 - 1)}<b>B${more}`);
  expect([long(4_000_000), long(4_000_000, "B")]).toEqual([["B"], [undefined]]);
});

test("a form without a second one has none beside it", () => {
  expect(formsBeside(undefined, new Set())).toEqual([]);
  expect(formsBeside(context.obj({}), new Set())).toEqual([]);
});
