import { PDFBool, type PDFDocument, PDFName, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import { blankForm } from "../../../src/reading/page/blank-form.ts";
import { otherDrawings } from "../../../src/reading/page/own-drawings.ts";
import { dictsIn } from "../../../src/reading/pdf/pdf-value.ts";
import { firstPages } from "../../../src/reading/pdf/walked-pages.ts";
import { formOf } from "../../../src/reading/pdf/walked-pdf.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { ourOutline } from "../../make/our-marks.ts";
import { glyphs } from "./drawn.ts";
import { drawn, lookOf, type Making, madeForm } from "./made-form.ts";

const text = PDFString.of;
const fields: readonly Entries[] = [
  { FT: "Tx", T: text("row"), DA: text("/Helv 10 Tf"), F: 4 },
  { FT: "Btn", T: text("box"), Rect: [10, 120, 30, 140], F: 4 },
];
const view: Box = [5, 7, 300, 200];
const word = (letters: string): string => drawn(`2 15 Td (${letters}) Tj`);

/** How a form is drawn. */
interface Drawn {
  /** The row's own drawing. */
  readonly row?: string;
  readonly box?: "Yes" | "Off";
  readonly change?: (making: Making) => void;
}

/** A form with a row and a box, of which the row may be undrawn. Viewers are to draw it anew. */
function made({ row, box = "Off", change }: Drawn): Promise<PDFDocument> {
  return madeForm(fields, (making) => {
    const { pdf, page, form, set } = making;
    const look = (content: string, side = 40) =>
      pdf.context.register(
        lookOf(content, { Type: "XObject", BBox: [0, 0, side === 40 ? 150 : side, side] }),
      );
    const [first, second] = dictsIn(page, "Annots");
    if (first === undefined || second === undefined) throw new Error("no fields");
    if (row !== undefined) set(first, { AP: { N: look(row) } });
    set(second, { AS: box, AP: { N: { Yes: look("5 5 10 10 re f", 20), Off: look("", 20) } } });
    form.set(PDFName.of("NeedAppearances"), PDFBool.True);
    set(page, { MediaBox: [...view] });
    change?.(making);
  });
}
const blank = await blankForm(await (await made({})).save({ updateFieldAppearances: false }));

/** What is found of a form whose row holds LOBBY, and whose box is off. */
async function found(drawing: Drawn, by = 0, page = 1) {
  const pdf = await made(drawing);
  const widgets = [
    { field: "row", page, box: [5 + by, 13, 155 + by, 53] as const, hidden: false },
    { field: "box", page, box: [5 + by, 113, 25 + by, 133] as const, hidden: false },
  ];
  const facts = { fields: [{ name: "row", kind: "text" as const, values: ["LOBBY"] }], widgets };
  const sheet = { facts, pages: [{ view, annotations: [] }], pageCount: 1, walked: pdf, redrawn: true };
  const differences = await otherDrawings(sheet, blank, firstPages(pdf, 9), glyphs);
  // The file is as before.
  expect(formOf(pdf.catalog)?.get(PDFName.of("NeedAppearances"))).toBe(PDFBool.True);
  // ISO/IEC 15948 §11.2.2: width and height stand in the first chunk.
  const sizeOf = (png: Uint8Array) => [16, 20].map((at) => Buffer.from(png).readUInt32BE(at));
  return differences?.map(({ picture, ...one }) => ({ ...one, size: picture && sizeOf(picture) }));
}
const differs = { what: "field", page: 1, field: "row", box: [5, 13, 155, 53], size: [167, 64] };

test.each<[string, Drawn, object[]]>([
  ["shows what it holds", { row: word("LOBBY") }, []],
  ["shows other words", { row: word("EXIT") }, [differs]],
  ["shows nothing", { row: drawn("") }, []],
  ["is not there", {}, []],
  ["is a box's", { row: word("LOBBY"), box: "Yes" }, []],
])("a drawing of a field's own that %s", async (_, drawing, differences) => {
  expect(await found(drawing)).toEqual(differences);
});

test("a mark of ours over a drawing is none of it", async () => {
  const marked: Drawn["change"] = ({ pdf: { context }, page, set }) => {
    const kept = dictsIn(page, "Annots").map((one) => context.getObjectRef(one));
    set(page, { Annots: [...kept.flatMap((one) => one ?? []), ourOutline(context, 8, 18, 162, 62)] });
  };
  expect(await found({ row: word("LOBBY"), change: marked })).toEqual([]);
  expect(await found({ row: word("EXIT"), change: marked })).toEqual([differs]);
});

test("a form that lies elsewhere on its page is compared there", async () => {
  const moved: Drawn["change"] = ({ page, set }) => {
    for (const widget of dictsIn(page, "Annots")) {
      const [left = 0, bottom = 0, right = 0, top = 0] = String(widget.get(PDFName.of("Rect")))
        .split(/[^\d.]+/)
        .filter(Boolean)
        .map(Number);
      set(widget, { Rect: [left + 20, bottom, right + 20, top] });
    }
  };
  expect(await found({ row: word("LOBBY"), change: moved }, 20)).toEqual([]);
  expect(await found({ row: word("EXIT"), change: moved }, 20)).toEqual([
    { ...differs, box: [25, 13, 175, 53] },
  ]);
});

test("a page that is not there has no drawings", async () => {
  expect(await found({ row: word("EXIT") }, 0, 2)).toEqual([]);
});
