import { composeAnswer } from "../answer/answer.ts";
import { composeMessage, type Enclosure, type Words } from "../answer/message.ts";
import { numbersIn } from "../answer/numbered.ts";
import { composeReminder } from "../answer/reminder.ts";
import { askedWords, mayWaive } from "../checks/asked.ts";
import { changesOf } from "../judging/changes.ts";
import { makeReport, type Report } from "../judging/report.ts";
import { type BuyerState, orderKey } from "../judging/state.ts";
import { withKept } from "../lettering/with-kept.ts";
import { plainText } from "../orders/keys.ts";
import { pieceKey } from "../orders/piece.ts";
import { type Claim, type Outcome, StateMoved } from "../ports/store.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Act, Note, PointAct } from "../trade/note.ts";
import type { KnownQuestion, QuestionOf } from "../trade/question.ts";
import type { Released } from "../trade/released.ts";
import { alarmOf } from "./alarm.ts";
import { after } from "./answer.ts";
import { messageIdOf } from "./compose.ts";
import type { Desk } from "./desk.ts";
import { enclose } from "./enclose.ts";
import { movesIn, ordersIn } from "./moves.ts";
import { referenceOf } from "./reference.ts";
import { calendarName, waitingOf } from "./remind.ts";

/** How often a note is judged while its buyer's state moves each time. */
const mostRaces = 5;

/** What came of a note: its order was judged again, it waits for its turn, or it cannot be taken. */
export type NoteTaken =
  | { readonly kind: "judged"; readonly letter: number }
  | { readonly kind: "waits"; readonly letter: number }
  | { readonly kind: "wrong"; readonly why: string };

/**
 * Takes a note of one of our own people: keeps it, judges its order again, and leaves the answer ready to be sent. It
 * says why a note cannot be taken before it keeps it.
 */
export async function takeNote(desk: Desk, note: Note): Promise<NoteTaken> {
  const { store, clock, rules } = desk;
  const state = await store.buyers.stateOf(note.buyer, ordersIn(note));
  const why = faultOf(note, state);
  if (why !== undefined) return { kind: "wrong", why };
  const lane = await store.orders.laneOf(note.buyer, note.order);
  const bytes = new TextEncoder().encode(JSON.stringify(note));
  const { letter, again } = await store.letters.receive(noteKey(note), bytes, clock.now(), lane, "note");
  // A note that is in the record already is the worker's.
  const claim = again ? undefined : await store.letters.claim(letter, clock.now(), after(rules.lease, desk));
  if (claim === undefined) return { kind: "waits", letter };
  await checkNote(desk, await store.letters.opening(claim), bytes);
  await store.letters.release(claim);
  return { kind: "judged", letter };
}

function noteKey({ id }: Note): string {
  return `note ${id}`;
}

/** Judges the order of a note again, with what the note settles. */
export async function checkNote(desk: Desk, claim: Claim, bytes: Uint8Array): Promise<Outcome["state"]> {
  const note = JSON.parse(new TextDecoder().decode(bytes)) as Note;
  for (let race = 1; ; race++) {
    const outcome = await outcomeOf(desk, claim, note);
    try {
      await desk.store.letters.settle(claim, outcome, desk.clock.now());
      return outcome.state;
    } catch (cause) {
      if (!(cause instanceof StateMoved) || race === mostRaces) throw cause;
      desk.log.info({ letter: claim.letter, race }, "judged again: the buyer's orders have moved meanwhile");
    }
  }
}

