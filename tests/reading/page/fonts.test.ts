import { PDFDocument, type PDFRawStream } from "pdf-lib";
import { expect, test } from "vitest";
import { guessedFonts, guessedIn, guessedOn } from "../../../src/reading/page/fonts.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const { context } = await PDFDocument.create();
const file = context.register(context.stream("font"));
const fonts = (entries: Entries) => guessedFonts(context.obj({ Font: entries }));
const odd: Entries = { Subtype: "TrueType", BaseFont: "Klingon" };

// Families and signs are common practice, no source.
test.each<[string, Entries, string?]>([
  ["one that every viewer has", { BaseFont: "Helvetica-Bold" }],
  ["one that office programs have, in part", { BaseFont: "ABCDEF+Noto Sans,Bold" }],
  ["one that nobody has", odd, "klingon"],
  ["one that nobody has, in part", { BaseFont: "ABCDEF+Comic Sans_MS-Bold" }, "comicsansmsbold"],
  ["a name before it that is no part's", { BaseFont: "ABCDE+Arial" }, "abcde+arial"],
  ["one of signs, by a family that viewers have", { BaseFont: "NotoSansSymbols" }, "notosanssymbols"],
  ["one that ends like one that viewers have", { BaseFont: "MyHelvetica" }, "myhelvetica"],
  ["one without a name", {}, ""],
  ["one drawn in the file", { Subtype: "Type3" }],
  ["one whose file is there", { ...odd, FontDescriptor: { FontFile2: file } }],
  ["one whose file is there, of another kind", { ...odd, FontDescriptor: { FontFile3: file } }],
  ["one with such letters within its name", { BaseFont: "Klingon ABCDEF+X" }, "klingonabcdef+x"],
  ["one whose file is a mere word", { ...odd, FontDescriptor: { FontFile: "x" } }, "klingon"],
  [
    "a composite one whose file is there",
    { ...odd, DescendantFonts: [context.obj({ FontDescriptor: { FontFile: file } })] },
  ],
  [
    "a composite one whose file is not there",
    { ...odd, DescendantFonts: [context.obj({ FontDescriptor: {} })] },
    "klingon",
  ],
])("a viewer does not guess at a font, or does: %s", (_, font, family) => {
  expect([...fonts({ F: font })]).toEqual(family === undefined ? [] : [["F", family]]);
});

test("what is no font is none", () => {
  expect([...fonts({ F: 7 })]).toEqual([]);
  expect([...guessedFonts(context.obj({ Font: 7 }))]).toEqual([]);
  expect([...guessedFonts(undefined)]).toEqual([]);
});

const drawing = (content: string, resources?: Entries, more: Entries = {}): PDFRawStream =>
  context.stream(content, { ...(resources === undefined ? {} : { Resources: resources }), ...more });
const oddFonts: Entries = { Font: { F: odd, G: { BaseFont: "Arial" }, H: { BaseFont: "Elvish" } } };

test("only fonts in which something is written count, as often as they are taken up", () => {
  expect(guessedIn(drawing("/F 9 Tf (A) Tj /G 9 Tf (B) Tj /F 9 gs", oddFonts))).toEqual(["klingon"]);
  expect(guessedIn(drawing("(A) Tj", oddFonts))).toEqual([]);
  expect(guessedIn(drawing("/F 9 Tf"))).toEqual([]);
  expect(guessedIn(drawing("/F 9 Tf", { Font: { F: odd } }))).toEqual(["klingon"]);
});

test("if a drawing cannot be looked into, all of its fonts count", () => {
  expect(guessedIn(drawing("x", oddFonts, { Filter: "Unknown" }))).toEqual(["klingon", "elvish"]);
  const long = (bytes: number) => guessedIn(drawing(" ".repeat(bytes), oddFonts)).length;
  expect([long(400_000), long(400_001)]).toEqual([0, 2]);
});

/** A drawing with so many around it. */
const nested = (depth: number): PDFRawStream => {
  let inner = drawing("/F 9 Tf", oddFonts);
  for (let level = 0; level < depth; level++)
    inner = drawing("", { XObject: { X: context.register(inner), Y: 7 } });
  return inner;
};

test("drawings within drawings are looked into, five deep", () => {
  expect([nested(5), nested(6)].map((one) => guessedIn(one).length)).toEqual([1, 0]);
});

test("a page counts as a drawing does, and one without resources has none", () => {
  const page = (resources: Entries | undefined) => ({
    dict: context.obj({ Contents: context.register(context.stream("/H 9 Tf")) }),
    resources: resources && context.obj(resources),
  });
  const inner = { XObject: { X: context.register(drawing("/F 9 Tf", oddFonts)) } };
  expect(guessedOn(page({ ...oddFonts, ...inner }))).toEqual(["klingon", "elvish"]);
  expect(guessedOn(page(undefined))).toEqual([]);
  const within = (depth: number) => guessedOn(page({ XObject: { X: context.register(nested(depth)) } }));
  expect([within(4), within(5)]).toEqual([["klingon"], []]);
});
