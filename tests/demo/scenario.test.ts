import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { simpleParser } from "mailparser";
import { beforeAll, describe, expect, test } from "vitest";
import { type BuiltLetter, buildLetters } from "../../src/demo/build.ts";
import type { NoteDescription } from "../../src/demo/describe.ts";
import { loadScenario } from "../../src/demo/load.ts";
import { playNote } from "../../src/demo/notes.ts";
import { sendAlarms } from "../../src/intake/alarm.ts";
import { answerId } from "../../src/intake/compose.ts";
import { takeLetter } from "../../src/intake/take.ts";
import type { Store } from "../../src/ports/store.ts";
import { managingIn } from "../../src/settings/managing.ts";
import { readSettings } from "../../src/settings/settings.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { maker } from "../make/config.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { readerOf } from "../make/reader.ts";
import { linesOf, sentencesOf, tooLong } from "../make/sentences.ts";
import { answerTo } from "../make/thread.ts";

const scenario = await loadScenario("fixtures");
const settings = readSettings(readFileSync("config/burin.yaml", "utf8"), "burin.yaml");
const managing = settings.ok ? managingIn(settings.value) : [];
const from = "orders@quillgate.example";
const built: BuiltLetter[] = [];
const records = new Map<string, LetterRecord>();
const sender = keepingSender();
let store: Store;
const room = "engraving@quillgate.example";
/** Notes in the order in which they were played, and what their orders came to. */
const played: NoteDescription[] = [];
const verdicts: (string | undefined)[] = [];
/** What notes sent; and all that was told to anybody, in order. */
const noted = new Set<Uint8Array>();
const told: string[] = [];

beforeAll(async () => {
  store = await openStore(openSqlite(":memory:"), openBlobs(mkdtempSync(join(tmpdir(), "burin-"))));
  let now = new Date(0);
  const made = await temporaryDesk({
    ...maker,
    reader: readerOf(maker),
    store,
    sender,
    clock: { now: () => now },
  });
  const desk = { ...made, rules: { ...made.rules, room, managing } };
  const left = [...scenario.notes];
  const options = { to: from, answerId: (letter: Uint8Array) => answerId(letter, from, desk.secret) };
  for await (const letter of buildLetters(scenario.letters, { ...maker, ...scenario }, options)) {
    await playUntil(Date.parse(letter.description.date));
    built.push(letter);
    now = new Date(letter.description.date);
    const { letter: id } = await takeLetter(desk, letter.bytes, now);
    const record = await store.letters.read(id);
    records.set(letter.description.name, record);
    told.push(await answerTo(desk, record));
    await sendAlarms(desk);
  }
  await playUntil(Number.POSITIVE_INFINITY);

  /** What our own people do before a moment. */
  async function playUntil(moment: number): Promise<void> {
    for (let [note] = left; note !== undefined && Date.parse(note.date) < moment; [note] = left) {
      left.shift();
      now = new Date(note.date);
      const before = sender.kept.length;
      await playNote(desk, note, (name) => records.get(name)?.letter ?? 0);
      played.push(note);
      for (const { bytes } of sender.kept.slice(before)) {
        noted.add(bytes);
        told.push((await simpleParser(Buffer.from(bytes))).text ?? "");
      }
      const [order] = "order" in note ? await store.orders.named(note.order) : [];
      verdicts.push(order?.verdict);
    }
  }
}, 300_000);

describe.each(scenario.letters)("$name", ({ name, expects }) => {
  test("comes to what its description says", () => {
    const record = records.get(name);
    expect({
      verdict: record?.verdict,
      problems: [...new Set(record?.problems.map(({ check }) => check))].toSorted(),
    }).toEqual({ verdict: expects.verdict, problems: expects.problems.toSorted() });
  });
});

test("notes bring their orders to what their descriptions say", () => {
  expect(played).toHaveLength(scenario.notes.length);
  const come = played.map((note, i) => [note.date, "comes_to" in note ? verdicts[i] : undefined]);
  expect(come).toEqual(played.map((note) => [note.date, "comes_to" in note ? note.comes_to : undefined]));
});

