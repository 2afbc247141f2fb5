import { PDFArray, PDFName, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { heldByBlank } from "../../../src/reading/page/held.ts";
import { firstPages } from "../../../src/reading/pdf/walked-pages.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { type Making, madeForm } from "./made-form.ts";

const text = PDFString.of;

/** What a blank form has besides its print. */
async function held(widgets: readonly Entries[], change?: (making: Making) => void) {
  const pdf = await madeForm(widgets, change);
  const { keys, widgets: counts } = heldByBlank(pdf, firstPages(pdf, 9));
  return { keys: [...keys], counts: [...counts] };
}
const row: Entries = { FT: "Tx", T: text("row") };

test("a plain form has nothing besides, and as many widgets of each field as it has", async () => {
  expect(await held([row, { FT: "Sig", T: text("sign") }, row, row])).toEqual({
    keys: [],
    counts: [
      ["row", 3],
      ["sign", 1],
    ],
  });
});

test("a form may have files, annotations, fonts at which viewers guess, and more at its fields", async () => {
  const { keys, counts } = await held(
    [{ ...row, TU: text("tip") }],
    ({ pdf: { catalog, context }, page, set }) => {
      set(catalog, { AF: [7] });
      const link = context.obj({ Type: "Annot", Subtype: "Link", Border: [0, 0, 1] });
      set(page, {
        Annots: [...page.lookup(PDFName.of("Annots"), PDFArray).asArray(), link, 7],
        Contents: context.register(context.stream("/F 9 Tf")),
        Resources: { Font: { F: { BaseFont: "Klingon" } } },
      });
    },
  );
  expect(keys).toEqual([
    expect.stringMatching(/^file /),
    "font klingon",
    "laid row tip tip",
    expect.stringMatching(/^annotation /),
  ]);
  expect(counts).toEqual([["row", 1]]);
});
