import { PDFDocument, PDFHexString, PDFName } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { type SampleSheet, sampleSheets } from "../../make/odd-sheets/sheets.ts";
import { readPdf } from "../../make/read-pdf.ts";

const samples = (await sampleSheets()).filter(({ edition }) => /^(device|plate)-26c$/.test(edition));

/** A sheet whose notes a program has drawn with each line right below the one before, and a stroke so far below the upper edge. */
async function withNotes(
  { filled }: SampleSheet,
  notes: readonly string[],
  drawn: readonly string[],
  stroke?: number,
): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(filled, { updateMetadata: false });
  const { context } = pdf;
  const { dict } = pdf.getForm().getTextField("notes").acroField;
  const { width, height } =
    pdf.getForm().getTextField("notes").acroField.getWidgets()[0]?.getRectangle() ?? {};
  if (width === undefined || height === undefined) throw new Error("no notes");
  const font = { Type: "Font", Subtype: "Type1", BaseFont: "Helvetica", Encoding: "WinAnsiEncoding" };
  // Helvetica's letters up to U+00FF have the codes of Latin-1.
  const hex = (line: string): string => Buffer.from(line, "latin1").toString("hex");
  const line = stroke === undefined ? "" : `0 g 2 ${height - stroke} 120 0.6 re f`;
  const lines = drawn.map((line) => `0 -9 Td <${hex(line)}> Tj`).join(" ");
  const look = context.stream(
    `/Tx BMC q BT 0.11 0.14 0.15 rg /F 9 Tf 2 ${height - 3} Td ${lines} ET ${line} Q EMC`,
    {
      Type: "XObject",
      Subtype: "Form",
      BBox: [0, 0, width, height],
      Resources: { Font: { F: font } },
    },
  );
  dict.set(PDFName.of("V"), PDFHexString.fromText(notes.join("\n")));
  dict.set(PDFName.of("AP"), context.obj({ N: context.register(look) }));
  return pdf.save({ updateFieldAppearances: false });
}

async function doubted(bytes: Uint8Array): Promise<(string | undefined)[] | undefined> {
  return (await readPdf(bytes)).sheet?.doubts.map(({ what, place }) => `${what} ${place}`);
}

const english = ["Please ring twice, and open", "quietly by the gypsy jug"];
const french = ["Porte du quai, sonner", "Éviter le matin; à gauche", "À bientôt"];

describe.each(samples)("lines that a program has set close in the notes of a $edition", (sample) => {
  test.each([
    ["of small letters", english],
    ["with accents beside what hangs down from the line above", french],
  ])("%s are told apart", async (_, lines) => {
    expect(await doubted(await withNotes(sample, lines, lines))).toEqual([]);
  });

  test.each([
    ["with another word", english, ["Please ring twice, and open", "quietly by the copper jug"]],
    ["with an accent less", french, ["Porte du quai, sonner", "Eviter le matin; a gauche", "A bientot"]],
    ["in another order", english, english.toReversed()],
    ["with a line more", english, [...english, "row 2: EXIT"]],
  ])("%s are doubted", async (_, held, drawn) => {
    expect(await doubted(await withNotes(sample, held, drawn))).toEqual(["value-hidden notes"]);
  });

  test.each([
    ["between", 14.4],
    ["through", 18.5],
  ])("and a stroke %s them is seen", async (_, stroke) => {
    expect(await doubted(await withNotes(sample, french, french, stroke))).toEqual(["value-hidden notes"]);
  });
});
