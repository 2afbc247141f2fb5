import { expect, test } from "vitest";
import { fillSheet } from "../../src/drawing/fill-sheet.ts";
import { judgeAll, openParts } from "../../src/intake/open.ts";
import { catalogue, editions } from "../make/config.ts";
import { cairoPrint, gsPrint } from "../make/odd-sheets/by-programs.ts";
import { byPdfLib } from "../make/odd-sheets/merged.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { flattened } from "../make/pdf.ts";
import { hasProgram } from "../make/program.ts";
import { directReader } from "../make/reader.ts";

const samples = await sampleSheets();
const [device, plate] = ["device-26c", "plate-26c"].map((name) =>
  samples.find(({ edition }) => edition === name),
);
if (device === undefined || plate === undefined) throw new Error("no sheets");
const sheets = { "device.pdf": device.filled, "plate.pdf": plate.filled };

/** What some files are, by their names, and of what they are prints. */
async function copiesAmong(files: Readonly<Record<string, Uint8Array>>) {
  const parts = Object.entries(files).map(([name, bytes]) => ({ name, bytes, looks: false }));
  const judged = judgeAll(await openParts(directReader, parts, "1"), { editions, catalogue });
  return Object.fromEntries(judged.map(({ file }) => [file.file, file.copyOf ?? file.kind]));
}

const isThere = hasProgram("pdftocairo", "-v") && hasProgram("gs");

test.skipIf(!isThere)(
  "a print is known by the typing of the sheet beside it, whatever printed it",
  async () => {
    const prints = {
      "pdf-lib.pdf": await flattened(device.filled),
      "cairo.pdf": cairoPrint(device.filled),
      "gs.pdf": gsPrint(device.filled, "pdfwrite"),
    };
    expect(await copiesAmong({ ...sheets, ...prints })).toEqual({
      "device.pdf": "sheet",
      "plate.pdf": "sheet",
      "pdf-lib.pdf": ["device.pdf"],
      "cairo.pdf": ["device.pdf"],
      "gs.pdf": ["device.pdf"],
    });
  },
);

test("a print of all sheets is one of each", async () => {
  const all = await byPdfLib(await flattened(device.filled), await flattened(plate.filled));
  expect(await copiesAmong({ "all.pdf": all, ...sheets })).toMatchObject({
    "all.pdf": ["device.pdf", "plate.pdf"],
  });
});

test("a print alone, one of another sheet, and one with a page of its own are none", async () => {
  const print = await flattened(device.filled);
  const other = { ...device.values, button1_row1: "OTHERWISE" };
  expect(await copiesAmong({ "print.pdf": print })).toEqual({ "print.pdf": "printed" });
  expect(await copiesAmong({ "print.pdf": print, "plate.pdf": plate.filled })).toMatchObject({
    "print.pdf": "printed",
  });
  const changed = await fillSheet(device.blank, other);
  expect(await copiesAmong({ "print.pdf": print, "device.pdf": changed })).toMatchObject({
    "print.pdf": "printed",
  });
  const more = await byPdfLib(print, await flattened(plate.filled));
  expect(await copiesAmong({ "more.pdf": more, "device.pdf": device.filled })).toMatchObject({
    "more.pdf": "printed",
  });
});