async function outcomeOf(desk: Desk, { letter, receivedAt }: Claim, note: Note): Promise<Outcome> {
  const { store, catalogue } = desk;
  const state = await store.buyers.stateOf(note.buyer, ordersIn(note));
  const why = faultOf(note, state);
  const moves = movesIn(note, state, String(letter));
  const decides = why === undefined ? decidedBy(note, state) : [];
  const kept = keptBy(note, state);
  const words = withKept(catalogue, [...(await store.buyers.keptWords(note.buyer)), ...kept]);
  const report = makeReport(
    {
      files: [],
      sheets: [],
      letter: { number: String(letter), came: { receivedAt } },
      about: [note.order],
      note,
      decides,
      ...(why === undefined && typeof moves !== "string" ? { moves } : {}),
      dealtWith: note.acts.flatMap((act) => (act.kind === "read" ? [String(act.letter)] : [])),
    },
    words,
    state,
  );
  const numbers = numbersIn(report);
  // Whoever moves a sheet of a released order need not be in the engraving room.
  const alarm = report.moved === undefined ? undefined : alarmOf(report);
  const released = releasedBy(note, state, report, desk.clock.now());
  const isRelease = note.acts.some(({ kind }) => kind === "release");
  const fault = why ?? (isRelease ? againstRelease(report) : undefined);
  const outcome = {
    letter: { subject: `${note.by}: ${note.why}`, references: [], text: "", attachments: [] },
    report,
    buyer: note.buyer,
    version: state.version,
    changes: changesOf(report, state, (problem) => numbers.get(problem) ?? 0),
    about: [note.order],
    decides,
    kept,
    by: note.by,
    ...(alarm === undefined ? {} : { alarm }),
    ...(released === undefined ? {} : { released: { [note.order]: released } }),
    dealtWith: note.acts.flatMap((act) => (act.kind === "read" ? [act.letter] : [])),
  };
  const reminded = note.acts.find((act) => act.kind === "remind");
  if (reminded !== undefined) return reminding(desk, note, reminded, { ...outcome, changes: [] });
  // What it was about is no longer there. Nothing changes, and one of us is told.
  if (fault !== undefined) {
    const { released: _released, ...rest } = outcome;
    return { ...rest, changes: [], state: "held", why: fault };
  }
  // What is engraved is told to nobody outside, and leaves the order as it is.
  if (note.acts.every(({ kind }) => kind === "cut"))
    return { ...outcome, changes: [], state: "silent", why: "engraved" };
  const answer = await answerTo(desk, note, report);
  if (answer === undefined) return { ...outcome, state: "silent", why: "nobody is to be answered" };
  return { ...outcome, state: "ready", answer };
}

/** Why a note cannot be taken. */
function faultOf(note: Note, state: BuyerState): string | undefined {
  const order = orderIn(note, state);
  if (order === undefined) return `no order ${note.order} of ${note.buyer} is known`;
  for (const act of note.acts) {
    // Only what is about a point, or about released stations, can be wrong here.
    if (!("number" in act) && act.kind !== "cut") continue;
    if (act.kind === "cut") {
      const why = faultOfCut(act.stations, order);
      if (why !== undefined) return why;
      continue;
    }
    const question = openIn(order.questions, act);
    if (question === undefined) return `order ${note.order} has no open point ${act.number}`;
    const stops = question.problem.severity === "stops";
    if (act.kind === "yes" && stops)
      return `point ${act.number} stops the order: mend it, or let it stand with --waive`;
    if (act.kind === "waive" && !stops) return `point ${act.number} is a question: answer it with --yes`;
    if (act.kind === "waive" && !mayWaive(question.problem))
      return `point ${act.number} cannot be let stand: it could not be cut`;
  }
  const moves = movesIn(note, state, "0");
  return typeof moves === "string" ? moves : undefined;
}

function orderIn({ order }: Note, { orders }: BuyerState): BuyerState["orders"][number] | undefined {
  return orders.find(({ number }) => orderKey(number) === orderKey(order));
}

function openIn(questions: readonly KnownQuestion[], { number }: PointAct): KnownQuestion | undefined {
  return questions.find((question) => question.number === number && question.state === "open");
}

/** Reminds the buyer of an order, or says that somebody has to call. */
async function reminding(
  desk: Desk,
  note: Note,
  { what, since, lastOn }: Extract<Act, { kind: "remind" }>,
  outcome: Omit<Outcome, "state">,
): Promise<Outcome> {
  const { catalogue, store } = desk;
  const [order] = (await store.orders.named(note.order)).filter(({ buyer }) => buyer === note.buyer);
  if (order?.changedAt.toISOString() !== since)
    return { ...outcome, state: "silent", why: "it has moved on meanwhile" };
  const reminded = { ...outcome, reminded: { order: note.order, what } };
  if (what === "person")
    return { ...reminded, state: "silent", why: "somebody has to call", forPerson: true };
  const due = { order: waitingOf(order), nth: 1, what, ...(lastOn === undefined ? {} : { lastOn }) };
  const words = composeReminder(due, catalogue);
  const answer = await messageOf(desk, note, words, []);
  return answer === undefined
    ? { ...reminded, state: "silent", why: "nobody is to be answered" }
    : { ...reminded, state: "ready", answer };
}

/** Why a release cannot be; undefined for an order that has passed. */
function againstRelease({ orders }: Report): string | undefined {
  const [order] = orders;
  return order?.verdict === "pass" && order.missing.length === 0 ? undefined : "the order has not passed";
}

