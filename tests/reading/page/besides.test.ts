import { PDFDocument, PDFName, type PDFPage, type PDFRef, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import type { FormField } from "../../../src/reading/form.ts";
import { besides } from "../../../src/reading/page/besides.ts";
import { heldByBlank } from "../../../src/reading/page/held.ts";
import { withRendered } from "../../../src/reading/page/pdfium.ts";
import { firstPages } from "../../../src/reading/pdf/walked-pages.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { addOurList, ourOutline } from "../../make/our-marks.ts";

interface Making {
  readonly pdf: PDFDocument;
  /** Puts an annotation on the first page. */
  readonly annotate: (entries: object) => PDFRef;
}

/** What is known of a file besides what it holds. */
interface Known {
  /** Its blank has the same. */
  readonly isBlank?: boolean;
  /** No reader has told what its pages show. */
  readonly isUnseen?: boolean;
  /** Pages that only one reader finds. */
  readonly more?: number;
}

/** What a file of a form with one page has besides it. The blank has a field "a" and nothing else. */
async function found(
  make: (making: Making) => void,
  fields: readonly FormField[] = [],
  { isBlank = false, isUnseen = false, more = 0 }: Known = {},
) {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([300, 400]);
  page.setMediaBox(10, 20, 300, 400);
  page.drawText("a form", { x: 50, y: 300 });
  const annotate: Making["annotate"] = (entries) => {
    const ref = pdf.context.register(
      pdf.context.obj({ Type: "Annot", Rect: [60, 70, 100, 90], ...entries } as Entries),
    );
    page.node.addAnnot(ref);
    return ref;
  };
  make({ pdf, annotate });
  const bytes = await pdf.save({ updateFieldAppearances: false });
  const sheet = {
    facts: { fields, widgets: [] },
    pages: isUnseen ? [] : [{ view: [10, 20, 310, 420] as const, annotations: [] }],
    pageCount: pdf.getPageCount(),
    walked: pdf,
    redrawn: false,
  };
  const held = isBlank
    ? heldByBlank(pdf, firstPages(pdf, 20))
    : { keys: new Set<string>(), widgets: new Map([["a", 1]]) };
  for (let n = 0; n < more; n++) pdf.addPage();
  const all = await withRendered(bytes, (rendered) =>
    besides(rendered, sheet, { pages: [], held }, firstPages(pdf, 20), new Set([1])),
  );
  return (all ?? []).map(({ picture, ...one }) => ({
    ...one,
    // ISO/IEC 15948 §11.2.2: width and height stand in the first chunk.
    ...(picture === undefined ? {} : { size: [16, 20].map((at) => Buffer.from(picture).readUInt32BE(at)) }),
  }));
}
const text = (words: string): PDFString => PDFString.of(words);
/** A mark on the first page, by the corner of what is seen of it. */
const laid = { what: "laid", page: 1, box: [50, 50, 90, 70], size: [100, 70] };

function annotateOn({ node, doc: { context } }: PDFPage, entries: Entries): void {
  node.addAnnot(context.register(context.obj(entries)));
}

test("a form alone has nothing besides", async () => {
  expect(await found(() => undefined)).toEqual([]);
});

test("a font at which viewers guess is told of the page that writes in it", async () => {
  const guessed = await found(({ pdf }) => {
    const { node } = pdf.getPage(0);
    node.setFontDictionary(PDFName.of("K"), pdf.context.register(pdf.context.obj({ BaseFont: "Klingon" })));
    node.addContentStream(pdf.context.register(pdf.context.stream("BT /K 9 Tf (A) Tj ET")));
  });
  expect(guessed).toEqual([{ what: "more", page: 1 }]);
});

describe("an annotation is told by what it says, with its picture", () => {
  test.each<[string, object, object | undefined]>([
    ["in plain words", { Subtype: "FreeText", Contents: text(" LOBBY ") }, { ...laid, text: "LOBBY" }],
    ["in a format", { Subtype: "FreeText", RC: text("<p>LOBBY</p>") }, { ...laid, text: "LOBBY" }],
    [
      "in its own words, whatever it belongs to",
      { Subtype: "FreeText", Contents: text("LOBBY"), Parent: { Contents: text("EAST") } },
      { ...laid, text: "LOBBY" },
    ],
    [
      "in 200 letters at most",
      { Subtype: "Text", Contents: text("x".repeat(201)) },
      { ...laid, text: "x".repeat(200) },
    ],
    ["in no words", { Subtype: "Square" }, laid],
    [
      "beyond the page",
      { Subtype: "Square", Rect: [-90, 0, -50, 9] },
      { what: "laid", page: 1, box: [-100, -20, -60, -11] },
    ],
    [
      "of no size",
      { Subtype: "Square", Rect: [60, 70, 60, 90] },
      { what: "laid", page: 1, box: [50, 50, 50, 70] },
    ],
    ["without a place", { Subtype: "Square", Rect: 7 }, { what: "laid", page: 1, box: [-10, -20, -10, -20] }],
    ["a link with a border", { Subtype: "Link", Border: [0, 0, 1] }, laid],
    ["a link of which nobody knows whether it has one", { Subtype: "Link" }, laid],
    ["a link without a border", { Subtype: "Link", Border: [0, 0, 0] }, undefined],
    ["a link whose style has none", { Subtype: "Link", Border: [0, 0, 1], BS: { W: 0 } }, undefined],
    ["a link whose style has one", { Subtype: "Link", Border: [0, 0, 0], BS: { W: 1 } }, laid],
    [
      "a link with words",
      { Subtype: "Link", Border: [0, 0, 0], Contents: text("x") },
      { ...laid, text: "x" },
    ],
    ["a link with a program", { Subtype: "Link", Border: [0, 0, 0], A: { S: "JavaScript" } }, laid],
    ["a link without a border that is drawn", { Subtype: "Link", Border: [0, 0, 0], AP: { N: 7 } }, laid],
    ["a window of nothing", { Subtype: "Popup" }, undefined],
    ["a window of nothing that is drawn", { Subtype: "Popup", AP: { N: 7 } }, laid],
    ["a mark without a border", { Subtype: "Square", Border: [0, 0, 0] }, laid],
  ])("%s", async (_, entries, told) => {
    expect(await found(({ annotate }) => void annotate(entries))).toEqual(told === undefined ? [] : [told]);
  });

  test("and the window of a comment with the comment, or by its words where that is on no page", async () => {
    const comment = { Subtype: "Text", Contents: text("LOBBY") };
    const both = await found(({ annotate }) => {
      annotate({ Subtype: "Popup", Parent: annotate(comment) });
    });
    expect(both).toEqual([{ ...laid, text: "LOBBY" }]);
    const alone = await found(({ pdf, annotate }) => {
      annotate({ Subtype: "Popup", Parent: pdf.context.register(pdf.context.obj(comment)) });
    });
    expect(alone).toEqual([{ ...laid, text: "LOBBY" }]);
  });

  test("up to eight of them, and one that is a stream without a place", async () => {
    const nine = await found(({ annotate }) => {
      for (let n = 1; n <= 9; n++) annotate({ Subtype: "Square", Contents: text(`${n}`) });
    });
    expect(nine.map((one) => one.text)).toEqual(["1", "2", "3", "4", "5", "6", "7", "8"]);
    const stream = await found(({ pdf }) => {
      pdf.getPage(0).node.addAnnot(pdf.context.register(pdf.context.stream("q")));
    });
    expect(stream).toEqual([{ what: "laid", page: 1, box: [-10, -20, -10, -20] }]);
  });
});

describe("a field that the form has not is told by what it holds", () => {
  const field = { Subtype: "Widget", FT: "Tx", T: text("b") };
  const read = (...values: string[]): FormField[] => [{ name: "b", kind: "text", values }];
  test.each<[string, object, FormField[], object | undefined]>([
    ["as it was read", { ...field, V: text("x") }, read("LOBBY", "EAST"), { ...laid, text: "LOBBY, EAST" }],
    ["as it stands there", { ...field, V: text("x") }, [], { ...laid, text: "x" }],
    ["as a button's words", { ...field, FT: "Btn", MK: { CA: text("Go") } }, [], { ...laid, text: "Go" }],
    ["as nothing", field, [], laid],
    ["as nothing, and hidden", { ...field, F: 2 }, [], undefined],
    ["as nothing, and not on a screen", { ...field, F: 32 }, [], undefined],
    ["as blanks, and hidden", { ...field, F: 2, V: text("  ") }, [], undefined],
    ["as nothing, and printed", { ...field, F: 4 }, [], laid],
    ["as nothing, without a size", { ...field, Rect: [60, 70, 60, 90] }, [], undefined],
    ["as something, and hidden", { ...field, F: 2, V: text("x") }, [], { ...laid, text: "x" }],
    [
      "as a program",
      { ...field, A: { S: "JavaScript" }, F: 2 },
      [],
      { ...laid, what: "program", field: "b" },
    ],
    [
      "as a program on leaving it",
      { ...field, AA: { X: { S: "JavaScript" } } },
      [],
      { ...laid, what: "program", field: "b" },
    ],
  ])("%s", async (_, entries, fields, told) => {
    expect(await found(({ annotate }) => void annotate(entries), fields)).toEqual(
      told === undefined ? [] : [told],
    );
  });

  test("and the form's own field by what the form's has not", async () => {
    const own = { ...field, T: text("a") };
    expect(await found(({ annotate }) => void annotate(own))).toEqual([]);
    expect(await found(({ annotate }) => void annotate({ ...own, TU: text("tip") }))).toEqual([
      { ...laid, field: "a", text: "tip" },
    ]);
    const twice = await found(({ annotate }) => {
      annotate(own);
      annotate(own);
    });
    expect(twice).toEqual([laid]);
  });
});

describe("a further page is told", () => {
  test.each<[string, (pdf: PDFDocument) => void, object[]]>([
    ["not where it is empty", (pdf) => pdf.addPage([300, 400]), []],
    [
      "with what is on it",
      (pdf) => pdf.addPage([300, 400]).drawRectangle({ x: 48, y: 96, width: 24, height: 24 }),
      [{ what: "page", page: 2, size: [64, 76] }],
    ],
    [
      "with the words that are laid over it",
      (pdf) => {
        const page = pdf.addPage([300, 200]);
        for (const words of ["ONE", "", "TWO"])
          annotateOn(page, { Subtype: "FreeText", Contents: text(words), Rect: [0, 0, 0, 0] });
      },
      [{ what: "page", page: 2, text: "ONE; TWO", size: [300, 200] }],
    ],
    [
      "where it is too large to be looked at",
      (pdf) => pdf.addPage([9, 2001]),
      [{ what: "page", page: 2, size: [9, 2000] }],
    ],
    ["not where it is large and empty", (pdf) => pdf.addPage([9, 2000]), []],
    [
      "where it is hardly one",
      (pdf) => pdf.addPage([99, 0.4]).drawRectangle({ x: 0, y: 0, width: 99, height: 1 }),
      [{ what: "page", page: 2, size: [99, 1] }],
    ],
    ["not where it is a list of ours", (pdf) => addOurList(pdf), []],
    [
      "not where its only annotation says nothing",
      (pdf) => annotateOn(pdf.addPage([300, 200]), { Subtype: "Link", Border: [0, 0, 0] }),
      [],
    ],
    [
      "where PDFium may not draw all of it",
      (pdf) => {
        const { node } = pdf.addPage([300, 200]);
        const image = { Type: "XObject", Subtype: "Image", Width: 50_001, Height: 1_000 };
        node.setXObject(PDFName.of("I"), pdf.context.register(pdf.context.stream("x", image)));
        node.addContentStream(pdf.context.register(pdf.context.stream("/I Do")));
      },
      [{ what: "page", page: 2, size: [300, 200] }],
    ],
  ])("%s", async (_, add, told) => {
    expect(await found(({ pdf }) => add(pdf))).toEqual(told);
  });

  test("one by one up to three, and then one word of the rest", async () => {
    const inked = (count: number) =>
      found(({ pdf }) => {
        for (let n = 1; n <= count; n++)
          pdf.addPage([99, 99]).drawRectangle({ x: 9, y: 9, width: 9, height: 9 });
      });
    expect((await inked(3)).map(({ page }) => page)).toEqual([2, 3, 4]);
    const all = await inked(5);
    expect(all.map(({ page }) => page)).toEqual([2, 3, 4, 5]);
    expect(all.at(-1)).toEqual({ what: "page", page: 5 });
  });
});

test("a page that only one reader finds is told", async () => {
  expect(await found(() => undefined, [], { more: 1 })).toEqual([{ what: "page", page: 2 }]);
});

test("a mark of ours is none", async () => {
  const outlined = await found(({ pdf }) => {
    pdf.getPage(0).node.addAnnot(ourOutline(pdf.context, 58, 68, 102, 92));
  });
  expect(outlined).toEqual([]);
});

test("a mark on a page of which nobody knows what it shows is told by the page's own corner", async () => {
  const square = (making: Making) => void making.annotate({ Subtype: "Square" });
  expect(await found(square, [], { isUnseen: true })).toEqual([
    { what: "laid", page: 1, box: [60, 70, 100, 90], size: [80, 60] },
  ]);
});

test("what the blank has too is not told", async () => {
  const all = ({ pdf, annotate }: Making): void => {
    pdf.catalog.set(PDFName.of("AF"), pdf.context.obj([1]));
    annotate({ Subtype: "Square" });
    annotate({ Subtype: "Widget", FT: "Tx", T: text("a"), TU: text("tip") });
  };
  expect((await found(all)).map(({ what }) => what)).toEqual(["laid", "laid", "file"]);
  expect(await found(all, [], { isBlank: true })).toEqual([]);
});

test("what is typed in a second form may be what the fields hold, line by line, without the blanks around it", async () => {
  const twin = ({ pdf: { catalog, context } }: Making): void => {
    const data = context.register(context.stream("<a>LOBBY</a><b>EAST</b>"));
    catalog.set(PDFName.of("AcroForm"), context.obj({ XFA: [text("datasets"), data] }));
  };
  const field = (value: string): FormField[] => [{ name: "a", kind: "text", values: [value] }];
  expect(await found(twin, field(" LOBBY \nEAST"))).toEqual([]);
  expect(await found(twin, field("LOBBY"))).toEqual([{ what: "twin", page: 0 }]);
});

test("what the file holds is told once, whatever how many pages have it", async () => {
  const files = await found(({ pdf }) => {
    pdf.catalog.set(PDFName.of("AF"), pdf.context.obj([1]));
    pdf.getPage(0).node.set(PDFName.of("AF"), pdf.context.obj([2]));
  });
  expect(files).toEqual([{ what: "file", page: 0 }]);
});
