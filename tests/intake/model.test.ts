import { DatabaseSync } from "node:sqlite";
import * as fc from "fast-check";
import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { wallPlaceOf } from "../../src/orders/wall-place.ts";
import type { Mail, Mailbox } from "../../src/ports/mailbox.ts";
import { letterKey } from "../../src/reading/letter/letter-key.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { runWorker } from "../../src/worker/worker.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import {
  aloneAt,
  deviceIn,
  plateOf,
  type QuickLetter,
  type QuickSheet,
  quickBytes,
  quickReader,
} from "../make/quick.ts";

const minute = (n: number): Date => new Date(Date.UTC(2026, 10, 9, 14, n));

/** A letter before it is sent: its sheets, and how far its clock is off. */
interface Draft {
  readonly sheets: readonly QuickSheet[];
  /** Minutes by which its own date is wrong. */
  readonly skew: number;
  readonly from: string;
  readonly scans: readonly string[];
}

/** All that has been sent, in the order of arrival. */
interface Model {
  readonly sent: QuickLetter[];
}

/** Several workers, each with its own connection to one record. */
interface Real {
  readonly folder: string;
  readonly desks: Desk[];
}

async function openWorker(folder: string): Promise<Desk> {
  const store = await openStore(openSqlite(`${folder}/record.sqlite`), openBlobs(`${folder}/blobs`));
  return temporaryDesk({ reader: quickReader, store });
}

async function openReal(workers: number): Promise<Real> {
  const folder = temporaryFolder();
  const desks: Desk[] = [];
  for (let n = 0; n < workers; n++) desks.push(await openWorker(folder));
  return { folder, desks };
}

/** Gives each sheet a file name of its own, so that it can be followed. */
function letterOf({ sheets, skew, from, scans }: Draft, model: Model): QuickLetter {
  const n = model.sent.length;
  return {
    id: `letter-${n}`,
    from,
    receivedAt: minute(n),
    dated: minute(n + skew),
    sheets: sheets.map((sheet, i) => ({ ...sheet, file: `${n}-${i} ${sheet.file}` })),
    scans: scans.map((name) => `${n} ${name}`),
  };
}

async function take({ desks }: Real, letter: QuickLetter, worker: number): Promise<void> {
  const desk = desks[worker % desks.length];
  if (desk === undefined) throw new Error("no worker");
  await takeLetter(desk, quickBytes(letter), letter.receivedAt);
}

class Send implements fc.AsyncCommand<Model, Real> {
  readonly draft: Draft;
  readonly worker: number;
  constructor(draft: Draft, worker: number) {
    this.draft = draft;
    this.worker = worker;
  }
  check = (): boolean => true;
  async run(model: Model, real: Real): Promise<void> {
    const letter = letterOf(this.draft, model);
    model.sent.push(letter);
    await take(real, letter, this.worker);
  }
  toString = (): string => `send(${JSON.stringify(this.draft)})`;
}

/** Two or three letters in the hands of different workers at the same moment. */
class SendAtOnce implements fc.AsyncCommand<Model, Real> {
  readonly drafts: readonly Draft[];
  constructor(drafts: readonly Draft[]) {
    this.drafts = drafts;
  }
  check = (): boolean => true;
  async run(model: Model, real: Real): Promise<void> {
    const letters = this.drafts.map((draft) => {
      const letter = letterOf(draft, model);
      model.sent.push(letter);
      return letter;
    });
    await Promise.all(letters.map((letter, i) => take(real, letter, i)));
  }
  toString = (): string => `at once(${JSON.stringify(this.drafts)})`;
}

/** Letters in a mailbox that two workers work through side by side, each with several hands. */
class WorkThrough implements fc.AsyncCommand<Model, Real> {
  readonly drafts: readonly Draft[];
  constructor(drafts: readonly Draft[]) {
    this.drafts = drafts;
  }
  check = (): boolean => true;
  async run(model: Model, { desks }: Real): Promise<void> {
    const letters = this.drafts.map((draft) => {
      const letter = letterOf(draft, model);
      model.sent.push(letter);
      return letter;
    });
    const mails = letters.map(
      (letter): Mail => ({
        name: letter.id,
        size: 0,
        receivedAt: letter.receivedAt,
        bytes: async () => quickBytes(letter),
        shelve: () => Promise.resolve(),
      }),
    );
    const mailbox: Mailbox = {
      name: "orders",
      async *letters() {
        yield* mails;
      },
      close: () => Promise.resolve(),
    };
    const options = { once: true, signal: new AbortController().signal };
    await Promise.all(desks.slice(0, 2).map((desk) => runWorker(desk, [mailbox], options)));
  }
  toString = (): string => `work through(${JSON.stringify(this.drafts)})`;
}

