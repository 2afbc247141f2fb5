import { simpleParser } from "mailparser";
import { beforeEach, expect, test } from "vitest";
import { read as readWorkbook, utils } from "xlsx";
import { listWorkbook } from "../../src/drawing/list/list-workbook.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { withLists } from "../../src/intake/lists.ts";
import { openParts } from "../../src/intake/open.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import { type ListForm, listForm } from "../../src/reading/list/list-form.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { maker } from "../make/config.ts";
import { temporaryDesk } from "../make/desk.ts";
import { alone, changed, csvOf, type Filling, pair, rowsOf, usualHead, writers } from "../make/list.ts";
import { readerOf } from "../make/reader.ts";
import { answerTo, post } from "../make/thread.ts";

const reader = readerOf(maker);
const from = "Ida Marlowe <ida@sedgeholm.example>";
const checksOf = ({ problems }: LetterRecord): string[] =>
  [...new Set(problems.map(({ check }) => check))].toSorted();

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk({ ...maker, reader });
});

const listAs = (filling: Filling, file = "stations.csv") => ({
  file,
  bytes: Buffer.from(csvOf(rowsOf(filling))),
});

async function enclosedIn({ letter }: LetterRecord): Promise<string[]> {
  const answer = await simpleParser(Buffer.from((await desk.store.answers.of(letter))?.bytes ?? ""));
  return answer.attachments.map(({ filename }) => filename ?? "");
}

const verdictOf = async (): Promise<string | undefined> =>
  (await desk.store.orders.named("SA-118"))[0]?.verdict;

const whole = { devices: [...pair, alone] };

test("a list is the order: one question, its sheets and a proof enclosed; a YES, and it passes", async () => {
  const asked = await post(desk, { from, text: "Our list is attached.", files: [listAs(whole)] });
  expect(asked).toMatchObject({ verdict: "confirm", orders: ["SA-118"], sheets: 4 });
  expect(checksOf(asked)).toEqual(["sheet-from-list"]);
  expect(await enclosedIn(asked)).toEqual([
    "A-1 plate.pdf",
    "A-1 position 1.pdf",
    "A-1 position 2.pdf",
    "A-2.pdf",
    "proof SA-118.pdf",
  ]);
  expect(await answerTo(desk, asked)).toMatch(/On 4 sheets[^]* 1\. Filled in from the list stations\.csv/);
  const yes = await post(desk, { from, to: asked, text: "1 YES" });
  expect(yes).toMatchObject({ verdict: "pass", sheets: 0 });
  expect(await verdictOf()).toBe("pass");

  // What is handed to engraving are the sheets that the buyer was shown.
  const files: string[] = [];
  await releaseOrder(desk, "SA-118", "Rosa Imhoff", (_, package_) => {
    for (const { path } of package_) files.push(path);
    return Promise.resolve("there");
  });
  expect(files.filter((path) => path.startsWith("originals/")).toSorted()).toEqual([
    "originals/A-1 plate.pdf",
    "originals/A-1 position 1.pdf",
    "originals/A-1 position 2.pdf",
    "originals/A-2.pdf",
  ]);
});

test("nothing passes by another way than the answer", async () => {
  const asked = await post(desk, { from, files: [listAs(whole)] });
  const thanks = await post(desk, { from, to: asked, text: "Thank you!" });
  expect(thanks.verdict).not.toBe("pass");
  const no = await post(desk, { from, to: asked, text: "1 NO" });
  expect(no.verdict).not.toBe("pass");
  expect(await verdictOf()).toBe("confirm");
});

test("what is changed after a YES is asked about anew, and the rest is not", async () => {
  const asked = await post(desk, { from, files: [listAs(whole)] });
  await post(desk, { from, to: asked, text: "1 YES" });
  const again = await post(desk, { from, to: asked, files: [listAs(whole, "again.csv")] });
  expect(again.verdict).toBe("pass");
  const other = { ...alone, "Button 3, row 1": "READ" };
  const mended = await post(desk, { from, to: asked, files: [listAs({ devices: [...pair, other] })] });
  expect(mended.verdict).toBe("confirm");
  expect(mended.problems.filter(({ check }) => check === "sheet-from-list")).toHaveLength(1);
});

