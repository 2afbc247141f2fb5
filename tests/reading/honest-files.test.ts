import { PDFDocument, PDFHexString, PDFName } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { openPdf } from "../../src/reading/pdf/open-pdf.ts";
import { form, formWith, rawPdf } from "../make/hostile/raw-pdf.ts";
import { oddForm } from "../make/odd-pdf.ts";
import { pdftkFlatten, qpdf } from "../make/odd-sheets/by-programs.ts";
import { byPdfLib, byQpdf } from "../make/odd-sheets/merged.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { hasProgram } from "../make/program.ts";
import { readBoth } from "../make/read-both.ts";
import { readPdf } from "../make/read-pdf.ts";

// Files that are right, and that programs in use have written so. Each was refused or asked about once.

const samples = await sampleSheets();
const theirs = samples.find(({ edition }) => edition.startsWith("marrowby"));
const ours = samples.find(({ edition }) => edition === "device-26c");
if (theirs === undefined || ours === undefined) throw new Error("no sheets");

describe("a stream of no bytes that names a filter", () => {
  test.skipIf(!hasProgram("pdftk") || !hasProgram("qpdf"))(
    "does not hide the pages of a sheet that pdftk flattened and qpdf packed",
    async () => {
      const bytes = await byQpdf(pdftkFlatten(ours.filled));
      expect(Buffer.from(qpdf(bytes, "--qdf")).length).toBeGreaterThan(0);
      const facts = await openPdf(bytes);
      expect(facts).toMatchObject({ kind: "pdf", pages: [{}] });
    },
  );

  test("is an empty page, and an empty value", async () => {
    const empty = { dict: "/Filter/FlateDecode", bytes: "" };
    expect(await openPdf(formWith({ 7: empty }))).toMatchObject({ pages: [{ text: "" }], recovered: false });
    const { other } = await readBoth(
      rawPdf({ ...form, 5: "<</FT/Tx/T(order)/V 8 0 R>>", 8: empty, 4: "<</Fields[5 0 R]>>" }),
    );
    expect(other).toMatchObject([{ name: "order", values: [""] }, {}]);
  });
});

describe("a name with a number sign in it", () => {
  // ISO 32000-1:2008 §7.3.5: "#23" stands for the sign itself, and what follows it then stands for itself.
  test.each([
    ["50#2325", "50#25"],
    ["Room#2341", "Room#41"],
    ["A#2fB", "A/B"],
    ["A#2FB", "A/B"],
    ["Plain", "Plain"],
  ])("/%s is %s to both readers", async (written, name) => {
    const look = "<</N<</" + written + " 8 0 R/Off 8 0 R>>>>";
    const bytes = rawPdf({
      ...form,
      4: "<</Fields[5 0 R]>>",
      3: "<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[5 0 R]/Contents 7 0 R>>",
      5: `<</Type/Annot/Subtype/Widget/FT/Btn/T(box)/Rect[20 20 90 40]/F 4/P 3 0 R/V/${written}/AS/${written}/AP ${look}>>`,
      8: { dict: "/Subtype/Form/BBox[0 0 9 9]", bytes: "" },
    });
    const { one, other } = await readBoth(bytes);
    expect([one, other]).toEqual([
      [{ name: "box", kind: "tick", values: [name] }],
      [{ name: "box", kind: "tick", values: [name] }],
    ]);
  });
});

test("a widget that bears the name of its field once more is a widget of that field", async () => {
  const bytes = await oddForm(({ widget, field, looks }) => [
    field({ FT: "Btn", Ff: 1 << 15, T: PDFHexString.fromText("standing"), V: "alone" }, [
      widget({ T: PDFHexString.fromText("standing"), AS: "alone", ...looks("alone", "Off") }),
      widget({ T: PDFHexString.fromText("standing"), AS: "Off", ...looks("in-plate", "Off") }),
    ]),
  ]);
  const { one, other } = await readBoth(bytes);
  expect([one, other]).toMatchObject([
    [{ name: "standing", values: ["alone"] }],
    [{ name: "standing", values: ["alone"] }],
  ]);
  expect(await openPdf(bytes)).toMatchObject({ widgets: [{ field: "standing" }, { field: "standing" }] });
});

test("fields that stand on the page and in no list are read like others", async () => {
  const { sheet } = await readPdf(await byPdfLib(ours.filled));
  expect(sheet).toEqual((await readPdf(ours.filled)).sheet);
});

describe("a label beside a small box", () => {
  /** The form with a word that ends so many points within the box. */
  const labelled = async (word: string, within: number): Promise<Uint8Array> => {
    const pdf = await PDFDocument.load(theirs.filled);
    const widget = pdf.getForm().getField("MS.One").acroField.getWidgets()[0];
    const { x = 0, y = 0 } = widget?.getRectangle() ?? {};
    const page = pdf.getPage(0);
    const { Font } = { Font: await pdf.embedFont("Helvetica") };
    page.drawText(word, { x: x + within - Font.widthOfTextAtSize(word, 9), y: y + 2, size: 9, font: Font });
    return pdf.save({ updateFieldAppearances: false });
  };
  const doubts = async (bytes: Uint8Array) => (await readPdf(bytes)).sheet?.doubts;

  test.each([3, 8, 11])("that runs %d points into it is no mark", async (points) => {
    expect(await doubts(await labelled("Single", points))).toEqual([]);
  });

  test("is one where it stands in the box", async () => {
    expect(await doubts(await labelled("X", 9))).toEqual([
      { what: "typed-over", place: "layout", text: "X" },
    ]);
    expect(await doubts(await labelled("YES YES", 24))).toMatchObject([{ what: "typed-over" }]);
  });
});

test("the name of a dictionary's key may be written with escapes", async () => {
  const facts = await openPdf(formWith({ 4: "<</F#69elds[5 0 R 6 0 R]>>" }));
  expect(facts).toMatchObject({ fields: [{ name: "order" }, { name: "mark" }] });
  expect(PDFName.of("F#69elds")).toBe(PDFName.of("Fields"));
});