/** A letter that the mailbox shows once more. */
class SeeAgain implements fc.AsyncCommand<Model, Real> {
  readonly which: number;
  constructor(which: number) {
    this.which = which;
  }
  check = ({ sent }: Model): boolean => sent.length > 0;
  async run({ sent }: Model, real: Real): Promise<void> {
    const letter = sent[this.which % sent.length];
    if (letter !== undefined) await take(real, letter, this.which);
  }
  toString = (): string => `again(${this.which})`;
}

class Restart implements fc.AsyncCommand<Model, Real> {
  readonly worker: number;
  constructor(worker: number) {
    this.worker = worker;
  }
  check = (): boolean => true;
  async run(_: Model, { desks, folder }: Real): Promise<void> {
    const n = this.worker % desks.length;
    await desks[n]?.store.close();
    desks[n] = await openWorker(folder);
  }
  toString = (): string => `restart(${this.worker})`;
}

const words = fc.constantFrom("ENTRY", "LOUNGE", "STAIRS", "VAULT", "RECEPTION");
const mark = fc.constantFrom("S-1", "S-2", "T-9");
const number = fc.constantFrom("BW-2207", "BW-2207", "BW-2207", "KF-31", "");
const sheet: fc.Arbitrary<QuickSheet> = fc.oneof(
  { weight: 2, arbitrary: fc.tuple(mark, fc.constantFrom(2, 2, 3)).map(([m, gangs]) => plateOf(m, gangs)) },
  {
    weight: 5,
    arbitrary: fc
      .tuple(mark, fc.integer({ min: 1, max: 3 }), fc.constantFrom(2, 2, 3), words)
      .map(([m, position, gangs, word]) => deviceIn(m, position, gangs, word)),
  },
  { weight: 1, arbitrary: fc.tuple(mark, words).map(([m, word]) => aloneAt(m, word)) },
);
const numbered = fc
  .tuple(sheet, number)
  .map(([one, order_number]): QuickSheet => ({ ...one, values: { ...one.values, order_number } }));

const draft: fc.Arbitrary<Draft> = fc.record({
  sheets: fc.array(numbered, { minLength: 1, maxLength: 4 }),
  skew: fc.constantFrom(0, 0, 0, 0, -90, 45),
  from: fc.constantFrom(
    "Ines Calloway <ines@brightwire.example>",
    "Ines Calloway <ines@brightwire.example>",
    "Ines Calloway <INES@brightwire.example>",
  ),
  scans: fc.constantFrom<string[]>([], [], [], ["scan.pdf"]),
});

const commands = fc.commands(
  [
    fc.tuple(draft, fc.nat(2)).map(([one, worker]) => new Send(one, worker)),
    fc.array(draft, { minLength: 2, maxLength: 3 }).map((some) => new SendAtOnce(some)),
    fc.array(draft, { minLength: 2, maxLength: 5 }).map((some) => new WorkThrough(some)),
    fc.nat(20).map((which) => new SeeAgain(which)),
    fc.nat(2).map((worker) => new Restart(worker)),
  ],
  { maxCommands: 8 },
);

/** What the record holds, in words that do not depend on the letters' numbers. */
async function recordOf(desk: Desk): Promise<unknown> {
  const state = await desk.store.buyers.stateOf("ines@brightwire.example", []);
  const records = (
    await Promise.all(state.orders.map((order) => desk.store.orders.named(order.number)))
  ).flat();
  const nameOf = new Map(state.orders.flatMap(({ sheets }) => sheets).map((one) => [one.id, one.file]));
  return {
    standing: state.orders
      .map(({ number: n, sheets, carried }) =>
        [n, ...sheets.map((one) => one.file).toSorted(), ...carried.map(({ text }) => text).toSorted()].join(
          ", ",
        ),
      )
      .toSorted(),
    orders: records
      .map((record) => ({
        number: record.number,
        verdict: record.verdict,
        missing: record.missing.map((one) => JSON.stringify(one)).toSorted(),
        problems: record.problems
          .map(({ check, spots }) =>
            [check, ...[...new Set(spots.map(({ file }) => nameOf.get(file) ?? ""))].toSorted()].join(" "),
          )
          .toSorted(),
        questions: record.questions.length,
      }))
      .toSorted((a, b) => a.number.localeCompare(b.number)),
  };
}

/** The letters in the order in which they came to be in the record, or in which they were judged. */
function lettersIn(
  { folder }: Real,
  sent: readonly QuickLetter[],
  by: "letters.id" | "events.id",
): QuickLetter[] {
  const database = new DatabaseSync(`${folder}/record.sqlite`, { readOnly: true });
  const rows = database
    .prepare(
      `SELECT message_id AS id FROM events JOIN letters ON letters.id = subject_id WHERE what = 'ready' ORDER BY ${by}`,
    )
    .all() as { id: string }[];
  database.close();
  return rows.map(({ id }) => {
    const letter = sent.find((one) => id === `<${one.id}@brightwire.example>`);
    if (letter === undefined) throw new Error(`nobody sent ${id}`);
    return letter;
  });
}

