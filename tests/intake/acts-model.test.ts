import * as fc from "fast-check";
import { simpleParser } from "mailparser";
import { expect, onTestFinished, test } from "vitest";
import { sendAlarms } from "../../src/intake/alarm.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { newLedger, numbers, openIn, people } from "../make/acts/ledger.ts";
import { counts, releasesHold } from "../make/acts/releases.ts";
import { type Step, take } from "../make/acts/steps.ts";
import { again, step } from "../make/acts/stories.ts";
import { allLetters, at, authority, recordOf, type Story, snapshot } from "../make/acts/world.ts";
import { keepingSender, temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { type QuickSheet, quickReader } from "../make/quick.ts";

/** The sheets that stand are those of the ledger, and no order passes while something is open in it. */
async function holds({ desk, ledger }: Story): Promise<void> {
  // What is engraved is told to nobody outside.
  const done = ["sent", "silent"];
  expect(Object.keys(await desk.store.letters.states()).filter((state) => !done.includes(state))).toEqual([]);
  for (const number of numbers) {
    const record = await recordOf(desk, number);
    const has = (record?.sheets ?? []).map(
      (sheet) =>
        `${sheet.file}: ${sheet.mark} ${sheet.kind === "plate" ? "plate" : sheet.standing === "alone" ? "alone" : sheet.position}`,
    );
    const should = [...ledger.orders[number].values()].map(({ file, spot }) => `${file}: ${spot}`);
    expect(has.toSorted()).toEqual(should.toSorted());
    expect((record?.withdrawn ?? []).map(({ sheet }) => sheet.file).toSorted()).toEqual(
      ledger.withdrawn[number].toSorted(),
    );
    if (record?.verdict === "pass") {
      expect(openIn(ledger, number)).toEqual([]);
      tally.passed++;
    }
  }
}

/** What a stranger is told has nothing that the buyer or his colleague sent. */
async function tellsNothing({ desk, ledger }: Story, letter: number): Promise<void> {
  const bytes = (await desk.store.answers.of(letter))?.bytes;
  const { subject = "", text = "", html } = await simpleParser(Buffer.from(bytes ?? ""));
  const told = `${subject} ${text} ${String(html)}`.replaceAll(/\s+/g, " ");
  const own = JSON.stringify(ledger.sent.at(-1));
  const theirs = ledger.sent
    .filter(({ from }) => from !== people.stranger)
    .flatMap(({ sheets = [] }) =>
      sheets.flatMap(({ file, values }) => [file, values["station_mark"], values["button1_row1"]]),
    );
  const secret = [...new Set(theirs)].filter((word) => word !== undefined && !own.includes(word));
  expect(secret.filter((word) => told.includes(word ?? ""))).toEqual([]);
}

/** Every sheet that does not stand was told of: it was replaced, came late, or was withdrawn; a held one waits. */
async function nothingVanished({ desk, ledger }: Story): Promise<void> {
  const letters = await allLetters(desk);
  const told = new Set<string>(Object.values(ledger.withdrawn).flat());
  for (const { problems } of letters)
    for (const { check, facts } of problems)
      if (["sheet-replaced", "same-sheet-twice"].includes(check))
        for (const fact of Object.values(facts).flat()) told.add(String(fact));
  for (const sheets of Object.values(ledger.orders)) for (const { file } of sheets.values()) told.add(file);
  const all = ledger.sent.flatMap(({ sheets = [], from }) => sheets.map((sheet) => ({ ...sheet, from })));
  const values = (sheet: QuickSheet): string => JSON.stringify(sheet.values);
  // What came again unchanged is told by the name of the sheet that took its place.
  const again = new Set(all.filter(({ file }) => told.has(file)).map(values));
  const vanished = all.filter(
    (sheet) => sheet.from !== people.stranger && !told.has(sheet.file) && !again.has(values(sheet)),
  );
  expect(vanished).toEqual([]);
  const kept = new Set(letters.flatMap(({ attachments }) => attachments.map(({ file }) => file)));
  expect(all.filter(({ file }) => !kept.has(file))).toEqual([]);
}

const room = "engraving@quillgate.example";

/** What the engraving room was told, each with its subject decoded as plain text. */
function alarmsOf({ alarms }: Story): string[] {
  return alarms.flatMap(({ recipient, bytes }) =>
    recipient === room ? Buffer.from(bytes).toString("latin1") : [],
  );
}

/** The engraving room is told of each letter that leaves a released order open, and of no stranger's. */
function alarmsHold({ ledger }: Story, step: Step, told: readonly string[]): void {
  if (Object.values(ledger.released).every((one) => one === undefined)) expect(told).toEqual([]);
  if (!("who" in step)) return;
  if (step.who === "stranger") expect(told).toEqual([]);
  else if (step.kind === "send" && ledger.released[step.order] !== undefined) {
    // A scan alone names no order.
    const isAbout = step.sheets.length > 0 || step.words || step.inReply;
    if (isAbout && openIn(ledger, step.order).length > 0) {
      expect(told.filter((one) => one.includes(step.order))).toHaveLength(1);
      tally.alarms++;
    }
  }
}

const tally = { stories: 0, steps: 0, passed: 0, alarms: 0 };

/** Plays a story, and holds the record against the ledger after each step. */
async function play(steps: readonly Step[], folder: string): Promise<Story> {
  const store = await openStore(openSqlite(":memory:"), openBlobs(folder));
  const ledger = newLedger();
  const desk = await temporaryDesk({ reader: quickReader, store, clock: { now: () => at(ledger.minute) } });
  const rules = {
    ...desk.rules,
    authority,
    room,
    releasing: { afterHours: 24, buyers: ["brightwire.example"], put: () => Promise.resolve("") },
    mostAnswers: { toOne: 999, toAll: 999, toOneADay: 999, inThreadADay: 999 },
  };
  const packages = temporaryFolder();
  const sender = keepingSender();
  const story: Story = { desk: { ...desk, rules, sender }, ledger, packages, alarms: sender.kept };
  const right = { legend: "ENTRY", badPhone: false } as const;
  const whole = { kind: "send", who: "buyer", scan: false, words: false, inReply: false } as const;
  const begin: Step[] = [
    { ...whole, order: "BW-2207", sheets: [{ ...right, spot: "T-9 alone" }] },
    { ...whole, order: "KF-31", sheets: [{ ...right, spot: "L-60 alone" }] },
  ];
  for (const step of [...begin, ...steps]) {
    const isStranger = "who" in step && step.who === "stranger";
    const [before, letters] = [await snapshot(story.desk), ledger.sent.length];
    const alarmed = alarmsOf(story).length;
    await take(story, step);
    while (await sendAlarms(story.desk));
    alarmsHold(story, step, alarmsOf(story).slice(alarmed));
    tally.steps++;
    if (isStranger) expect(await snapshot(story.desk)).toBe(before);
    if (isStranger && ledger.sent.length > letters)
      await tellsNothing(story, (await allLetters(story.desk)).length);
    await holds(story);
    await releasesHold(story);
  }
  await nothingVanished(story);
  const { broken, differ, older } = await store.verify();
  expect({ broken, differ, older }).toEqual({ broken: undefined, differ: [], older: 0 });
  tally.stories++;
  return story;
}

test("whoever does whatever, no order passes with something open, nothing vanishes, and no stranger has a part", async () => {
  const folder = temporaryFolder();
  onTestFinished(() =>
    process.env["BURIN_RUNS"] === undefined ? undefined : console.info({ ...tally, ...counts }),
  );
  await fc.assert(
    fc.asyncProperty(
      fc.option(again),
      fc.array(step, { maxLength: 14, size: "max" }),
      async (first, steps) => {
        const { desk } = await play([...(first ?? []), ...steps], folder);
        await desk.store.close();
      },
    ),
    // The same stories in every run; others, with BURIN_RUNS, as many as it says.
    process.env["BURIN_RUNS"] === undefined
      ? { numRuns: 20, seed: 20_261_109 }
      : { numRuns: Number(process.env["BURIN_RUNS"]) },
  );
}, 3_600_000);
