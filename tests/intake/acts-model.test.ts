import * as fc from "fast-check";
import { simpleParser } from "mailparser";
import { expect, onTestFinished, test } from "vitest";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { Act } from "../../src/trade/note.ts";
import type { LetterRecord, OrderRecord } from "../../src/trade/record.ts";
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

const people = {
  buyer: "ines@brightwire.example",
  colleague: "omar@brightwire.example",
  stranger: "eve@stranger.example",
} as const;
type Who = keyof typeof people;
type Number = "BW-2207" | "KF-31";

/** Where a sheet goes. S-1 and K-40 are stations of two devices under a plate, the others devices alone. */
const spots = [
  "S-1 plate",
  "S-1 1",
  "S-1 2",
  "K-40 plate",
  "K-40 1",
  "K-40 2",
  "T-9 alone",
  "L-60 alone",
] as const;
type Spot = (typeof spots)[number];

/** What is typed on a sheet, and what a good clerk makes of it. */
const legends = {
  ENTRY: "right",
  LOUNGE: "right",
  STAIRS: "right",
  /** No word: whoever sent it may say that it is meant. */
  SALONA: "asks",
  /** About safety: one of our own people decides. */
  "MAIN SW": "asks person",
  "A VERY LONG LEGEND": "stops",
} as const;
type Legend = keyof typeof legends;

interface Typed {
  readonly spot: Spot;
  readonly legend: Legend;
  /** Its telephone number is none, which stops it, and may be let stand. */
  readonly badPhone: boolean;
}

type Step =
  | {
      readonly kind: "send";
      readonly who: Who;
      readonly order: Number;
      readonly sheets: readonly Typed[];
      readonly scan: boolean;
      readonly words: boolean;
      readonly inReply: boolean;
    }
  | {
      readonly kind: "answer";
      readonly who: Who;
      readonly order: Number;
      readonly pick: number;
      readonly says: "YES" | "NO";
    }
  | {
      readonly kind: "cancel";
      readonly who: Who;
      readonly order: Number;
      readonly what: Spot | "S-1" | "K-40" | "order";
    }
  | {
      readonly kind: "settle";
      readonly order: Number;
      readonly pick: number;
      readonly does: "yes" | "no" | "waive" | "say";
    }
  | { readonly kind: "read"; readonly pick: number }
  | {
      readonly kind: "place";
      readonly order: Number;
      readonly pick: number;
      readonly spot: Spot;
      readonly to: Number;
    }
  | { readonly kind: "let in"; readonly pick: number }
  | { readonly kind: "put aside"; readonly pick: number };

/** A sheet that stands, as a plain ledger has it. */
interface Standing extends Typed {
  readonly file: string;
  readonly came: number;
}

/** What a letter left open in an order: its words, or the name of its file. */
interface Said {
  readonly order: Number;
  readonly text: string;
}

/** The ledger that the record is held against. Each order has at most one sheet a spot. */
interface Ledger {
  readonly orders: Readonly<Record<Number, Map<Spot, Standing>>>;
  /** Words and files that nobody has dealt with, by the letter that brought them. */
  readonly words: Map<number, Said>;
  readonly scans: Map<number, Said>;
  /** How many scans may have been settled by sheets for places that were lacking. */
  readonly credits: Record<Number, number>;
  /** Words that are meant, and points that were decided: "BW-2207 S-1 1 MAIN SW". */
  readonly kept: Set<string>;
  readonly decided: Set<string>;
  readonly withdrawn: Record<Number, string[]>;
  /** Letters of the stranger that wait for a person. */
  readonly held: Map<
    number,
    { readonly letter: QuickLetter; readonly step: Extract<Step, { kind: "send" }> }
  >;
  readonly sent: QuickLetter[];
  minute: number;
}

function newLedger(): Ledger {
  return {
    orders: { "BW-2207": new Map(), "KF-31": new Map() },
    words: new Map(),
    scans: new Map(),
    credits: { "BW-2207": 0, "KF-31": 0 },
    kept: new Set(),
    decided: new Set(),
    withdrawn: { "BW-2207": [], "KF-31": [] },
    held: new Map(),
    sent: [],
    minute: 0,
  };
}

const numbers = ["BW-2207", "KF-31"] as const;

