import { PDFBool, PDFDict, type PDFDocument, PDFName, PDFRef, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { type Print, printOf } from "../../../src/reading/page/print.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { addOurList, ourOutline } from "../../make/our-marks.ts";
import { type Making, madeForm } from "./made-form.ts";

const text = PDFString.of;
const printed = async (...form: Parameters<typeof madeForm>) => printOf(await madeForm(...form));

/** What is printed of a single widget. */
async function widgetOf(entries: Entries, change?: (making: Making) => void) {
  return (await printed([entries], change))?.pages[0]?.widgets[0];
}
const row: Entries = { FT: "Tx", T: text("row") };

test("a print is what the file, its form and its pages say, without what is filled in", async () => {
  const print = await printed([{ ...row, V: text("LOBBY"), MK: { BG: [1] } }], ({ page, set }) =>
    set(page, { Rotate: 0 }),
  );
  expect(print).toEqual({
    words: '\n/DA "/Helv 9 Tf"',
    pages: [
      {
        view: [0, 0, 300, 200],
        words: "/MediaBox [0 0 300 200]\n/Rotate 0",
        content: expect.stringMatching(/^[0-9a-f]{64}$/),
        widgets: [
          {
            words: '/FT /Tx\n/MK /BG [1]\n/Rect [10 20 160 60]\n/Subtype /Widget\n/T "row"',
            dict: expect.any(PDFDict),
            name: "row",
            kind: "text",
            box: [10, 20, 160, 60],
            hidden: false,
          },
        ],
      },
    ],
    views: [[0, 0, 300, 200]],
  } satisfies Print);
});

describe("of a widget are left out", () => {
  const other: Entries = { P: 7, M: text("now"), StructParent: 3 };
  test.each<[string, Entries, Entries, boolean]>([
    ["where it belongs and when it was saved", row, other, true],
    ["how a text is drawn", row, { AP: {}, AS: "Off" }, true],
    ["not its tip", row, { TU: text("tip") }, false],
    ["not what a text has of a choice", row, { I: [0] }, false],
    ["which choices are chosen and stand on top", { FT: "Ch", Ff: 1 << 17 }, { I: [0], TI: 1, AP: {} }, true],
    ["not how a button is drawn", { FT: "Btn", Ff: 1 << 16 }, { AP: {} }, false],
    ["where a button belongs", { FT: "Btn", Ff: 1 << 16 }, other, true],
  ])("%s: %#", async (_, entries, more, same) => {
    const [one, both] = [await widgetOf(entries), await widgetOf({ ...entries, ...more })];
    expect(one?.words === both?.words).toBe(same);
  });
});

test.each<[string, Entries, string]>([
  ["a text", { FT: "Tx" }, "text"],
  ["a list that drops down", { FT: "Ch", Ff: 1 << 17 }, "choice"],
  ["a list of several lines", { FT: "Ch" }, "other"],
  ["a list with another flag", { FT: "Ch", Ff: 1 << 16 }, "other"],
  ["a box", { FT: "Btn" }, "tick"],
  ["a round button", { FT: "Btn", Ff: 1 << 15 }, "tick"],
  ["a button that is pushed", { FT: "Btn", Ff: 1 << 16 }, "other"],
  ["a field with flags of words", { FT: "Btn", Ff: "A" }, "tick"],
  ["a signature", { FT: "Sig" }, "other"],
  ["a field of no kind", {}, "other"],
])("%s is told by its kind", async (_, entries, kind) => {
  expect((await widgetOf(entries))?.kind).toBe(kind);
});

test("a widget has from above what it has not itself, and says what those above say", async () => {
  const child = await widgetOf({ T: text("b") }, ({ pdf, page, set }) => {
    const widget = pdf.context.lookup(page.lookup(PDFName.of("Annots"), Object as never).get(0), PDFDict);
    const top = { T: text("a"), FT: "Ch", Ff: 1 << 17, V: text("x"), Kids: [7], TU: text("tip") };
    set(widget, { Parent: pdf.context.register(pdf.context.obj(top)) });
  });
  expect(child).toMatchObject({
    name: "a.b",
    kind: "choice",
    words: ['/Rect [10 20 160 60]\n/Subtype /Widget\n/T "b"', '/FT /Ch\n/Ff 131072\n/T "a"\n/TU "tip"'].join(
      "\nabove\n",
    ),
  });
});

test.each<[string, Entries, boolean]>([
  ["as it is", {}, false],
  ["with the flag for it", { F: 1 << 1 }, true],
  ["that does not show on a screen", { F: 1 << 5 }, true],
  ["that is printed and locked", { F: (1 << 2) | (1 << 7) }, false],
  ["of no width", { Rect: [10, 20, 10, 60] }, true],
  ["with a flag that is none", { F: "A" }, false],
])("a field %s is hidden: %s", async (_, entries, hidden) => {
  expect((await widgetOf({ ...row, ...entries }))?.hidden).toBe(hidden);
});

describe("there is a print of a file", () => {
  const none = { Type: "Annot", Subtype: "Text", Rect: [0, 0, 9, 9] };
  const packed =
    (entries: Entries, content = "q Q") =>
    ({ pdf: { context }, page, set }: Making): void =>
      set(page, {
        Contents: context.register(context.stream(content, { Length: content.length, ...entries })),
      });
  test.each<[string, (making: Making) => void, boolean]>([
    ["as it is", () => undefined, true],
    ["without a form", ({ pdf }) => pdf.catalog.delete(PDFName.of("AcroForm")), false],
    [
      "whose viewer draws the fields",
      ({ form }) => form.set(PDFName.of("NeedAppearances"), PDFBool.True),
      false,
    ],
    ["whose viewer need not", ({ form }) => form.set(PDFName.of("NeedAppearances"), PDFBool.False), true],
    ["with an entry that leads nowhere", ({ form, set }) => set(form, { DR: PDFRef.of(9_999) }), false],
    ["of twenty pages", ({ pdf }) => twenty(pdf, 19), true],
    ["of more", ({ pdf }) => twenty(pdf, 20), false],
    ["turned from above", ({ pdf, set }) => set(pagesOf(pdf), { Rotate: 90 }), false],
    ["below no list of pages", ({ page, set }) => set(page, { Parent: 7 }), false],
    [
      "turned from far above",
      ({ pdf, set }) => set(pagesOf(pdf), { Parent: pdf.context.register(pdf.context.obj({ Rotate: 90 })) }),
      false,
    ],
    ["whose page is cropped to itself", ({ page, set }) => set(page, { CropBox: [300, 200, 0, 0] }), true],
    ["whose page is cropped", ({ page, set }) => set(page, { CropBox: [0, 0, 300, 199] }), false],
    ["whose page has no box", ({ page }) => page.delete(PDFName.of("MediaBox")), false],
    ["whose page has no content", ({ page, set }) => set(page, { Contents: 7 }), false],
    ["whose page is packed", packed({ Filter: "FlateDecode" }, ""), true],
    ["whose page is packed in a list of ways", packed({ Filter: ["FlateDecode"] }, ""), true],
    ["whose page is packed otherwise", packed({ Filter: "LZWDecode" }, ""), false],
    ["whose page ends elsewhere than it says", packed({ Length: 4 }), false],
    ["whose page ends nobody knows where", packed({ Length: "A" }), false],
    ["whose page stands in another file", packed({ F: text("page.bin") }), false],
    ["whose page has as much as forms have", packed({}, " ".repeat(399_999)), true],
    ["whose page is endless", packed({}, " ".repeat(400_001)), false],
    [
      "with a comment",
      ({ pdf: { context }, page, set }) => set(page, { Annots: [context.obj(none)] }),
      false,
    ],
    ["with a number among its fields", ({ page, set }) => set(page, { Annots: [7] }), false],
    [
      "with a field without a place",
      ({ pdf: { context }, page, set }) => set(page, { Annots: [context.obj({ Subtype: "Widget" })] }),
      false,
    ],
  ])("%s: %s", async (_, change, is) => {
    expect((await printed([row], change)) !== undefined).toBe(is);
  });
});

const pagesOf = ({ catalog }: PDFDocument): PDFDict => catalog.lookup(PDFName.of("Pages"), PDFDict);

/** Adds so many pages with something on them. */
function twenty(pdf: PDFDocument, more: number): void {
  for (let n = 0; n < more; n++) {
    const page = pdf.addPage([9, 9]).node;
    page.set(PDFName.of("Contents"), page.context.register(page.context.stream("q", { Length: 1 })));
    page.set(PDFName.of("Annots"), page.context.obj([]));
  }
}

describe("a list of ours", () => {
  /** Puts a list behind the form, with something more. */
  const withList =
    (entries: Entries = {}) =>
    ({ pdf, set }: Making): void =>
      set(addOurList(pdf), entries);
  test.each<[string, Entries]>([
    ["as it is", {}],
    ["that is not turned", { Rotate: 0 }],
    ["with a place in the file's structure", { StructParents: 1, Tabs: "S" }],
  ])("%s is no page of the form, but may be seen", async (_, entries) => {
    const print = await printed([row], withList(entries));
    expect(print?.pages).toHaveLength(1);
    expect(print?.views).toEqual([
      [0, 0, 300, 200],
      [0, 0, 100, 90],
    ]);
  });

  test.each<[string, (making: Making) => void]>([
    ["that is turned", withList({ Rotate: 90 })],
    ["with a program", withList({ AA: {} })],
    [
      "with something from above",
      (making) => {
        withList()(making);
        making.set(pagesOf(making.pdf), { Rotate: 90 });
      },
    ],
  ])("%s leaves the file without a print", async (_, change) => {
    expect(await printed([row], change)).toBeUndefined();
  });
});

test("our marks are none of the fields of a page", async () => {
  const print = await printed([row], ({ pdf: { context }, page, set }) => {
    const widget = context.register(context.obj({ Subtype: "Widget", Rect: [10, 20, 160, 60], ...row }));
    set(page, { Annots: [ourOutline(context, 8, 18, 162, 62), widget] });
  });
  expect(print?.pages[0]?.widgets.map(({ name }) => name)).toEqual(["row"]);
});
