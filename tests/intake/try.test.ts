import { expect, test } from "vitest";
import { tryFiles } from "../../src/intake/try.ts";
import type { Reader } from "../../src/ports/reader.ts";
import { catalogue, editions } from "../make/config.ts";
import { aloneAt, type QuickSheet, quickBytes, quickReader } from "../make/quick.ts";

const dated = new Date("2026-11-09T15:00:00Z");
const file = (sheet: QuickSheet, name = sheet.file) => ({
  name,
  bytes: new TextEncoder().encode(JSON.stringify(sheet)),
});
const letter = (name: string, text: string, ...sheets: readonly QuickSheet[]) => ({
  name,
  bytes: quickBytes({ id: name, dated, receivedAt: dated, text, sheets }),
});

function tried(given: Parameters<typeof tryFiles>[1], reader: Reader = quickReader) {
  const desk = { reader, catalogue, editions, timeZone: "America/Chicago", clock: { now: () => dated } };
  return tryFiles(desk, given, {
    files: 2,
    each: 5_000,
    total: 10_000,
    depth: 1,
    time: { processorMs: 9, clockMs: 9 },
  });
}

test("loose files count as one letter, and each letter, in whatever capitals its name ends, as one of its own", async () => {
  const { report, attachments } = await tried([
    letter("first.eml", "", aloneAt("T-1", "ENTRY")),
    file(aloneAt("T-2", "ENTRY")),
    letter("SECOND.EML", "", aloneAt("T-3", "ENTRY")),
    file(aloneAt("T-4", "ENTRY"), "third.eml.pdf"),
  ]);
  expect(attachments.map(({ id, file: name }) => `${id} ${name}`)).toEqual([
    "0/1 T-2.pdf",
    "0/2 third.eml.pdf",
    "1/1 T-1.pdf",
    "2/1 T-3.pdf",
  ]);
  expect(report).toMatchObject({ verdict: "pass", held: false });
  expect(report.orders.map(({ order }) => [order.number, order.sheets.length])).toEqual([["BW-2207", 4]]);
});

test("of loose files no more are opened than the caps allow", async () => {
  const given = ["T-1", "T-2", "T-3"].map((mark) => file(aloneAt(mark, "ENTRY")));
  const { report } = await tried(given);
  expect(report.files.map((one) => one.file.kind)).toEqual(["sheet", "sheet", "too-large"]);
});

test("what any of the letters says is asked about, as in a letter that came", async () => {
  const sheet = aloneAt("T-1", "ENTRY");
  const checks = async (...texts: readonly string[]): Promise<string[]> => {
    const { report } = await tried([file(sheet), ...texts.map((text, n) => letter(`${n}.eml`, text))]);
    return [...report.problems, ...report.orders.flatMap(({ problems }) => problems)].map(
      ({ check }) => check,
    );
  };
  expect(await checks("", "")).toEqual([]);
  expect(await checks("Please engrave it in red.", "")).toEqual(["letter-says-more"]);
  expect(await checks("", "Please engrave it in red.")).toEqual(["letter-says-more"]);
  expect(await checks("", "The rest will follow.")).toEqual(["more-announced"]);
});

test("a letter that cannot be opened makes the whole unsafe, whichever it is", async () => {
  const dies: Reader = {
    ...quickReader,
    letter: (bytes, time) =>
      Buffer.from(bytes).includes("Message-ID: <bad.eml@")
        ? Promise.resolve({ ok: false, why: "died" })
        : quickReader.letter(bytes, time),
  };
  const [good, bad] = [letter("good.eml", ""), letter("bad.eml", "")];
  const wording = async (...given: Parameters<typeof tried>[0]): Promise<string[]> =>
    (await tried(given, dies)).report.problems.map((problem) => `${problem.check}: ${problem.wording}`);
  expect(await wording(good, bad)).toEqual(["no-sheet: unsafe"]);
  expect(await wording(bad, good)).toEqual(["no-sheet: unsafe"]);
  expect(await wording(good)).toEqual(["no-sheet: nothing"]);
});