/** Why an order must not pass, by the ledger. It may say less than the record does, never more. */
function openIn(ledger: Ledger, order: Number): string[] {
  const sheets = ledger.orders[order];
  // A file of the same name in a later letter counts as the same once more.
  const names = new Set([...ledger.scans.values()].flatMap((one) => (one.order === order ? one.text : [])));
  const scans = names.size - ledger.credits[order];
  return [
    ...[...sheets.values()].flatMap(({ spot, legend, badPhone }) => [
      ...(isOpen(ledger, order, spot, legend) ? [`${spot} ${legends[legend]}`] : []),
      ...(badPhone && !ledger.decided.has(`${order} ${spot} phone`) ? [`${spot} telephone`] : []),
    ]),
    ...lacking(sheets).map((spot) => `${spot} is missing`),
    ...[...ledger.words].flatMap(([letter, said]) =>
      said.order === order ? [`words of letter ${letter}`] : [],
    ),
    ...(scans > 0 ? [`${scans} scans`] : []),
  ];
}

function isOpen(ledger: Ledger, order: Number, spot: Spot, legend: Legend): boolean {
  if (spot.endsWith("plate")) return false;
  const is = legends[legend];
  if (is === "asks") return !ledger.kept.has(legend);
  if (is === "asks person") return !ledger.decided.has(`${order} ${spot} ${legend}`);
  return is === "stops";
}

/** A plate needs its two devices. A device without its plate is another matter: it is asked about. */
function lacking(sheets: ReadonlyMap<Spot, Standing>): Spot[] {
  return spots.filter((spot) => {
    const [mark = "", what = ""] = spot.split(" ");
    return /\d/.test(what) && !sheets.has(spot) && sheets.has(`${mark} plate` as Spot);
  });
}

function sheetOf({ spot, legend, badPhone }: Typed, order: Number): QuickSheet {
  const [mark = "", what = ""] = spot.split(" ");
  const more = { order_number: order, ...(badPhone ? { contact_phone: "12" } : {}) };
  if (what === "plate") return plateOf(mark, 2, more);
  if (what === "alone") return aloneAt(mark, legend, more);
  return deviceIn(mark, Number(what), 2, legend, more);
}

interface Story {
  readonly desk: Desk;
  readonly ledger: Ledger;
}

const at = (minute: number): Date => new Date(Date.UTC(2026, 10, 9, 14, minute));
const authority = "mx.quillgate.example";

/** A letter of which our mail server found out that its sender's domain sent it. */
function provedBytes(letter: QuickLetter, who: Who): Uint8Array {
  const domain = people[who].split("@")[1];
  const found = `Authentication-Results: ${authority}; dkim=pass header.d=${domain}\r\n`;
  return Buffer.concat([Buffer.from(found), quickBytes(letter)]);
}

async function recordOf({ store }: Desk, number: Number): Promise<OrderRecord | undefined> {
  return (await store.orders.named(number))[0];
}

/** The letter about an order that was answered last. */
async function lastAnswered(desk: Desk, number: Number): Promise<LetterRecord | undefined> {
  const order = await recordOf(desk, number);
  return [...(order?.letters ?? []), ...(order?.replies ?? [])]
    .filter(({ answer, why }) => answer !== undefined && why === undefined)
    .toSorted((a, b) => a.letter - b.letter)
    .at(-1);
}

async function post(
  { desk, ledger }: Story,
  who: Who,
  letter: Pick<QuickLetter, "sheets" | "scans" | "text"> & { readonly to?: LetterRecord | undefined },
): Promise<{ readonly letter: number; readonly quick: QuickLetter }> {
  const n = ledger.sent.length;
  const { to, ...rest } = letter;
  const quick: QuickLetter = {
    id: `letter-${n}`,
    from: people[who],
    dated: at(ledger.minute),
    receivedAt: at(ledger.minute),
    ...rest,
    ...(to?.answer === undefined ? {} : { inReplyTo: to.answer.messageId }),
  };
  ledger.sent.push(quick);
  const taken = await takeLetter(desk, provedBytes(quick, who), quick.receivedAt);
  while (await takeDue(desk));
  return { letter: taken.letter, quick };
}