/** The released pieces of some stations; all if none is named. Undefined for a station that has none. */
function piecesIn(
  stations: readonly string[],
  { released, sheets }: BuyerState["orders"][number],
): ReadonlySet<string> | undefined {
  const keys = new Set(released?.pieces.map(({ key }) => key));
  if (stations.length === 0) return keys;
  const found = stations.map((station) =>
    sheets
      .filter(({ mark = "" }) => plainText(mark) === plainText(station))
      .map(pieceKey)
      .filter((key) => keys.has(key)),
  );
  return found.every((some) => some.length > 0) ? new Set(found.flat()) : undefined;
}

function faultOfCut(stations: readonly string[], order: BuyerState["orders"][number]): string | undefined {
  if (order.released === undefined) return `order ${order.number} was not released`;
  return piecesIn(stations, order) === undefined
    ? `not all of ${stations.join(", ")} are stations that were released`
    : undefined;
}

/** What a note hands to engraving, or says is engraved; undefined if it does neither. */
function releasedBy(note: Note, state: BuyerState, { orders }: Report, now: Date): Released | undefined {
  const before = orderIn(note, state);
  const release = note.acts.find((act) => act.kind === "release");
  if (release !== undefined) {
    const engraved = new Set(before?.released?.pieces.flatMap((one) => (one.engraved ? one.key : [])));
    const pieces = (orders[0]?.order.sheets ?? []).map((sheet) => {
      const key = pieceKey(sheet);
      return { sheet: sheet.id, key, engraved: engraved.has(key) };
    });
    const revision = (before?.revision ?? 0) + 1;
    return { revision, at: now.toISOString(), on: release.on, by: note.by, pieces };
  }
  const cuts = note.acts.filter((act) => act.kind === "cut");
  if (before?.released === undefined || cuts.length === 0) return undefined;
  const engraved = new Set(cuts.flatMap(({ stations }) => [...(piecesIn(stations, before) ?? [])]));
  const pieces = before.released.pieces.map((one) =>
    engraved.has(one.key) ? { ...one, engraved: true } : one,
  );
  return { ...before.released, pieces };
}

/** All questions that a note decides. Several can share a number, since they read the same. */
function decidedBy(note: Note, state: BuyerState): QuestionOf[] {
  const order = orderIn(note, state);
  const numbers = new Set(
    note.acts.flatMap((act) => (act.kind === "yes" || act.kind === "waive" ? [act.number] : [])),
  );
  return (order?.questions ?? [])
    .filter(({ number, state: is }) => is === "open" && numbers.has(number))
    .map(({ key }) => ({ order: note.order, key }));
}

/** Words of legends that a note says are right. */
function keptBy(note: Note, state: BuyerState): KeptWord[] {
  const order = orderIn(note, state);
  const yes = note.acts.flatMap((act) => (act.kind === "yes" ? [act.number] : []));
  const problems = (order?.questions ?? [])
    .filter(({ number, state: is }) => is === "open" && yes.includes(number))
    .map(({ problem }) => problem);
  return askedWords(problems, order?.sheets ?? []).map(({ word, project }) => ({ word, project }));
}

/** The answer to whoever wrote last about the order. */
async function answerTo(desk: Desk, note: Note, report: Report): Promise<Outcome["answer"]> {
  const { store, secret, catalogue } = desk;
  const numbers = report.orders.map(({ order }) => order.number);
  const latest = await store.orders.revisionsOf(note.buyer, numbers);
  const revisions = new Map([...latest].map(([order, revision]) => [order, revision + 1]));
  const enclosed = await enclose(report, [], { ...desk, revisions });
  const words = composeAnswer(report, catalogue, enclosed, referenceOf(Number(report.letter), secret));
  return messageOf(desk, note, words, [...enclosed.blanks, ...enclosed.proofs]);
}

/** What is sent on account of a note; undefined if nobody has written about its order. */
async function messageOf(
  { store, from, clock, secret }: Desk,
  note: Note,
  words: Words,
  enclosures: readonly Enclosure[],
): Promise<Outcome["answer"]> {
  const last = await store.orders.lastWriter(note.buyer, note.order);
  if (last === undefined) return undefined;
  const messageId = messageIdOf(noteKey(note), from.address, secret);
  const envelope = {
    from,
    to: last.recipient,
    date: clock.now(),
    messageId,
    ...(last.messageId === undefined ? {} : { inReplyTo: last.messageId }),
    references: [],
    ...(note.by === calendarName ? { auto: "auto-generated" as const } : {}),
  };
  const message = await composeMessage(envelope, words, enclosures);
  return { messageId, recipient: last.recipient, subject: words.subject, bytes: message };
}
