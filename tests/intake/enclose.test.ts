import { simpleParser } from "mailparser";
import { PDFDict, PDFDocument, PDFHexString, PDFName, PDFString } from "pdf-lib";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { fillSheet } from "../../src/drawing/fill-sheet.ts";
import { enclose } from "../../src/intake/enclose.ts";
import { takeLetter } from "../../src/intake/take.ts";
import { makeReport, type Report } from "../../src/judging/report.ts";
import type { Reader } from "../../src/ports/reader.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import type { Attachment, FileKind } from "../../src/trade/attachment.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue, editions } from "../make/config.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { base64, bytesOf, mixed } from "../make/mime.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { readPdf } from "../make/read-pdf.ts";
import { directReader } from "../make/reader.ts";
import { reportOn } from "../make/report.ts";
import { aloneDevice, blankDevice, completeOrder } from "../make/sample.ts";

const reader = openPool({ log: { info() {}, warn() {} }, processes: 1 });
afterAll(() => reader.close());

/** Device sheets of one station, all of them too long in the first row. */
let faulty: readonly Uint8Array[] = [];
let sheets: readonly Sheet[] = [];
let attachments: readonly Attachment[] = [];
beforeAll(async () => {
  const [device] = await sampleSheets();
  if (device === undefined) throw new Error("no sample sheet");
  faulty = await Promise.all(
    ["1", "2", "3"].map((position) =>
      fillSheet(device.filled, { position, button1_row1: "KITCHN", button2_row1: "Ä".repeat(3) }),
    ),
  );
  sheets = await Promise.all(
    faulty.map(async (bytes, i) => {
      const { sheet } = await readPdf(bytes, { id: `1/${i + 1}`, file: `S-104-${i + 1}.pdf` });
      if (sheet === undefined) throw new Error("no sheet");
      return sheet;
    }),
  );
  attachments = sheets.map(({ id, file }, i) => ({ id, file, bytes: faulty[i] ?? new Uint8Array() }));
});

const report = () =>
  makeReport({ files: sheets.map(({ id, file }) => ({ id, file, kind: "sheet" })), sheets }, catalogue);

test("an answer brings the sender's own sheets back, with the numbers that it speaks of", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender, reader });
  const parts = faulty.map((bytes, i) => [
    "Content-Type: application/pdf",
    "Content-Transfer-Encoding: base64",
    `Content-Disposition: attachment; filename="${i === 0 ? "marked " : ""}S-104-${i + 1}.pdf"`,
    "",
    base64(bytes),
  ]);
  const letter = bytesOf([
    "From: Ines <ines@brightwire.example>",
    "To: orders@quillgate.example",
    "Message-ID: <1@brightwire.example>",
    "Subject: sheets",
    ...mixed("b", ...parts),
  ]);
  await takeLetter(desk, letter, new Date(0));
  const answer = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect(answer.attachments.map(({ filename }) => filename)).toEqual([
    "marked S-104-1.pdf",
    "marked S-104-2.pdf",
    "marked S-104-3.pdf",
    "S-104 plate.pdf",
    "S-104 position 4.pdf",
    expect.stringMatching(/^proof .*\.pdf$/),
  ]);
  const text = (answer.text ?? "").replaceAll(/\s+/g, " ");
  expect(text).toContain("They are your own sheets with the numbers of this letter beside the fields");

  // each outline has a number of the answer
  const [copy] = answer.attachments;
  const page = (await PDFDocument.load(copy?.content ?? new Uint8Array())).getPage(0);
  const notes = (page.node.Annots()?.asArray() ?? []).flatMap((ref) => {
    const note = page.doc.context.lookup(ref, PDFDict);
    const says = note.lookupMaybe(PDFName.of("Contents"), PDFString, PDFHexString)?.decodeText();
    return (/^Number ([\d, ]+): see the end\.$/.exec(says ?? "")?.[1] ?? "").split(", ").filter(Boolean);
  });
  expect(notes.length).toBeGreaterThan(1);
  for (const number of notes) expect(text).toContain(` ${number}. `);
  // and it is the same sheet still
  const again = await readPdf(copy?.content ?? new Uint8Array(), { id: "1/1", file: "S-104-1.pdf" });
  expect(again.sheet?.legends).toEqual(sheets[0]?.legends);
});