test("one list that comes twice, as CSV and as a workbook, orders nothing twice", async () => {
  const book = { file: "stations.xlsx", bytes: await writers.xlsx(rowsOf(whole)) };
  const asked = await post(desk, { from, files: [listAs(whole), book] });
  expect(asked.verdict).toBe("confirm");
  const yes = await post(desk, { from, to: asked, text: "1 YES" });
  expect(yes.verdict).toBe("pass");
});

test("a row that a corrected list leaves out is asked about until it is answered or cancelled", async () => {
  const left = { devices: pair };
  const leftOut = ({ problems }: LetterRecord): string[] =>
    problems.flatMap(({ check, spots }) => (check === "row-left-out" ? spots.map(({ file }) => file) : []));
  const asked = await post(desk, { from, files: [listAs(whole)] });
  await post(desk, { from, to: asked, text: "1 YES" });
  const again = await post(desk, { from, to: asked, files: [listAs(left)] });
  expect(again.verdict).toBe("confirm");
  expect(leftOut(again)).toHaveLength(1);
  expect((await answerTo(desk, again)).replaceAll(/\s+/g, " ")).toContain(
    "2. An earlier list ordered this, and the list that came after it leaves it out. It would still be made.",
  );
  expect((await post(desk, { from, to: again, text: "Thank you!" })).verdict).not.toBe("pass");
  expect(await verdictOf()).toBe("confirm");
  expect((await post(desk, { from, to: again, text: "2 YES" })).verdict).toBe("pass");
  // Whoever has said so is not asked again.
  expect((await post(desk, { from, to: again, files: [listAs(left, "third.csv")] })).verdict).toBe("pass");
});

test("a mark that was changed in a list is asked about, since the device of the old mark stays", async () => {
  const asked = await post(desk, { from, files: [listAs(whole)] });
  const renamed = { devices: [...pair, { ...alone, "Station mark": "A-3" }] };
  const again = await post(desk, { from, to: asked, files: [listAs(renamed)] });
  expect(again.problems.filter(({ check }) => check === "row-left-out")).toHaveLength(1);
  await post(desk, { from, to: again, text: "1 YES" });
  expect(await verdictOf()).toBe("confirm");
  const gone = await post(desk, { from, to: again, text: "Please cancel A-2." });
  expect(gone.verdict).toBe("pass");
});

test("while something has to be fixed, the list is not asked about, and its cells are named", async () => {
  const wrong = { ...alone, "Button 1, row 1": "BRIGHTNESSES" };
  const failed = await post(desk, { from, files: [listAs({ devices: [...pair, wrong] })] });
  expect(failed.verdict).toBe("fail");
  expect(checksOf(failed)).toEqual(["row-too-long"]);
  expect(await answerTo(desk, failed)).toContain("In stations.csv: I19");
  const mended = await post(desk, { from, to: failed, files: [listAs(whole)] });
  expect(mended.verdict).toBe("confirm");
});

test("a workbook with something hidden makes no sheet, and its order does not pass", async () => {
  const bytes = changed(await writers.xlsx(rowsOf(whole)), {
    "xl/worksheets/sheet1.xml": (xml) => xml.replace(/<row r="18"/, '<row hidden="1" r="18"'),
  });
  const failed = await post(desk, { from, files: [{ file: "stations.xlsx", bytes }] });
  expect(failed).toMatchObject({ verdict: "fail", sheets: 0 });
  expect(checksOf(failed)).toEqual(["list-not-taken"]);
  expect(await answerTo(desk, failed)).toContain(
    "Something is filled in where the list is hidden: Stations!A18",
  );
});

/** The sheets of a list as files of their own. */
async function sheetsOf(filling: Filling) {
  const opened = await openParts(
    withLists(reader, maker),
    [{ name: "a.csv", looks: false, bytes: listAs(filling).bytes }],
    "1",
  );
  return opened
    .filter(({ attachment }) => attachment.list !== undefined)
    .map(({ attachment: { file, bytes } }) => ({ file, bytes }));
}

test("a list beside its sheets is held against them and orders nothing twice", async () => {
  const sheets = await sheetsOf(whole);
  const came = await post(desk, { from, files: [listAs(whole), ...sheets] });
  expect(came).toMatchObject({ verdict: "pass", sheets: 4 });
  expect(checksOf(came)).toEqual(["list-beside-sheets"]);
});

