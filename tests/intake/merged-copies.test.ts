import { simpleParser } from "mailparser";
import { PDFDocument } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { fillSheet } from "../../src/drawing/fill-sheet.ts";
import { withMergedCopies } from "../../src/intake/merged-copies.ts";
import { judgeAll, openParts } from "../../src/intake/open.ts";
import { catalogue, editions } from "../make/config.ts";
import { temporaryDesk } from "../make/desk.ts";
import { byPdfLib, byPdftk, byPypdf, byQpdf, type Merge, withPage } from "../make/odd-sheets/merged.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { hasLibrary, hasProgram } from "../make/program.ts";
import { directReader } from "../make/reader.ts";
import { answerTo, letterOf, post } from "../make/thread.ts";

const samples = await sampleSheets();
const [device, plate, theirs] = ["device-26c", "plate-26c", "marrowby-device-1"].map((name) =>
  samples.find(({ edition }) => edition === name),
);
if (device === undefined || plate === undefined || theirs === undefined) throw new Error("no sheets");
const sheets = { "device.pdf": device.filled, "plate.pdf": plate.filled };

/** What the file "all.pdf" among some files is, or which of them it holds. */
async function allAmong(files: Readonly<Record<string, Uint8Array>>) {
  const parts = Object.entries(files).map(([name, bytes]) => ({ name, bytes, looks: false }));
  const opened = await openParts(directReader, parts, "1");
  const judged = await withMergedCopies(opened, judgeAll(opened, { editions, catalogue }), directReader);
  const all = judged.find(({ file }) => file.file === "all.pdf")?.file;
  return all?.copyOf ?? all?.kind;
}

const merges: readonly (readonly [how: string, there: boolean, merge: Merge])[] = [
  ["qpdf", hasProgram("qpdf"), byQpdf],
  ["pdftk", hasProgram("pdftk"), byPdftk],
  ["pypdf", hasLibrary("pypdf"), byPypdf],
];

describe.each(merges)("put together by %s", (_, there, merge) => {
  test.skipIf(!there)("sheets are those beside them, each once", async () => {
    const all = await merge(plate.filled, device.filled);
    expect(await allAmong({ ...sheets, "all.pdf": all })).toEqual(["plate.pdf", "device.pdf"]);
  });
});

test("sheets of two pages are known page by page", async () => {
  const all = await byPdfLib(theirs.filled, device.filled);
  expect(await allAmong({ "theirs.pdf": theirs.filled, ...sheets, "all.pdf": all })).toEqual([
    "theirs.pdf",
    "device.pdf",
  ]);
});

test("whatever says or shows something of its own stays several sheets", async () => {
  const otherwise = await fillSheet(device.blank, { ...device.values, button1_row1: "OTHERWISE" });
  for (const all of [
    await byPdfLib(otherwise, plate.filled),
    await byPdfLib(device.filled, plate.filled, otherwise),
    await byPdfLib(device.filled, device.filled),
    await withPage(await byPdfLib(device.filled, plate.filled), "Make two of each"),
    await writtenOn(await byPdfLib(device.filled, plate.filled)),
  ])
    expect(await allAmong({ ...sheets, "all.pdf": all })).toBe("several-sheets");
});

test("a sheet of it that did not come beside it is missed", async () => {
  const all = await byPdfLib(device.filled, plate.filled);
  const other = await fillSheet(device.blank, { ...device.values, station_mark: "S-9" });
  expect(await allAmong({ "device.pdf": device.filled, "all.pdf": all })).toBe("several-sheets");
  expect(await allAmong({ "device.pdf": device.filled, "other.pdf": other, "all.pdf": all })).toBe(
    "several-sheets",
  );
});

test("the letter passes, and says that each counts once", async () => {
  const desk = await temporaryDesk();
  const one = await wholeOf({ mark: "T-1", legend: "NORTH" });
  const other = await wholeOf({ mark: "T-2", legend: "SOUTH" });
  const files = [
    { file: "T-1.pdf", bytes: one },
    { file: "T-2.pdf", bytes: other },
    { file: "all.pdf", bytes: await byPdfLib(one, other) },
  ];
  const letter = await post(desk, { files });
  expect([letter.verdict, letter.problems.map(({ check }) => check)]).toEqual([
    "pass",
    ["several-sheets-in-file"],
  ]);
  expect((await answerTo(desk, letter)).replaceAll(/\s+/g, " ")).toContain(
    "This file holds the same 2 sheets as T-1.pdf and T-2.pdf, beside it. Each counts once.",
  );
});

/** With a word on its first page. */
async function writtenOn(bytes: Uint8Array): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  pdf.getPage(0).drawText("two", { x: 300, y: 420, size: 9 });
  return pdf.save({ updateFieldAppearances: false });
}

/** A sheet as it would come. */
async function wholeOf({ mark, legend }: { readonly mark: string; readonly legend: string }) {
  const { attachments } = await simpleParser(
    Buffer.from(await letterOf({ sheets: [{ mark, legend: [legend], fill: { order: "FM-90" } }] })),
  );
  const [{ content } = { content: Buffer.of() }] = attachments;
  return new Uint8Array(content);
}