/** Puts the sheets of a letter into the ledger: the newer one for a spot stands. */
function enter(ledger: Ledger, order: Number, typed: readonly Typed[], quick: QuickLetter): void {
  const sheets = ledger.orders[order];
  const lacked = new Set(lacking(sheets));
  const came = quick.receivedAt.getTime();
  for (const [i, one] of typed.entries()) {
    const before = sheets.get(one.spot);
    // A sheet for a place that was lacking may be the one that was scanned.
    if (before === undefined || lacked.has(one.spot)) ledger.credits[order]++;
    if (before !== undefined && before.came > came) continue;
    sheets.set(one.spot, { ...one, file: quick.sheets?.[i]?.file ?? "", came });
  }
}

async function send(story: Story, step: Extract<Step, { kind: "send" }>): Promise<void> {
  const { desk, ledger } = story;
  const { who, order, scan, inReply } = step;
  const n = ledger.sent.length;
  const typed = [...new Map(step.sheets.map((one) => [one.spot, one])).values()];
  const words = step.words || (typed.length === 0 && !scan);
  const [hasScan, scanName] = [scan && typed.length > 0, `scan ${n % 3}.pdf`];
  const to = inReply ? await lastAnswered(desk, order) : undefined;
  const text = words ? `Order ${order}: please engrave number ${n} in red.` : "";
  const { letter, quick } = await post(story, who, {
    sheets: typed.map((one, i) => {
      const sheet = sheetOf(one, order);
      return { ...sheet, file: `${n}-${i} ${sheet.file}` };
    }),
    scans: hasScan ? [scanName] : [],
    text,
    to,
  });
  if (who === "stranger") {
    if (typed.length > 0) ledger.held.set(letter, { letter: quick, step: { ...step, sheets: typed } });
    return;
  }
  enter(ledger, order, typed, quick);
  if (words) ledger.words.set(letter, { order, text });
  if (hasScan) ledger.scans.set(letter, { order, text: scanName });
}

/** Who has dealt with words or a file has dealt with the same in earlier letters about the order. */
function dealtWith(open: Map<number, Said>, { order, text }: Said): void {
  for (const [letter, said] of open) if (said.order === order && said.text === text) open.delete(letter);
}

/** Writes into the ledger that some questions are settled. */
function settle(ledger: Ledger, order: OrderRecord, questions: OrderRecord["questions"]): void {
  const number = order.number as Number;
  const ofFile = new Map(order.sheets.map(({ id, file }) => [id, file]));
  for (const { problem } of questions) {
    const { words, file: name } = problem.facts;
    if (problem.check === "letter-still-open")
      dealtWith(ledger.words, { order: number, text: String(words) });
    if (problem.check === "file-still-unread") dealtWith(ledger.scans, { order: number, text: String(name) });
    const files = new Set(problem.spots.map(({ file }) => ofFile.get(file)));
    for (const { spot, legend, file } of ledger.orders[number].values()) {
      if (!files.has(file)) continue;
      if (problem.check === "phone-malformed") ledger.decided.add(`${number} ${spot} phone`);
      else if (legends[legend] === "asks" && problem.check === asksWord) ledger.kept.add(legend);
      else if (problem.check === "safety-wording") ledger.decided.add(`${number} ${spot} ${legend}`);
    }
  }
}

const asksWord = "spelling";

async function answer(
  story: Story,
  { who, order, pick, says }: Extract<Step, { kind: "answer" }>,
): Promise<void> {
  const { desk, ledger } = story;
  const [record, to] = [await recordOf(desk, order), await lastAnswered(desk, order)];
  const question = record?.questions[pick % record.questions.length];
  if (record === undefined || question === undefined || to === undefined) return;
  const { number } = question;
  const same = record.questions.filter((one) => one.number === number);
  await post(story, who, { text: `${number} ${says}`, to });
  if (who === "stranger" || says === "NO" || same.some(({ problem }) => problem.check !== asksWord)) return;
  settle(ledger, record, same);
}

