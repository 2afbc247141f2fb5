import { expect, test } from "vitest";
import { composeAnswer, nothingEnclosed } from "../../src/answer/answer.ts";
import { missingSheets } from "../../src/answer/missing-sheets.ts";
import { fillSheet, type SheetValues } from "../../src/drawing/fill-sheet.ts";
import { enclose } from "../../src/intake/enclose.ts";
import type { Report } from "../../src/judging/report.ts";
import { hasText } from "../../src/trade/legend.ts";
import { entries } from "../../src/trade/place.ts";
import { type Sheet, saidAt } from "../../src/trade/sheet.ts";
import { catalogue, editions } from "../make/config.ts";
import { readPdf } from "../make/read-pdf.ts";
import { directReader } from "../make/reader.ts";
import { reportOn, sentEarlier } from "../make/report.ts";
import { completeOrder, deviceAt, plate } from "../make/sample.ts";

const enclosed = (report: Report) => missingSheets(report, catalogue, editions);
const names = async (report: Report) => (await enclosed(report)).sheets.map(({ file }) => file);

async function readAll(report: Report): Promise<Sheet[]> {
  const { sheets } = await enclosed(report);
  return Promise.all(
    sheets.map(async ({ bytes, file }, i) => {
      const { sheet } = await readPdf(bytes, { id: `2/${i + 1}`, file });
      if (sheet === undefined) throw new Error(`${file} is no sheet`);
      return sheet;
    }),
  );
}

/** What a sheet says besides its legends. */
function saidBy(sheet: Sheet): Record<string, string> {
  return Object.fromEntries(entries.map((place) => [place, saidAt(sheet, place)]));
}

const without = (...files: readonly string[]) => completeOrder().filter(({ file }) => !files.includes(file));
const position = (n: number) => `S-104 pos ${n}.pdf`;

test("a missing device sheet comes with all that its sisters say, and without a legend", async () => {
  const report = reportOn(without(position(2), position(3)));
  expect(await names(report)).toEqual(["S-104 position 2.pdf", "S-104 position 3.pdf"]);
  const [second, third] = await readAll(report);
  expect(saidBy(second as Sheet)).toEqual({ ...saidBy(deviceAt(2)), layout: "" });
  expect(saidBy(third as Sheet)).toEqual({ ...saidBy(deviceAt(3)), layout: "" });
  for (const { legends } of [second, third] as Sheet[])
    expect(legends.some((legend) => legend.plain || hasText(legend))).toBe(false);
});

test("a plate alone brings its device sheets, a device alone the plate sheet and its sisters", async () => {
  expect(await names(reportOn([plate()]))).toEqual([1, 2, 3, 4].map((n) => `S-104 position ${n}.pdf`));
  const report = reportOn([deviceAt(2)]);
  expect(await names(report)).toEqual([
    "S-104 plate.pdf",
    ...[1, 3, 4].map((n) => `S-104 position ${n}.pdf`),
  ]);
  const { text } = composeAnswer(report, catalogue, {
    ...nothingEnclosed,
    missing: await enclosed(report),
  });
  expect(text.replaceAll(/\s+/g, " ")).toContain(
    "They are the missing sheets and those that its plate would need, with what your other sheets say.",
  );
  const [missing] = await readAll(report);
  expect(saidBy(missing as Sheet)).toEqual(saidBy(plate()));
});

test("nothing is enclosed where nothing is missing, nor to a letter that a person must see first", async () => {
  expect(await names(reportOn(completeOrder()))).toEqual([]);
  const held = reportOn([plate()], { held: true });
  expect(await enclose(held, [], { reader: directReader, catalogue, editions })).toEqual(nothingEnclosed);
});

test("sheets that came earlier tell what a later letter leaves open", async () => {
  const report = reportOn([deviceAt(1)], { earlier: sentEarlier([plate()]) });
  expect(await names(report)).toEqual([2, 3, 4].map((n) => `S-104 position ${n}.pdf`));
});

/** What the missing sheet of position 4 says where the order's sheets say this. */
async function fourth(...sheets: readonly Sheet[]): Promise<Sheet> {
  const sheet = (await readAll(reportOn(sheets))).find((one) => one.kind === "device" && one.position === 4);
  if (sheet === undefined) throw new Error("no sheet for position 4");
  return sheet;
}

test("where the others differ the field is left empty", async () => {
  const [first, second, third] = [1, 2, 3].map((n) => deviceAt(n)) as [Sheet, Sheet, Sheet];
  const oat = await fourth(plate(), first, second, { ...third, finish: "CHK" });
  expect(saidBy(oat)).toEqual({ ...saidBy(deviceAt(4)), layout: "", finish: "" });
  const moved = { ...first, billTo: { ...first.billTo, street: "9 Quay Street" } };
  const { billTo } = await fourth(plate(), moved, second, third);
  expect(billTo).toEqual({ name: "Brightwire Electric", city: "Chicago", state: "IL", postcode: "60607" });
  const own = { ...first, shipSame: false, shipTo: { ...first.billTo } };
  expect(await fourth(plate(), own, second, third)).toMatchObject({ shipSame: false, shipTo: {} });
});

