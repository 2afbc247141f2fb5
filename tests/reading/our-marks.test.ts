import { PDFDocument, PDFName, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { digestOf, isOurList, listPrefix } from "../../src/reading/our-marks.ts";
import { contentOfPage, type WalkedPage } from "../../src/reading/pdf/walked-pages.ts";
import type { Entries } from "../make/odd-pdf.ts";

const { context } = await PDFDocument.create();
const text = (words: string): PDFString => PDFString.of(words);
const font = { Type: "Font", Subtype: "Type1", BaseFont: "Helvetica" };
const fonts: Entries = { Plain: font, Bold: { ...font, BaseFont: "Helvetica-Bold" } };
const words = "BT /Plain 9 Tf 20 700 Td (1. Row 2 has 11 characters.) Tj ET";

interface Other {
  readonly link?: Entries;
  /** More annotations on the page. */
  readonly more?: readonly Entries[];
  readonly content?: string;
  readonly resources?: Entries | "none";
}

/** A page of the list at the end of a marked copy, or one that is made to look like it. */
function page({
  link = {},
  more = [],
  content = words,
  resources = { Font: fonts },
}: Other = {}): WalkedPage {
  const of = (drawn: string, annots: readonly Entries[]): WalkedPage => ({
    dict: context.obj({
      Contents: context.register(context.stream(drawn)),
      Annots: annots.map((one) => context.obj(one)),
    }),
    resources: resources === "none" ? undefined : context.obj(resources),
  });
  const name = text(`${listPrefix}${digestOf(of(words, []))}`);
  return of(content, [
    { Subtype: "Link", NM: name, Border: [0, 0, 0], Rect: [0, 0, 9, 9], ...link },
    ...more,
  ]);
}

test.each<[string, Other]>([
  ["as it was drawn", {}],
  ["packed otherwise", { content: words.replace("/Plain 9 Tf", "/Plain\n9.0  Tf %x\n") }],
  ["with numbers rounded otherwise", { content: words.replace("700", "700.004") }],
  ["with a window that says nothing", { link: { Popup: { Rect: [0, 0, 9, 9] } } }],
])("a page of our list is ours %s", (_, other) => {
  expect(isOurList(page(other))).toBe(true);
});

const script = { S: "JavaScript" };
test.each<[string, Other]>([
  ["with another name", { link: { NM: text("burin-mark 1") } }],
  ["with no name", { link: { NM: text("") } }],
  ["with the digest of another page", { link: { NM: text(`${listPrefix}0123`) } }],
  ["with a digit more in its name", { link: { NM: text(`${listPrefix}${digestOf(page())}0`) } }],
  ["with a comment instead of its link", { link: { Subtype: "Text" } }],
  ["with a look", { link: { AP: {} } }],
  ["with words on its link", { link: { Contents: text("EXIT") } }],
  ["with a style of its border", { link: { BS: {} } }],
  ["with a border", { link: { Border: [0, 0, 1] } }],
  ["with a round border", { link: { Border: [1, 0, 0] } }],
  ["with a border of words", { link: { Border: ["A"] } }],
  ["with formatted words", { link: { RC: text("EXIT") } }],
  ["with an author", { link: { T: text("Ines") } }],
  ["with a subject", { link: { Subj: text("EXIT") } }],
  ["with a program", { link: { A: script } }],
  ["with a program under the pointer", { link: { AA: { E: script } } }],
  ["with an older link", { link: { PA: script } }],
  ["on a layer", { link: { OC: {} } }],
  ["as an answer", { link: { IRT: {} } }],
  ["with a window that says something", { link: { Popup: { Contents: text("EXIT") } } }],
  ["with a window that looks like something", { link: { Popup: { AP: {} } } }],
  ["with a second link", { more: [{ Subtype: "Link", Border: [0, 0, 0] }] }],
  ["with other words", { content: words.replace("11", "12") }],
  ["with a number moved", { content: words.replace("700", "700.02") }],
  ["with more words", { content: `${words} BT (EXIT) Tj ET` }],
  ["with more than 200,000 bytes", { content: `${words}${" ".repeat(200_000)}` }],
  ["without resources", { resources: "none" }],
  ["without one of its fonts", { resources: { Font: { Plain: font } } }],
  ["with a font of a name alone", { resources: { Font: { ...fonts, Bold: 7 as never } } }],
  ["without fonts", { resources: {} }],
  ["with another font", { resources: { Font: { ...fonts, Bold: { ...font, BaseFont: "Symbol" } } } }],
  [
    "with a font of a longer name",
    { resources: { Font: { ...fonts, Bold: { ...font, BaseFont: "Helvetica-BoldX" } } } },
  ],
  [
    "with a font of a name that ends so",
    { resources: { Font: { ...fonts, Bold: { ...font, BaseFont: "XHelvetica" } } } },
  ],
  [
    "with a font of another kind",
    { resources: { Font: { ...fonts, Bold: { ...font, Subtype: "TrueType" } } } },
  ],
  ["with a font of its own", { resources: { Font: { ...fonts, Bold: { ...font, FontDescriptor: {} } } } }],
  [
    "with other letters",
    { resources: { Font: { ...fonts, Bold: { ...font, Encoding: { Differences: [65, "B"] } } } } },
  ],
  ["with letters that mean others", { resources: { Font: { ...fonts, Bold: { ...font, ToUnicode: {} } } } }],
  ["with a drawing at hand", { resources: { Font: fonts, XObject: { X: {} } } }],
])("a page like that of our list is none of ours %s", (_, other) => {
  expect(isOurList(page(other))).toBe(false);
});

test("a page without annotations is none of ours", () => {
  const { dict, resources } = page();
  const bare = { dict: dict.clone(), resources };
  bare.dict.delete(PDFName.of("Annots"));
  expect(contentOfPage(bare, 999)).toContain("Row 2");
  expect(isOurList(bare)).toBe(false);
});

test("a font with an encoding that every viewer has, and an empty list of drawings, change nothing", () => {
  const named = { ...font, Encoding: "WinAnsiEncoding" };
  expect(isOurList(page({ resources: { Font: { ...fonts, Plain: named }, XObject: {} } }))).toBe(true);
});
