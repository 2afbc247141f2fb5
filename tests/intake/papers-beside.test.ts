import { PDFDocument, StandardFonts } from "pdf-lib";
import { expect, test } from "vitest";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const sheets = [
  { mark: "B-1", legend: ["SAUNA"] },
  { mark: "B-2", legend: ["LOBBY"] },
];

async function page(text: string): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Helvetica);
  document.addPage([612, 792]).drawText(text, { x: 50, y: 700, size: 12, font });
  return document.save();
}

test.each([
  ["a note that asks for something", "Please hold B-2.", "person"],
  ["a note on a finish", "B-1 in black please", "person"],
  [
    "a note that hands the order over",
    "Dear Sirs, please find our order for two stations. Regards, Greta",
    "pass",
  ],
  ["a purchase order", "Purchase order 4711. B-1 1 ea 45.00. B-2 1 ea 45.00. Net 30.", "pass"],
  ["a purchase order that cancels a station", "Purchase order 4711. B-2 cancelled. Net 30.", "person"],
  ["a purchase order that stops it all", "Purchase order 4711. Hold all items until released.", "person"],
  ["a purchase order of a third station", "Purchase order 4711. B-3 1 ea 45.00", "person"],
  ["a purchase order of three stations", "Purchase order 4711. Wall stations 3 ea 45.00", "confirm"],
  ["a purchase order of two stations", "Purchase order 4711. Wall stations 2 ea 45.00", "pass"],
  ["a plan of the building", "Floor plan E-101, scale 1:50. B-1. B-2. Lobby. Sauna.", "pass"],
  ["a plan without one of the stations", "Floor plan E-101, scale 1:50. B-1. B-2 removed.", "person"],
] as const)("%s, as a PDF beside the sheets: %s", async (_, text, verdict) => {
  const files = [{ file: "note.pdf", bytes: await page(text) }];
  const came = await post(await temporaryDesk(), { sheets, files });
  expect(came.verdict).toBe(verdict);
});

test("a note behind an invoice is read", async () => {
  const document = await PDFDocument.load(await page("Invoice 12"));
  const [note] = await document.copyPages(await PDFDocument.load(await page("Please hold B-2.")), [0]);
  if (note !== undefined) document.addPage(note);
  const files = [{ file: "invoice.pdf", bytes: await document.save() }];
  expect((await post(await temporaryDesk(), { sheets, files })).verdict).toBe("person");
});

/** The head of a PNG, ISO/IEC 15948 §11.2.2: so many pixels wide and high. */
function picture(width: number, height: number): Uint8Array {
  const bytes = Buffer.alloc(600);
  Buffer.from("89504e470d0a1a0a0000000d49484452", "hex").copy(bytes);
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
}

test.each([
  ["a photograph of a page is for a person", 1200, 1600, "person", ["photographed-sheet"]],
  ["a logo is named", 320, 80, "pass", ["photographed-sheet"]],
] as const)("beside sheets %s", async (_, width, height, verdict, checks) => {
  const files = [{ file: "IMG_2231.png", bytes: picture(width, height) }];
  const came = await post(await temporaryDesk(), { sheets, files });
  expect([came.verdict, came.problems.map(({ check }) => check)]).toEqual([verdict, checks]);
});

test.each([
  ["rich text", Buffer.from("{\\rtf1 Please hold B-2}")],
  ["a document of an older office program", Buffer.from("d0cf11e0a1b11ae1".padEnd(1200, "0"), "hex")],
])("a person opens %s", async (_, bytes) => {
  const came = await post(await temporaryDesk(), { sheets, files: [{ file: "note", bytes }] });
  expect([came.verdict, ...came.problems.map(({ check }) => check)]).toEqual(["person", "office-document"]);
});