async function cancel(story: Story, { who, order, what }: Extract<Step, { kind: "cancel" }>): Promise<void> {
  const { desk, ledger } = story;
  const to = await lastAnswered(desk, order);
  if (to === undefined) return;
  const [mark, place] = what.split(" ");
  const words =
    what === "order"
      ? `order ${order}`
      : place === "1" || place === "2"
        ? `${mark} position ${place}`
        : `${mark}`;
  const { letter } = await post(story, who, { text: `CANCEL ${words}`, to });
  if (who === "stranger") return;
  const sheets = ledger.orders[order];
  const gone = [...sheets.keys()].filter(
    (spot) => what === "order" || spot.startsWith(words.replace(" position", "")),
  );
  if (gone.length === 0) ledger.words.set(letter, { order, text: `CANCEL ${words}` });
  for (const spot of gone) {
    ledger.withdrawn[order].push(sheets.get(spot)?.file ?? "");
    sheets.delete(spot);
  }
}

let noted = 0;

/** Takes a note of one of our own people; false if it cannot be taken. */
async function note({ desk }: Story, order: Number, act: Act): Promise<boolean> {
  const record = await recordOf(desk, order);
  if (record === undefined) return false;
  const { buyer } = record;
  const by = { by: "Rosa Imhoff", why: "they said so" };
  const { kind } = await takeNote(desk, { id: `a${++noted}`, buyer, order, ...by, acts: [act] });
  while (await takeDue(desk));
  return kind === "judged";
}

async function settleByUs(
  story: Story,
  { order, pick, does }: Extract<Step, { kind: "settle" }>,
): Promise<void> {
  const record = await recordOf(story.desk, order);
  const question = record?.questions[pick % record.questions.length];
  if (record === undefined || question === undefined) return;
  const { number } = question;
  const act: Act = does === "say" ? { kind: "say", number, words: "Which?" } : { kind: does, number };
  const done = await note(story, order, act);
  const settles = done && (does === "yes" || does === "waive");
  if (settles)
    settle(
      story.ledger,
      record,
      record.questions.filter((one) => one.number === number),
    );
}

/** One of our own people has dealt with all that a letter said. */
async function read(story: Story, { pick }: Extract<Step, { kind: "read" }>): Promise<void> {
  const { desk, ledger } = story;
  const open = [...new Set([...ledger.words.keys(), ...ledger.scans.keys()])];
  const letter = open[pick % open.length];
  if (letter === undefined) return;
  const records = await Promise.all(numbers.map((number) => recordOf(desk, number)));
  const carry = records.flatMap((one) =>
    one?.carried.some((said) => said.letter === String(letter)) ? one : [],
  );
  for (const { number } of carry) await note(story, number as Number, { kind: "read", letter });
  if (carry.length === 0)
    await desk.store.letters.putAside(letter, { name: "Rosa Imhoff", why: "read" }, desk.clock.now());
  for (const open of [ledger.words, ledger.scans]) {
    const said = open.get(letter);
    if (said !== undefined) dealtWith(open, said);
  }
}

async function place(
  story: Story,
  { order, pick, spot, to }: Extract<Step, { kind: "place" }>,
): Promise<void> {
  const { desk, ledger } = story;
  const standing = [...ledger.orders[order].values()];
  const sheet = standing[pick % standing.length];
  const record = await recordOf(desk, order);
  const id = record?.sheets.find(({ file }) => file === sheet?.file)?.id;
  if (sheet === undefined) return;
  if (id === undefined) throw new Error(`${sheet.file} does not stand in ${order}`);
  const [[mark = "", what = ""], [, was = ""]] = [spot.split(" "), sheet.spot.split(" ")];
  const fits = /\d/.test(what) ? /\d/.test(was) : what === was;
  const position = /\d/.test(what) ? { position: Number(what) } : {};
  // A device in a plate cannot be made one that stands alone by its place.
  if (!fits && !/\d/.test(what)) return;
  const done = await note(story, order, { kind: "place", sheet: id, mark, ...position, order: to });
  expect(done).toBe(fits && !ledger.orders[to].has(spot));
  if (!done) return;
  ledger.orders[order].delete(sheet.spot);
  ledger.withdrawn[order].push(sheet.file);
  ledger.orders[to].set(spot, { ...sheet, spot, came: desk.clock.now().getTime() });
}