test("what would make the letter too large is left out, and said so", async () => {
  const enclosed = await enclose(report(), attachments, {
    reader: directReader,
    catalogue,
    editions,
    most: 100_000,
  });
  expect(enclosed.marked.length + enclosed.left).toBe(3);
  expect(enclosed.left).toBeGreaterThan(0);
  expect(composeAnswer(report(), catalogue, enclosed).text.replaceAll(/\s+/g, " ")).toMatch(
    /sheets? ha(s|ve) no marked copy, or this letter would be too large/,
  );
});

test("a sheet that is too large keeps none of the others from being marked, and is not tried", async () => {
  let tried = 0;
  const counting: Reader = {
    ...directReader,
    mark: (...args) => {
      tried++;
      return directReader.mark(...args);
    },
  };
  const heavy = attachments.map((one, i) => (i === 0 ? { ...one, bytes: new Uint8Array(2_000_000) } : one));
  const enclosed = await enclose(report(), heavy, { reader: counting, catalogue, editions, most: 1_000_000 });
  expect(enclosed.marked.map(({ file }) => file)).toEqual(["marked S-104-2.pdf", "marked S-104-3.pdf"]);
  expect([enclosed.left, tried]).toEqual([1, 2]);
});

test("copies that grow beyond what there is room for are soon made no more", async () => {
  let tried = 0;
  const swelling: Reader = {
    ...directReader,
    mark: () => {
      tried++;
      return Promise.resolve({ ok: true, value: { copy: new Uint8Array(2_000_000) } });
    },
  };
  const enclosed = await enclose(report(), attachments, {
    reader: swelling,
    catalogue,
    editions,
    most: 1_000_000,
  });
  expect([enclosed.marked.length, enclosed.left, tried]).toEqual([0, 3, 2]);
});

test("sheets over which readers are lost go without a copy, and soon no more are tried", async () => {
  let tried = 0;
  const dying = {
    ...directReader,
    mark: () => {
      tried++;
      return Promise.resolve({ ok: false, why: "died" } as const);
    },
  };
  const many = Array.from(
    { length: 20 },
    (_, i): Sheet => ({ ...(sheets[i % 3] as Sheet), id: `1/${i + 1}` }),
  );
  const crowd = makeReport(
    { files: many.map(({ id, file }) => ({ id, file, kind: "sheet" })), sheets: many },
    catalogue,
  );
  const enclosed = await enclose(
    crowd,
    many.map(({ id, file }) => ({ id, file, bytes: faulty[0] ?? new Uint8Array() })),
    { reader: dying, catalogue, editions },
  );
  expect(enclosed).toMatchObject({ marked: [], left: 18 });
  expect(tried).toBe(2);
});

test("a sheet whose pages nobody could look at is not tried", async () => {
  const unseen = sheets.map((sheet): Sheet => ({ ...sheet, doubts: [{ what: "unseen" }] }));
  const made = makeReport(
    { files: unseen.map(({ id, file }) => ({ id, file, kind: "sheet" })), sheets: unseen },
    catalogue,
  );
  expect((await enclose(made, attachments, { reader: directReader, catalogue, editions })).marked).toEqual(
    [],
  );
});

test("once marking has taken a minute, the rest go without a copy, and the answer says so", async () => {
  const timeout = vi.spyOn(AbortSignal, "timeout").mockReturnValue(AbortSignal.abort());
  const enclosed = await enclose(report(), attachments, { reader: directReader, catalogue, editions });
  expect(enclosed).toMatchObject({ marked: [], left: 3 });
  expect(timeout.mock.calls).toEqual([[60_000]]);
  timeout.mockRestore();
});

test("of the sheets that a list makes, those without a marked copy go with the answer; no others do", async () => {
  const list = { file: "stations.csv", row: 2, cells: {}, unread: [] };
  const [first, second, third] = attachments;
  if (first === undefined || second === undefined || third === undefined) throw new Error("no sample sheet");
  const own = [first, { ...second, list }, { ...third, list }, { ...third, id: "1/9", list }];
  const copying: Reader = {
    ...directReader,
    mark: (_bytes, { id }) =>
      Promise.resolve(
        id === second.id ? { ok: false, why: "died" } : { ok: true, value: { copy: new Uint8Array(9) } },
      ),
  };
  const made = await enclose(report(), own, { reader: copying, catalogue, editions });
  expect(made.marked.map(({ file }) => file)).toEqual(["marked S-104-1.pdf", "marked S-104-3.pdf"]);
  expect(made.filled).toEqual([{ file: second.file, type: "application/pdf", bytes: second.bytes }]);
});

