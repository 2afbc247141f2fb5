import { type Attachment, simpleParser } from "mailparser";
import { afterAll, expect, test } from "vitest";
import { fillSheet } from "../../src/drawing/fill-sheet.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { forms } from "../make/config.ts";
import { temporaryDesk } from "../make/desk.ts";
import { answerTo, post, type Sent } from "../make/thread.ts";

const reader = openPool({ log: { info() {}, warn() {} }, processes: 1, forms: await forms() });
afterAll(() => reader.close());

const plate: Sent = { mark: "B-1", kind: "plate", legend: ["SPA"], fill: { gangs: "2" } };
const noHeader = {
  project: "",
  "contact.name": "",
  "contact.email": "",
  "contact.phone": "",
  "bill.name": "",
  "bill.street": "",
  "bill.city": "",
  "bill.state": "",
  "bill.postcode": "",
};
const first = (fill: Readonly<Record<string, string>>): Sent => ({
  mark: "B-1",
  legend: ["SAUNA"],
  fill: { standing: "in-plate", position: "1", ...fill },
});

async function filesOf(desk: Desk, { letter }: LetterRecord): Promise<Attachment[]> {
  const answer = await desk.store.answers.of(letter);
  return (await simpleParser(Buffer.from(answer?.bytes ?? ""))).attachments;
}

const checksOf = ({ problems }: LetterRecord): string[] =>
  problems.map(({ check }) => check).filter((check) => check !== "same-file-name-twice");

/** Sends back the files of an answer that are called so, with legends where they are not the sender's own. */
async function sendBack(desk: Desk, to: LetterRecord, ...names: readonly string[]): Promise<LetterRecord> {
  const files = (await filesOf(desk, to)).flatMap(({ filename = "", content }) =>
    names.includes(filename) ? [{ file: filename, bytes: new Uint8Array(content) }] : [],
  );
  expect(files.map(({ file }) => file)).toEqual(names);
  const filled = await Promise.all(
    files.map(async ({ file, bytes }) => ({
      file,
      bytes: file.startsWith("marked")
        ? bytes
        : await fillSheet(bytes, { layout: "D2", button1_row1: "SHOWER", button2_row1: "OFF" }),
    })),
  );
  return post(desk, { to, files: filled });
}

test("a header is typed once, what is missing comes prefilled, and the mended copy need only be sent back", async () => {
  const desk = await temporaryDesk({ reader });
  const sent = await post(desk, { sheets: [plate, first({ ...noHeader, gangs: "" })] });
  expect([sent.verdict, checksOf(sent)]).toEqual([
    "fail",
    expect.arrayContaining(["field-missing", "header-left-out", "plate-missing-devices"]),
  ]);
  const text = (await answerTo(desk, sent)).replaceAll(/\s+/g, " ");
  expect(text).toContain("Left out on 1 sheet: the project, the contact and the bill-to address.");
  expect(text).toContain(
    "We have filled in what your other sheets say on marked B-1 (2).pdf. The last page names the fields.",
  );
  expect(text).toContain(
    "Enclosed: B-1 position 2.pdf. It is the missing sheet, with what your other sheets say.",
  );

  const reply = await sendBack(desk, sent, "marked B-1 (2).pdf", "B-1 position 2.pdf");
  expect([reply.verdict, checksOf(reply)]).toEqual(["pass", ["sheet-replaced"]]);
  const [order] = await desk.store.orders.named("FM-72");
  expect(order?.sheets.map(({ billTo }) => billTo.street)).toEqual(Array(3).fill("14 Mill Race"));
});

test("what was inherited is in the record, and stays when the sheet that it came from is replaced", async () => {
  const desk = await temporaryDesk({ reader });
  const sent = await post(desk, { sheets: [plate, first({ ...noHeader, gangs: "2" })] });
  expect([sent.verdict, checksOf(sent)]).toEqual(["waiting", ["header-left-out", "plate-missing-devices"]]);
  const again = await post(desk, {
    to: sent,
    date: "2026-11-09T14:30:00Z",
    sheets: [{ ...plate, legend: ["STEAM"] }],
  });
  expect(again.verdict).toBe("waiting");
  const done = await sendBack(desk, again, "B-1 position 2.pdf");
  expect(done.verdict).toBe("pass");
  const [order] = await desk.store.orders.named("FM-72");
  for (const sheet of order?.sheets ?? [])
    expect(sheet).toMatchObject({ project: "Mill Race Baths", contact: { name: "Greta Sorley" } });
});

test("what we sent out and came back as it was is put aside beside the filled one, and said", async () => {
  const desk = await temporaryDesk({ reader });
  const sent = await post(desk, { sheets: [plate, first({ gangs: "2" })] });
  const [out] = (await filesOf(desk, sent)).filter(({ filename }) => filename === "B-1 position 2.pdf");
  const bytes = new Uint8Array(out?.content ?? []);
  const values = { layout: "D2", button1_row1: "SHOWER", button2_row1: "OFF" };
  const files = [
    { file: "B-1 position 2.pdf", bytes },
    { file: "B-1 shower.pdf", bytes: await fillSheet(bytes, values) },
  ];
  const both = await post(desk, { to: sent, files });
  expect([both.verdict, checksOf(both)]).toEqual(["pass", ["sheet-replaced"]]);
  const text = (await answerTo(desk, both)).replaceAll(/\s+/g, " ");
  expect(text).toContain(
    "B-1 position 2.pdf has no legend and no layout, and B-1 shower.pdf is for the same place: B-1 position 2.pdf was put aside.",
  );
  expect(text).toContain("2 sheets came with this letter, 2 came earlier.");
  const [order] = await desk.store.orders.named("FM-72");
  expect(order?.sheets.map(({ file }) => file)).toEqual(["B-1.pdf", "B-1 (2).pdf", "B-1 shower.pdf"]);
  expect((await desk.store.verify()).differ).toEqual([]);

  const alone = await post(desk, { to: both, date: "2026-11-09T15:00:00Z", files: files.slice(0, 1) });
  expect(alone.verdict).toBe("fail");
});