async function letIn({ desk, ledger }: Story, { pick }: Extract<Step, { kind: "let in" }>): Promise<void> {
  const held = [...ledger.held][pick % ledger.held.size];
  if (held === undefined) return;
  const [letter, { letter: quick, step }] = held;
  const copy = await desk.store.letters.letIn(
    letter,
    { sender: people.stranger, lane: "stranger.example" },
    { name: "Rosa Imhoff", why: "Eve works for Ines" },
    desk.clock.now(),
  );
  while (await takeDue(desk));
  ledger.held.delete(letter);
  enter(ledger, step.order, step.sheets, quick);
  if (step.words) ledger.words.set(copy ?? 0, { order: step.order, text: quick.text ?? "" });
  if (step.scan) ledger.scans.set(copy ?? 0, { order: step.order, text: quick.scans?.[0] ?? "" });
}

async function putAside(
  { desk, ledger }: Story,
  { pick }: Extract<Step, { kind: "put aside" }>,
): Promise<void> {
  const letter = [...ledger.held.keys()][pick % ledger.held.size];
  if (letter === undefined) return;
  await desk.store.letters.putAside(letter, { name: "Rosa Imhoff", why: "a stranger" }, desk.clock.now());
  ledger.held.delete(letter);
}

async function take(story: Story, step: Step): Promise<void> {
  story.ledger.minute++;
  if (step.kind === "send") return send(story, step);
  if (step.kind === "answer") return answer(story, step);
  if (step.kind === "cancel") return cancel(story, step);
  if (step.kind === "settle") return settleByUs(story, step);
  if (step.kind === "read") return read(story, step);
  if (step.kind === "place") return place(story, step);
  if (step.kind === "let in") return letIn(story, step);
  return putAside(story, step);
}

/** All that the record has of the buyer's orders. */
async function snapshot(desk: Desk): Promise<string> {
  const records = await Promise.all(numbers.map((number) => recordOf(desk, number)));
  return JSON.stringify(records);
}

/** The sheets that stand are those of the ledger, and no order passes while something is open in it. */
async function holds({ desk, ledger }: Story): Promise<void> {
  expect(Object.keys(await desk.store.letters.states()).filter((state) => state !== "sent")).toEqual([]);
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

async function allLetters({ store }: Desk): Promise<LetterRecord[]> {
  const states = await store.letters.states();
  const count = Object.values(states).reduce((sum, some) => sum + some, 0);
  return Promise.all(Array.from({ length: count }, (_, n) => store.letters.read(n + 1)));
}

const tally = { stories: 0, steps: 0, passed: 0 };

/** Plays a story, and holds the record against the ledger after each step. */
async function play(steps: readonly Step[], folder: string): Promise<Story> {
  const store = await openStore(openSqlite(":memory:"), openBlobs(folder));
  const ledger = newLedger();
  const desk = await temporaryDesk({ reader: quickReader, store, clock: { now: () => at(ledger.minute) } });
  const rules = {
    ...desk.rules,
    authority,
    mostAnswers: { toOne: 999, toAll: 999, toOneADay: 999, inThreadADay: 999 },
  };
  const story = { desk: { ...desk, rules }, ledger };
  const right = { legend: "ENTRY", badPhone: false } as const;
  const whole = { kind: "send", who: "buyer", scan: false, words: false, inReply: false } as const;
  const begin: Step[] = [
    { ...whole, order: "BW-2207", sheets: [{ ...right, spot: "T-9 alone" }] },
    { ...whole, order: "KF-31", sheets: [{ ...right, spot: "L-60 alone" }] },
  ];
  for (const step of [...begin, ...steps]) {
    const isStranger = "who" in step && step.who === "stranger";
    const [before, letters] = [await snapshot(story.desk), ledger.sent.length];
    await take(story, step);
    tally.steps++;
    if (isStranger) expect(await snapshot(story.desk)).toBe(before);
    if (isStranger && ledger.sent.length > letters)
      await tellsNothing(story, (await allLetters(story.desk)).length);
    await holds(story);
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
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("let in" as const), pick }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("put aside" as const), pick }) },
);

test("whoever does whatever, no order passes with something open, nothing vanishes, and no stranger has a part", async () => {
  const folder = temporaryFolder();
  onTestFinished(() => (process.env["BURIN_RUNS"] === undefined ? undefined : console.info(tally)));
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 14, size: "max" }), async (steps) => {
      const { desk } = await play(steps, folder);
      await desk.store.close();
    }),
    { numRuns: Number(process.env["BURIN_RUNS"] ?? 20) },
  );
}, 3_600_000);