test("the story of one order over three weeks reads as it did when somebody last read it whole", async () => {
  const story = told.filter((text) => /SM-610|Saltmarsh|With it came T-2\.pdf/.test(text));
  expect(story.length).toBeGreaterThan(12);
  const alarms = sender.kept.filter(({ recipient }) => recipient === room);
  expect(alarms).toHaveLength(4);
  const rooms = await Promise.all(
    alarms.map(async ({ bytes }) => (await simpleParser(Buffer.from(bytes))).text),
  );
  const all = [...story, "What the engraving room was told:", ...rooms].join(`\n${"#".repeat(78)}\n\n`);
  await expect(all).toMatchFileSnapshot("three-weeks.txt");
});

test("an answer says where sheets have what they leave out", () => {
  const answer = told.find((text) => text.startsWith("PASS: order DT-318")) ?? "";
  expect(answer.replaceAll(/\s+/g, " ")).toContain(
    "Left out on 2 sheets: the project, the contact, the bill-to address and the ship-to address. Taken from archive plate.pdf. Nothing to do if it is the same for all of them.",
  );
});

test("no sentence of any answer is longer than a tired reader can hold", async () => {
  const names = [...records.values()].flatMap(({ attachments }) => attachments.map(({ file }) => file));
  const pages: string[] = [];
  for (const { bytes } of sender.kept) {
    const { html, attachments } = await simpleParser(Buffer.from(bytes));
    names.push(...attachments.flatMap(({ filename }) => filename ?? []));
    if (typeof html === "string") pages.push(html);
  }
  expect(pages.length).toBeGreaterThanOrEqual(scenario.letters.length);
  expect(tooLong(sentencesOf(pages.flatMap(linesOf), names))).toEqual([]);
});

test("there are at least 30 letters and 14 orders over three weeks", async () => {
  expect(scenario.letters.length).toBeGreaterThanOrEqual(30);
  const orders = new Set([...records.values()].flatMap((record) => record.orders));
  expect(orders.size).toBeGreaterThanOrEqual(14);
  const days = scenario.letters.map(({ date }) => Date.parse(date.slice(0, 10)));
  expect((Math.max(...days) - Math.min(...days)) / 86_400_000).toBeGreaterThanOrEqual(17);
});

test("every letter has one answer, in its thread, sent to its sender, or to the buyer whose order a manager agrees to", async () => {
  const answers = sender.kept.filter(({ bytes, recipient }) => !noted.has(bytes) && recipient !== room);
  expect(answers.length).toBe(scenario.letters.length);
  for (const [i, { bytes, recipient }] of answers.entries()) {
    const answer = await simpleParser(Buffer.from(bytes));
    const letter = await simpleParser(Buffer.from(built[i]?.bytes ?? ""));
    expect(answer.inReplyTo).toBe(letter.messageId);
    const writer = letter.from?.value[0]?.address;
    expect(recipient).toBe(writer === "ana@quillgate.example" ? "noor@tidewick.example" : writer);
  }
});

test("built again, the letters are the same bytes", async () => {
  const again: BuiltLetter[] = [];
  const { secret } = await temporaryDesk({ ...maker, store, sender });
  const options = { to: from, answerId: (letter: Uint8Array) => answerId(letter, from, secret) };
  for await (const letter of buildLetters(scenario.letters, { ...maker, ...scenario }, options))
    again.push(letter);
  const differs = again.filter(({ bytes }, i) => Buffer.compare(bytes, built[i]?.bytes ?? Buffer.of()) !== 0);
  expect(again.length).toBe(built.length);
  expect(differs.map(({ description }) => description.name)).toEqual([]);
});

test("the same letters, read again, are answered no second time", async () => {
  const before = sender.kept.length;
  const desk = await temporaryDesk({ store, sender });
  for (const { bytes, description } of built) {
    const taken = await takeLetter(desk, bytes, new Date(description.date));
    expect(taken.again).toBe(true);
  }
  expect(sender.kept.length).toBe(before);
});
