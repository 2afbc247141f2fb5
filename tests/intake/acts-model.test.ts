import * as fc from "fast-check";
import { simpleParser } from "mailparser";
import { expect, onTestFinished, test } from "vitest";
import { sendAlarms } from "../../src/intake/alarm.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import {
  type Legend,
  type Number,
  newLedger,
  numbers,
  openIn,
  people,
  spots,
  type Typed,
  type Who,
} from "../make/acts/ledger.ts";
import { counts, releasesHold } from "../make/acts/releases.ts";
import { type Step, take } from "../make/acts/steps.ts";
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

const who = fc.constantFrom<Who>("buyer", "buyer", "colleague", "stranger");

const order = fc.constantFrom<Number>("BW-2207", "BW-2207", "KF-31");

const spot = fc.constantFrom(...spots);

const typed: fc.Arbitrary<Typed> = fc.record({
  spot,
  legend: fc.constantFrom<Legend>(
    "ENTRY",
    "LOUNGE",
    "STAIRS",
    "ENTRY",
    "LOUNGE",
    "SALONA",
    "MAIN SW",
    "A VERY LONG LEGEND",
  ),
  badPhone: fc.constantFrom(false, false, false, false, true),
});

const few = fc.constantFrom(false, false, false, true);

const pick = fc.nat(5);

const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant("send" as const),
      who,
      order,
      sheets: fc.array(typed, { maxLength: 4 }),
      scan: few,
      words: few,
      inReply: fc.boolean(),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant("answer" as const),
      who,
      order,
      pick,
      says: fc.constantFrom("YES" as const, "YES" as const, "NO" as const),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant("cancel" as const),
      who,
      order,
      what: fc.constantFrom(...spots, "S-1" as const, "K-40" as const, "order" as const),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant("settle" as const),
      order,
      pick,
      does: fc.constantFrom("yes" as const, "yes" as const, "waive" as const, "no" as const, "say" as const),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant("read" as const), pick }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant("place" as const), order, pick, spot, to: order }) },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant("release" as const),
      order,
      how: fc.constantFrom("person" as const, "person" as const, "itself" as const, "torn" as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record(
      {
        kind: fc.constant("cut" as const),
        order,
        mark: fc.constantFrom("S-1" as const, "K-40" as const, "T-9" as const, "L-60" as const),
      },
      { requiredKeys: ["kind", "order"] },
    ),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("let in" as const), pick }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("put aside" as const), pick }) },
);

/** An order that is released, perhaps cut, changed or sent as it was, perhaps cancelled, settled and released again. */
const again: fc.Arbitrary<Step[]> = fc
  .record({
    order,
    how: fc.constantFrom("person" as const, "itself" as const, "torn" as const),
    isCut: fc.boolean(),
    isCancelled: few,
    legend: fc.constantFrom<Legend>("ENTRY", "LOUNGE", "STAIRS", "SALONA"),
    settles: fc.nat(3),
  })
  .map(({ order: number, how, isCut, isCancelled, legend, settles }): Step[] => {
    const cut: Step = { kind: "cut", order: number };
    const spot = number === "KF-31" ? "L-60 alone" : "T-9 alone";
    const cancel: Step = { kind: "cancel", who: "buyer", order: number, what: spot };
    return [
      { kind: "release", order: number, how },
      ...(isCut ? [cut] : []),
      {
        kind: "send",
        who: "buyer",
        order: number,
        sheets: [{ spot, legend, badPhone: false }],
        scan: false,
        words: false,
        inReply: true,
      },
      ...(isCancelled ? [cancel] : []),
      ...Array.from(
        { length: settles },
        (): Step => ({ kind: "settle", order: number, pick: 0, does: "yes" }),
      ),
      { kind: "release", order: number, how: "person" },
      cut,
    ];
  });

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
