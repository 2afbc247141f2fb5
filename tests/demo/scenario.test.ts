import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { simpleParser } from "mailparser";
import { beforeAll, describe, expect, test } from "vitest";
import { type BuiltLetter, buildLetters } from "../../src/demo/build.ts";
import { loadScenario } from "../../src/demo/load.ts";
import { answerId } from "../../src/intake/compose.ts";
import { takeLetter } from "../../src/intake/take.ts";
import type { Store } from "../../src/ports/store.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { maker } from "../make/config.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { readerOf } from "../make/reader.ts";

const scenario = await loadScenario("fixtures");
const from = "orders@quillgate.example";
const built: BuiltLetter[] = [];
const records = new Map<string, LetterRecord>();
const sender = keepingSender();
let store: Store;

beforeAll(async () => {
  store = await openStore(openSqlite(":memory:"), openBlobs(mkdtempSync(join(tmpdir(), "burin-"))));
  const desk = await temporaryDesk({ ...maker, reader: readerOf(maker), store, sender });
  const options = { to: from, answerId: (letter: Uint8Array) => answerId(letter, from, desk.secret) };
  for await (const letter of buildLetters(scenario.letters, { ...maker, ...scenario }, options)) {
    built.push(letter);
    const { letter: id } = await takeLetter(desk, letter.bytes, new Date(letter.description.date));
    records.set(letter.description.name, await store.letters.read(id));
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

test("there are at least 30 letters and 14 orders over two days", async () => {
  expect(scenario.letters.length).toBeGreaterThanOrEqual(30);
  const orders = new Set([...records.values()].flatMap((record) => record.orders));
  expect(orders.size).toBeGreaterThanOrEqual(14);
  expect(new Set(scenario.letters.map(({ date }) => date.slice(0, 10))).size).toBe(2);
});

test("every letter has one answer, sent to its sender, in its thread", async () => {
  expect(sender.kept.length).toBe(scenario.letters.length);
  for (const [i, { bytes }] of sender.kept.entries()) {
    const answer = await simpleParser(Buffer.from(bytes));
    const letter = await simpleParser(Buffer.from(built[i]?.bytes ?? ""));
    expect(answer.inReplyTo).toBe(letter.messageId);
    expect(sender.kept[i]?.recipient).toBe(letter.from?.value[0]?.address);
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