test("it is said of which copies something was filled in", async () => {
  const copying: Reader = {
    ...directReader,
    mark: (_bytes, { id }) =>
      Promise.resolve({
        ok: true,
        value: { copy: new Uint8Array(9), ...(id === "1/2" ? { mended: true } : {}) },
      }),
  };
  const made = await enclose(report(), attachments, { reader: copying, catalogue, editions });
  expect(made.mended).toEqual(["marked S-104-2.pdf"]);
});

test("a sheet whose file is not at hand has no copy, and is none that was left out", async () => {
  const copying: Reader = {
    ...directReader,
    mark: () => Promise.resolve({ ok: true, value: { copy: new Uint8Array(9) } }),
  };
  const made = await enclose(report(), attachments.slice(1), { reader: copying, catalogue, editions });
  expect([made.marked.length, made.left]).toEqual([2, 0]);
});

test("sheets that are right have no copy", async () => {
  const right = reportOn(completeOrder());
  expect(right.verdict).toBe("pass");
  const own = completeOrder().map(({ id, file }) => ({ id, file, bytes: faulty[0] ?? new Uint8Array() }));
  expect(await enclose(right, own, { reader: directReader, catalogue, editions })).toMatchObject({
    marked: [],
    left: 0,
  });
});

test("a sender who seems to have no sheets gets blank ones, whoever used an old one gets the newer", async () => {
  const blanks = async (made: Report, own: readonly Attachment[] = []) => {
    const { blanks, marked } = await enclose(made, own, { reader: directReader, catalogue, editions });
    return [...marked, ...blanks].map(({ file }) => file);
  };
  const both = ["device-26c.pdf", "plate-26c.pdf", "station-list.xlsx"];
  expect(await blanks(reportOn([]))).toEqual(both);
  expect(await blanks(reportOn([], { reply: true }))).toEqual([]);
  const old = sheets.slice(0, 1).map(
    (sheet): Sheet => ({
      ...sheet,
      edition: { ...sheet.edition, replacedBy: "Device sheet, edition 26c" },
    }),
  );
  // no marked copy of a sheet that has to be filled in anew
  expect(await blanks(reportOn(old), attachments)).toEqual(["device-26c.pdf"]);
  // so does whoever sent something else in their place, or empty ones
  const file = (kind: FileKind) => ({ id: "1/9", file: "S-104.pdf", kind });
  for (const kind of ["scanned", "picture", "printed", "saved-blank", "locked", "dynamic-form"] as const)
    expect(await blanks(reportOn([], { files: [file(kind)] })), kind).toEqual(both);
  expect(await blanks(reportOn([blankDevice()]))).toEqual(both);
  expect(await blanks(reportOn(completeOrder(), { files: [file("scanned")] }))).toEqual([]);
  expect(await blanks(reportOn([], { files: [file("damaged")] }))).toEqual([]);
  // and whoever asks for some in a reply
  const words = "Could you send me a blank plate sheet?";
  const asking = makeReport(
    { files: [], sheets: [], reply: true, statements: [{ kind: "said", where: "text", words }] },
    catalogue,
  );
  expect(await blanks(asking)).toEqual(both);
  const text = composeAnswer(reportOn([]), catalogue, {
    ...(await enclose(reportOn([]), [], { reader: directReader, catalogue, editions })),
  }).text.replaceAll(/\s+/g, " ");
  expect(text).toContain(
    "Enclosed: device-26c.pdf, plate-26c.pdf and station-list.xlsx, to be filled in on a computer",
  );
  // nobody writes for what is enclosed; a desk that draws none says whom to write to
  expect(text).not.toMatch(/blank/i);
  expect(composeAnswer(reportOn([]), catalogue).text.replaceAll(/\s+/g, " ")).toContain(
    "For blank sheets write to orders@quillgate.example.",
  );
});

