import {
  PDFBool,
  type PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFRef,
  PDFString,
} from "pdf-lib";
import { describe, expect, test } from "vitest";
import { entriesInWords, inWords, presentIn } from "../../../src/reading/page/plain-object.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const { context } = await PDFDocument.create();
const obj = (value: unknown): PDFObject => context.obj(value as Entries);
const text = PDFString.of;
const stream = (content: string, entries: Entries = {}) => context.stream(content, entries);

describe("an object in words", () => {
  test.each<[string, PDFObject, string]>([
    ["a name", PDFName.of("Tx"), "/Tx"],
    ["a truth", PDFBool.True, "true"],
    ["a string", text("A"), '"A"'],
    ["a string in digits", PDFHexString.of("41"), '"A"'],
    ["a string that is empty", text(""), '""'],
    ["a number", obj(-12.5), "-12.5"],
    ["a number with many digits", obj(1.009), "1"],
    ["a number with other digits", obj(1.011), "1.02"],
    ["a list", obj([1, [2], "A"]), "[1 [2] /A]"],
    ["entries, by their names", obj({ B: 2, A: text("x") }), '/A "x"\n/B 2'],
    ["entries within entries", obj([{ A: { B: 1 } }]), "[/A /B 1]"],
    ["what a reference leads to", obj([context.register(obj([7]))]), "[[7]]"],
  ])("%s", (_, object, words) => {
    expect(inWords(object)).toBe(words);
    // The second time it may be known already.
    expect(inWords(object)).toBe(words);
  });

  test("a stream by what it holds", () => {
    expect(inWords(stream("one"))).toMatch(/^[0-9a-f]{64}$/);
    expect(inWords(stream("one"))).toBe(inWords(stream("one")));
    expect(inWords(stream("one"))).not.toBe(inWords(stream("two")));
  });

  test.each<[string, (inner: PDFObject) => PDFObject]>([
    ["lists", (inner) => obj([inner])],
    ["dictionaries", (inner) => obj({ A: inner })],
  ])("%s within each other, eight deep", (_, around) => {
    const nested = (depth: number): PDFObject =>
      Array.from({ length: depth }).reduce<PDFObject>(around, obj(1));
    expect(inWords(nested(8))).toContain("1");
    expect(() => inWords(nested(9))).toThrow("no plain object");
  });

  test("nothing of what leads nowhere, or never ends", () => {
    expect(() => inWords(undefined)).toThrow("no plain object");
    expect(() => inWords(obj([PDFRef.of(9_999)]))).toThrow("no plain object");
    const endless = Array.from({ length: 2_001 }, () => obj({}));
    expect(() => inWords(stream("", { Endless: endless }))).toThrow("an endless stream");
  });
});

test("entries may be left out", () => {
  const dict = context.obj({ B: 2, A: 1, C: 3 });
  expect(entriesInWords(dict, new Set(["/B"]))).toBe("/A 1\n/C 3");
  expect(entriesInWords(dict, new Set(["B"]))).toBe("/A 1\n/B 2\n/C 3");
  const nested = (depth: number): PDFDict =>
    Array.from({ length: depth }).reduce<PDFDict>((inner) => context.obj({ A: inner }), dict);
  expect(entriesInWords(nested(7), new Set())).toContain("/B 2");
  expect(() => entriesInWords(nested(8), new Set())).toThrow("no plain object");
});

test("an entry is there, is not, or leads nowhere", () => {
  const dict = context.obj({ A: context.register(obj(7)), B: PDFRef.of(9_999) });
  expect(String(presentIn(dict, "A"))).toBe("7");
  expect(presentIn(dict, "C")).toBeUndefined();
  expect(() => presentIn(dict, "B")).toThrow("an entry leads nowhere");
});