/**
 * Every letter is answered once. Every sheet that was sent is named in the answer to its letter, or is one of those that
 * it counts as right, of which nothing is asked.
 */
async function everySheetIsAnswered(desk: Desk, sent: readonly QuickLetter[]): Promise<void> {
  const records = await desk.store.letters.list(1000);
  expect(records).toHaveLength(sent.length);
  for (const record of records) {
    expect(record.state).toBe("sent");
    const answer = await desk.store.answers.of(record.letter);
    const { text = "" } = await simpleParser(Buffer.from(answer?.bytes ?? ""));
    const words = text.replaceAll(/\s+/g, " ");
    const counted = [...words.matchAll(/(\d+) (?:more )?sheets? of this order: OK\./g)];
    const right = counted.reduce((sum, [, count]) => sum + Number(count), 0);
    const unnamed = record.attachments.filter(({ file }) => !words.includes(file));
    expect(unnamed.length).toBeLessThanOrEqual(right);
    // A sheet that only waits for others is right so far, and the others are told. A note of the order as a whole
    // asks nothing of its sheets.
    const said = record.problems.filter(({ verdict }) => verdict !== "waiting" && verdict !== "pass");
    const spoken = new Set(said.flatMap(({ spots }) => spots.map((spot) => spot.file)));
    expect(unnamed.filter(({ id }) => spoken.has(id))).toEqual([]);
  }
}

/** No order passes with two sheets for one place, or with a sheet of which nobody was told that it went. */
async function nothingPassesUnaccounted(desk: Desk, sent: readonly QuickLetter[]): Promise<void> {
  const told = new Set<string>();
  for (const { problems } of await desk.store.letters.list(1000))
    for (const { check, facts } of problems)
      if (["sheet-replaced", "same-sheet-twice"].includes(check))
        for (const fact of Object.values(facts).flat()) told.add(String(fact));
  const { orders } = await desk.store.buyers.stateOf("ines@brightwire.example", []);
  for (const { number: n, sheets } of orders) {
    const [record] = await desk.store.orders.named(n);
    if (record?.verdict === "pass") {
      const places = sheets.map(wallPlaceOf);
      expect(new Set(places).size).toBe(places.length);
    }
  }
  const standing = new Set(orders.flatMap(({ sheets }) => sheets.map(({ file }) => file)));
  const gone = sent
    .flatMap(({ sheets = [] }) => sheets.map(({ file }) => file))
    .filter((file) => !standing.has(file) && !told.has(file));
  // What came again unchanged is told by the name of the sheet that took its place; one without a number may have that
  // of its letter.
  const again = sent.flatMap(({ sheets = [] }) => sheets.filter(({ file }) => told.has(file)));
  const unexplained = gone.filter((file) => {
    const values = sent.flatMap(({ sheets = [] }) => sheets).find((one) => one.file === file)?.values;
    return !again.some((one) => {
      const isBare = [one.values, values].some((some) => some?.["order_number"] === "");
      const number = isBare ? { order_number: "" } : {};
      return JSON.stringify({ ...one.values, ...number }) === JSON.stringify({ ...values, ...number });
    });
  });
  expect(unexplained).toEqual([]);
}

test("whatever comes at once, again or late, the record is that of the same letters one after another", async () => {
  await fc.assert(
    fc.asyncProperty(commands, async (list) => {
      const real = await openReal(3);
      const model: Model = { sent: [] };
      await fc.asyncModelRun(() => ({ model, real }), list);
      const [desk] = real.desks;
      if (desk === undefined) throw new Error("no worker");
      while (await takeDue(desk));
      await everySheetIsAnswered(desk, model.sent);
      await nothingPassesUnaccounted(desk, model.sent);

      const alone = await openReal(1);
      for (const letter of lettersIn(real, model.sent, "letters.id")) {
        const bytes = quickBytes(letter);
        await alone.desks[0]?.store.letters.receive(letterKey(bytes), bytes, letter.receivedAt);
      }
      for (const letter of lettersIn(real, model.sent, "events.id")) await take(alone, letter, 0);
      expect(await recordOf(desk)).toEqual(await recordOf(alone.desks[0] ?? desk));
      await Promise.all([...real.desks, ...alone.desks].map(({ store }) => store.close()));
    }),
    // The same stories in every run; others, with BURIN_RUNS, as many as it says.
    process.env["BURIN_RUNS"] === undefined
      ? { numRuns: 20, seed: 20_261_109 }
      : { numRuns: Number(process.env["BURIN_RUNS"]) },
  );
}, 600_000);