test("what is asked about or to be mended is not passed on", async () => {
  const mistyped = { ...plate(), contact: { ...plate().contact, email: "ines@brightwire" } };
  expect((await fourth(mistyped)).contact).toEqual({ name: "Ines Calloway", phone: "312-555-0117" });
});

test("an order number that is asked about is not passed on", async () => {
  const sheets = [plate({ order: "BW-22O7", id: "2/1" }), deviceAt(1, { order: "BW-22O7", id: "2/2" })];
  const report = reportOn(sheets, { earlier: sentEarlier(without(position(3), position(4))) });
  expect(report.orders.flatMap(({ problems }) => problems.map(({ check }) => check))).toContain(
    "order-number-near-miss",
  );
  for (const sheet of await readAll(report)) expect(sheet.order).not.toBe("BW-22O7");
});

test("the station's own sheets go before others of the order", async () => {
  const other = { name: "Dale Okafor", email: "dale@brightwire.example", phone: "312-555-0118" };
  const station = plate({ id: "1/9", file: "S-200 plate.pdf", mark: "S-200", contact: other });
  for (const { mark, contact } of await readAll(reportOn([plate(), station])))
    expect(contact).toEqual(mark === "S-200" ? other : plate().contact);
});

test("what a sheet cannot show is left empty", async () => {
  const sheets = completeOrder().map((sheet) => ({
    ...sheet,
    project: "Библиотека",
    contact: { ...sheet.contact, name: "Ines\nCalloway" },
  }));
  const found = await fourth(...sheets.filter(({ file }) => file !== position(4)));
  expect([found.project, found.contact.name, found.doubts]).toEqual([undefined, undefined, []]);
});

test("a text longer than its field reads as it was typed", async () => {
  const project = "Larkspur Library, the new wing behind the old reading room, first and second floor";
  const found = await fourth(plate({ project }));
  expect([found.project, found.doubts, found.unsure]).toEqual([project, [], []]);
});

/** What a buyer fills in besides. */
const rest: SheetValues = {
  layout: "D4",
  button1_row1: "ENTRY",
  button2_row1: "STACKS",
  button3_plain: true,
  button4_row1: "ALL",
  button4_row2: "OFF",
};

test("prefilled sheets that come back filled in complete their order, and raise nothing", async () => {
  const report = reportOn([plate()]);
  const sent = await Promise.all(
    (await enclosed(report)).sheets.map(async ({ bytes, file }, i) => {
      const filled = await fillSheet(bytes, {
        ...rest,
        button1_row1: ["ENTRY", "FOYER", "DESK", "STAGE"][i] ?? "",
      });
      const { sheet } = await readPdf(filled, { id: `2/${i + 1}`, file });
      if (sheet === undefined) throw new Error(`${file} is no sheet`);
      return sheet;
    }),
  );
  const answer = reportOn(sent, { earlier: sentEarlier([plate()]) });
  expect(answer.verdict).toBe("pass");
  expect([...answer.sheets, ...answer.orders].flatMap(({ problems }) => problems)).toEqual([]);
});

test("several orders in one answer are told apart by their numbers", async () => {
  const other = { order: "LL-93", id: "1/9", project: "Teasel Lane" };
  const report = reportOn([plate(), plate({ ...other, gangs: 2 })]);
  expect(await names(report)).toEqual([
    ...[1, 2, 3, 4].map((n) => `BW-2207 S-104 position ${n}.pdf`),
    ...[1, 2].map((n) => `LL-93 S-104 position ${n}.pdf`),
  ]);
});

test("no more sheets are enclosed than an answer can hold, and it says how many more there are", async () => {
  const plates = Array.from({ length: 8 }, (_, i) =>
    plate({ id: `1/${i + 1}`, mark: `S-${101 + i}`, file: `S-${101 + i}.pdf` }),
  );
  const report = reportOn(plates);
  const missing = await enclosed(report);
  expect([missing.sheets.length, missing.more]).toEqual([24, 8]);
  const { text } = composeAnswer(report, catalogue, { ...nothingEnclosed, missing });
  expect(text.replaceAll(/\s+/g, " ")).toContain(
    "8 more sheets are missing; send some of these, and our answer encloses the next.",
  );
  expect(missing.sheets.reduce((sum, { bytes }) => sum + bytes.length, 0)).toBeLessThan(2_500_000);
});

test("a desk that draws no sheets of its own encloses none", async () => {
  const own = editions.filter(({ drawn }) => !drawn);
  expect(await missingSheets(reportOn([plate()]), catalogue, own)).toEqual({ sheets: [], more: 0 });
});