test("what a list says otherwise than a sheet beside it is told difference by difference", async () => {
  const sheets = await sheetsOf(whole);
  const other = { ...alone, Finish: "Plum", "Button 2, row 1": "DOWN", Notes: "left of the door" };
  const came = await post(desk, { from, files: [...sheets, listAs({ devices: [...pair, other] })] });
  expect(came.verdict).toBe("fail");
  expect(checksOf(came)).toEqual(["list-beside-sheets", "list-says-otherwise"]);
  const answer = (await answerTo(desk, came)).replaceAll(/\s+/g, " ");
  expect(answer).toContain("“Finish” says “Pumice”; the list stations.csv, F19, says “Plum”.");
  expect(answer).toContain("“Button 2, row 1” says “DIM”; the list stations.csv, L19, says “DOWN”.");
  expect(answer).toContain("“Notes” says (empty); the list stations.csv, AB19, says “left of the door”.");

  // Either of the two, sent alone, says which is meant.
  const [sheet] = sheets.filter(({ file }) => file === "A-2.pdf");
  const mended = await post(desk, { from, to: came, files: sheet === undefined ? [] : [sheet] });
  expect(mended.verdict).toBe("pass");
});

test("a sheet that came back as we had filled it in before counts nothing beside a list for its place", async () => {
  const [plate, first] = await sheetsOf({ devices: pair });
  const sent = await post(desk, { from, files: [plate, first].flatMap((file) => file ?? []) });
  expect(sent.verdict).toBe("waiting");
  const answer = await simpleParser(Buffer.from((await desk.store.answers.of(sent.letter))?.bytes ?? ""));
  const ours = answer.attachments.find(({ filename }) => filename === "A-1 position 2.pdf");
  const file = { file: "A-1 position 2.pdf", bytes: new Uint8Array(ours?.content ?? []) };
  const back = await post(desk, { from, to: sent, files: [file, listAs({ devices: pair })] });
  expect(back.verdict).toBe("confirm");
  expect(checksOf(back)).toEqual(["same-file-name-twice", "sheet-from-list", "sheet-replaced"]);
  expect((await answerTo(desk, back)).replaceAll(/\s+/g, " ")).toContain(
    "is for the same place: A-1 position 2.pdf was put aside.",
  );
  expect((await post(desk, { from, to: back, text: "1 YES" })).verdict).toBe("pass");
});

test("what the list has beside the sheets that came is ordered by it, and asked about", async () => {
  const [plate, ...devices] = await sheetsOf({ devices: pair });
  if (plate === undefined) throw new Error("no plate");
  const came = await post(desk, { from, files: [plate, ...devices, listAs(whole)] });
  expect(came).toMatchObject({ verdict: "confirm", sheets: 4 });
  expect(came.problems.filter(({ check }) => check === "sheet-from-list")).toHaveLength(1);
});

test.each([
  ["a letter that asks for them", []],
  ["an empty list", ["station-list.xlsx"]],
])("%s brings the blank sheets and the empty list", async (_, files) => {
  const bytes = await listWorkbook(listForm(maker.editions) as ListForm, maker.catalogue);
  const asked = await post(desk, {
    from,
    text: "Please send us the sheets.",
    files: files.map((file) => ({ file, bytes })),
  });
  expect(await enclosedIn(asked)).toEqual(["device-4.pdf", "plate-4.pdf", "station-list.xlsx"]);
});

