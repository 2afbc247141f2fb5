import { PDFDocument, PDFRef } from "pdf-lib";
import { expect, test } from "vitest";
import { shownChoice } from "../../../src/reading/pdf/shown-choice.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const plain = { Type: "Font", Subtype: "Type1", BaseFont: "Helvetica" };

/** What the drawing of a choice shows; undefined if nobody can tell. */
async function shown(content: string, fonts: Entries = { F: plain }, more: Entries = {}) {
  const { context, ...pdf } = await documentWith();
  const look = context.register(context.stream(content, { Resources: { Font: fonts }, ...more }));
  return pdf.shownBy({ AP: { N: look } });
}

async function documentWith() {
  const pdf = await PDFDocument.create();
  const { context } = pdf;
  const shownBy = (widget: Entries): string | undefined => {
    const { objectNumber } = context.register(context.obj({ Subtype: "Widget", ...widget }));
    return shownChoice(pdf, `${objectNumber}R`);
  };
  return { pdf, context, shownBy };
}

// ISO 32000-1:2008 §9.4.3: the operators that show text
test.each([
  ["a string", "/Tx BMC BT /F 9 Tf (OAT) Tj ET EMC", "OAT"],
  ["a string in hexadecimal", "/F 9 Tf <4F4154> Tj", "OAT"],
  ["two strings", "/F 9 Tf (O) Tj (AT) Tj", "O AT"],
  ["pieces set apart", "/F 9 Tf [(O) -20 (AT)] TJ", "O AT"],
  ["a name among its pieces", "/F 9 Tf [(O) /X (AT)] TJ", "O AT"],
  ["a new line", "/F 9 Tf (OAT) '", "OAT"],
  ["a new line with its own gaps", '/F 9 Tf 1 2 (OAT) "', "OAT"],
  ["a name that is no text", "/F 9 Tf /NO gs (OAT) Tj", "OAT"],
  ["words for those who cannot see it", "/F 9 Tf /Span <</ActualText (CHK)>> BDC (OAT) Tj EMC", "OAT"],
  ["no text", "0 0 9 9 re f", ""],
  ["a text of 65,536 bytes", `(${"x".repeat(65_531)}) Tj`, "x".repeat(65_531)],
  ["more than that", `(${"x".repeat(65_532)}) Tj`, undefined],
])("a drawing with %s", async (_, content, text) => {
  expect(await shown(content)).toBe(text);
});

// ISO 32000-1:2008 §9.6.6, §9.7, §9.10.3
test.each<[string, Entries, string | undefined]>([
  ["a font of Latin letters", { F: { ...plain, Encoding: "WinAnsiEncoding" } }, "OAT"],
  ["an encoding of its own", { F: { ...plain, Encoding: { Differences: [79, "A"] } } }, undefined],
  ["a map to Unicode", { F: { ...plain, ToUnicode: "Identity-H" } }, undefined],
  ["a composite font", { F: { ...plain, Subtype: "Type0" } }, undefined],
  ["a font that is not there", { G: plain }, undefined],
])("a drawing in %s", async (_, fonts, text) => {
  expect(await shown("/F 9 Tf (OAT) Tj", fonts)).toBe(text);
});

test("one font with codes of its own is enough to make a drawing say nothing", async () => {
  const fonts = { F: plain, G: { ...plain, Subtype: "Type0" } };
  expect(await shown("/F 9 Tf (O) Tj /G 9 Tf (AT) Tj", fonts)).toBeUndefined();
});

test("a drawing that cannot be decoded, and one that is not there, say nothing", async () => {
  expect(await shown("(OAT) Tj", {}, { Filter: "Unknown" })).toBeUndefined();
  const { pdf, context, shownBy } = await documentWith();
  const look = context.register(context.stream("(OAT) Tj"));
  expect(shownBy({ AP: { N: look } })).toBe("OAT");
  expect(shownBy({})).toBeUndefined();
  expect(shownBy({ AP: look })).toBeUndefined();
  expect(shownBy({ AP: { D: look } })).toBeUndefined();
  expect(shownBy({ AP: { N: { Off: look } } })).toBeUndefined();
  // pdf.js gives names of its own to widgets that are no objects of their own.
  for (const id of ["pdfjs_internal_id_1", `x${look.objectNumber}R`, "9999R", `${look.objectNumber}R`])
    expect(shownChoice(pdf, id)).toBeUndefined();
});

test("a widget is found by its number and its generation", async () => {
  const { pdf, context } = await documentWith();
  const look = context.register(context.stream("(OAT) Tj"));
  context.assign(PDFRef.of(12, 3), context.obj({ AP: { N: look } }));
  expect(["12R3", "12R", "12R4", "123R"].map((id) => shownChoice(pdf, id))).toEqual([
    "OAT",
    undefined,
    undefined,
    undefined,
  ]);
});