test("sheets that came by way of a machine are for a person to see, and none is dropped", async () => {
  const desk = await temporaryDesk();
  const parts = faulty
    .slice(0, 1)
    .map((bytes) => [
      "Content-Type: application/pdf",
      "Content-Transfer-Encoding: base64",
      "",
      base64(bytes),
    ]);
  const letter = (id: string, line: string) =>
    bytesOf([
      line,
      "From: Ines <ines@brightwire.example>",
      "To: orders@quillgate.example",
      `Message-ID: <${id}@brightwire.example>`,
      ...mixed("b", ...parts),
    ]);
  const stateOf = async (bytes: Uint8Array) =>
    (await desk.store.letters.read((await takeLetter(desk, bytes, new Date(0))).letter)).state;
  expect(await stateOf(letter("1", "X-Loop: alias@brightwire.example"))).toBe("held");
  expect(await stateOf(letter("2", "Precedence: bulk"))).toBe("held");
  expect(await stateOf(letter("3", "Auto-Submitted: auto-forwarded"))).toBe("held");
  // an empty return path is no delivery report
  expect(await stateOf(letter("4", "Return-Path: <>"))).toBe("held");
  const empty = bytesOf([
    "Precedence: bulk",
    "From: a@b.example",
    "To: orders@quillgate.example",
    "",
    "Buy!",
  ]);
  expect(await stateOf(empty)).toBe("held");
});

/** A device that stands alone, with pen strokes over a field; each station's is another field, so that none are one problem. */
const penned = (nth: number, picture = `p${nth}`): Sheet =>
  aloneDevice({
    id: `1/${nth}`,
    file: `T-${nth}.pdf`,
    mark: `T-${nth}`,
    doubts: [
      {
        what: nth > 5 ? "handwriting" : "typed-over",
        place: penPlaces[nth % 5] ?? "row.1.1",
        seen: { page: 1, box: [0, 0, 9, 9], picture },
      },
    ],
  });
const penPlaces = ["row.1.1", "row.1.2", "row.2.1", "row.2.2", "row.3.1"] as const;
const picturesOf = async (sizes: readonly number[], names?: readonly string[]) => {
  const own = sizes.map((_, i) => penned(i + 1, names?.[i]));
  const pictures = new Map(sizes.map((size, i) => [names?.[i] ?? `p${i + 1}`, new Uint8Array(size)]));
  const enclosed = await enclose(reportOn(own), [], { reader: directReader, catalogue, editions, pictures });
  return enclosed.pictures.map(({ name }) => name);
};

test("of what was seen on pages an answer shows eight pictures", async () => {
  expect(await picturesOf(Array.from({ length: 9 }, () => 10))).toEqual(
    ["1", "2", "3", "4", "5", "6", "7", "8"].map((nth) => `p${nth}`),
  );
});

test("pictures of 200,000 bytes go with an answer; one for which there is no room keeps out no smaller one", async () => {
  expect(await picturesOf([120_000, 80_001, 80_000, 1])).toEqual(["p1", "p3"]);
});

test("a picture of two problems goes with it once, and one that nobody has not at all", async () => {
  expect(await picturesOf([10, 10, 10], ["same", "same", "other"])).toEqual(["same", "other"]);
  const enclosed = await enclose(reportOn([penned(1)]), [], { reader: directReader, catalogue, editions });
  expect(enclosed.pictures).toEqual([]);
});

test.each([
  ["S-104.pdf", "marked S-104.pdf"],
  ["marked S-104.pdf", "marked S-104.pdf"],
  ["Marked marked S-104.pdf", "marked S-104.pdf"],
  ["un marked S-104.pdf", "marked un marked S-104.pdf"],
])("the marked copy of %s is %s", async (file, name) => {
  const [sheet, attachment] = [sheets[0], attachments[0]];
  if (sheet === undefined || attachment === undefined) throw new Error("no sample sheet");
  const one = makeReport(
    { files: [{ id: sheet.id, file, kind: "sheet" }], sheets: [{ ...sheet, file }] },
    catalogue,
  );
  const copying: Reader = {
    ...directReader,
    mark: () => Promise.resolve({ ok: true, value: { copy: new Uint8Array(9) } }),
  };
  const { marked } = await enclose(one, [attachment], { reader: copying, catalogue, editions });
  expect(marked.map((copy) => copy.file)).toEqual([name]);
});