test("whoever has ordered before gets a list that has who orders and who pays, as far as his orders agree", async () => {
  const headOf = async (asked: LetterRecord): Promise<[unknown, unknown][]> => {
    const answer = await simpleParser(Buffer.from((await desk.store.answers.of(asked.letter))?.bytes ?? ""));
    const list = answer.attachments.find(({ filename }) => filename === "station-list.xlsx");
    const { Sheets } = readWorkbook(list?.content);
    const rows = utils.sheet_to_json<unknown[]>(Sheets["Order"] ?? {}, { header: 1 });
    return rows.slice(1).flatMap(([label, typed]) => (typed === undefined ? [] : [[label, typed]]));
  };
  const asks = { from, text: "Please send us the sheets." };
  expect(await headOf(await post(desk, asks))).toEqual([]);
  await post(desk, { from, files: await sheetsOf({ devices: [alone] }) });
  const known = await post(desk, asks);
  expect(await headOf(known)).toEqual([
    ["Contact name *", "Ida Marlowe"],
    ["E-mail", "ida@sedgeholm.example"],
    ["Phone", "312-555-0117"],
    ["Bill to: company *", "Sedgeholm Electric"],
    ["Bill to: street *", "12 Tannery Lane"],
    ["Bill to: city *", "Joliet"],
    ["Bill to: state *", "IL"],
    ["Bill to: ZIP or postal code *", "60432"],
  ]);
  expect(await answerTo(desk, known)).toContain("The list has who orders and who pays already");
  // Another order has another contact: nobody knows which the next will have.
  const head = { ...usualHead, "Order number": "SA-119", "Contact name": "Jonas Marlowe" };
  await post(desk, { from, files: await sheetsOf({ head, devices: [{ ...alone, "Station mark": "A-9" }] }) });
  expect((await headOf(await post(desk, asks))).map(([label]) => label)).toEqual([
    "Bill to: company *",
    "Bill to: street *",
    "Bill to: city *",
    "Bill to: state *",
    "Bill to: ZIP or postal code *",
  ]);
  const stranger = { from: "Otto Brandt <otto@elsewhere.example>", text: "Please send us the sheets." };
  expect(await headOf(await post(desk, stranger))).toEqual([]);
});

test("another table with quantities is read as before", async () => {
  const sheets = await sheetsOf({ devices: [alone] });
  const counted = { file: "count.csv", bytes: Buffer.from("Item,Qty\nThree buttons devices,2\n") };
  const came = await post(desk, { from, files: [...sheets, counted] });
  expect(checksOf(came)).toContain("text-beside");
});

test("a list that was not taken keeps the order of the sheets beside it from passing until a list is", async () => {
  const sheets = await sheetsOf({ devices: pair });
  const merged = changed(await writers.xlsx(rowsOf({})), {
    "xl/worksheets/sheet1.xml": (xml) =>
      xml.replace("</sheetData>", '</sheetData><mergeCells><mergeCell ref="A17:A18"/></mergeCells>'),
  });
  const failed = await post(desk, { from, files: [...sheets, { file: "first.xlsx", bytes: merged }] });
  expect(failed.verdict).toBe("fail");
  const thanks = await post(desk, { from, to: failed, files: sheets.slice(0, 1) });
  expect(checksOf(thanks)).toContain("file-still-unread");
  const mended = await post(desk, { from, to: failed, files: [listAs({}, "second.csv")] });
  expect(mended.verdict).toBe("confirm");
  expect(checksOf(mended)).toEqual(["sheet-from-list"]);
});

test("a table of somebody else's with that title is what it was before", async () => {
  const text = Buffer.from("Station list\nLobby and stairs, see the drawing\n");
  const book = await writers.xlsx([["Station list"], ["Lobby", "2"]]);
  const came = await post(desk, {
    from,
    files: [
      { file: "rooms.txt", bytes: text },
      { file: "rooms.xlsx", bytes: book },
    ],
  });
  expect(checksOf(came)).toEqual(["no-sheet", "office-document", "text-beside"]);
});

test("so is one with merged cells, and of one that is too long nobody can tell", async () => {
  const merged = changed(await writers.xlsx([["Station list"], ["Lobby", "2"]]), {
    "xl/worksheets/sheet1.xml": (xml) =>
      xml.replace("</sheetData>", '</sheetData><mergeCells><mergeCell ref="A1:B1"/></mergeCells>'),
  });
  const came = await post(desk, { from, files: [{ file: "rooms.xlsx", bytes: merged }] });
  expect(checksOf(came)).toEqual(["no-sheet", "office-document"]);
  const bytes = Buffer.from(`Station list,Lobby\n${"x".repeat(400_000)}`);
  const long = await post(desk, { from, files: [{ file: "rooms.csv", bytes }] });
  expect(checksOf(long)).toContain("list-not-taken");
});

test("a list of more devices than one may have is told, and makes no sheet", async () => {
  const devices = Array.from({ length: 101 }, (_, i) => ({ ...alone, "Station mark": `B-${i}` }));
  const failed = await post(desk, { from, files: [listAs({ devices })] });
  expect(failed).toMatchObject({ verdict: "fail", sheets: 0 });
  expect(await answerTo(desk, failed)).toContain("The list is longer than one list may be: row 117.");
});
