import { numbersIn } from "../answer/numbered.ts";
import { changesOf } from "../judging/changes.ts";
import { withoutDenied } from "../judging/denied.ts";
import { makeReport } from "../judging/report.ts";
import { withKept } from "../lettering/with-kept.ts";
import type { Claim, Outcome } from "../ports/store.ts";
import type { Note } from "../trade/note.ts";
import { alarmOf, heldAgain } from "./alarm.ts";
import { after } from "./answer.ts";
import { dayIn, tellingOfDays } from "./day-letter.ts";
import type { Desk } from "./desk.ts";
import { movesIn, ordersIn } from "./moves.ts";
import { answerTo, noteKey, reminding } from "./note-answer.ts";
import { decidedBy, faultOf, keptBy, saidNo } from "./note-points.ts";
import { againstRelease, isCut, releasedAnew, releasedBy } from "./note-release.ts";
import { settleOutcome } from "./settle-outcome.ts";
import { summaryIn, summing } from "./summary.ts";

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
  const isAboutNone = summaryIn(note) !== undefined || dayIn(note) !== undefined;
  const why = isAboutNone ? undefined : faultOf(note, state);
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

/** Judges the order of a note again, with what the note settles. */
export async function checkNote(desk: Desk, claim: Claim, bytes: Uint8Array): Promise<Outcome["state"]> {
  const note = JSON.parse(new TextDecoder().decode(bytes)) as Note;
  return settleOutcome(desk, claim, () => outcomeOf(desk, claim, note));
}

async function outcomeOf(desk: Desk, { letter, receivedAt }: Claim, note: Note): Promise<Outcome> {
  const { store, catalogue } = desk;
  const summary = summaryIn(note);
  if (summary !== undefined) return summing(desk, note, summary);
  const days = dayIn(note);
  if (days !== undefined) return tellingOfDays(desk, note, days);
  const state = await store.buyers.stateOf(note.buyer, ordersIn(note));
  const why = faultOf(note, state);
  const moves = movesIn(note, state, String(letter));
  const decides = why === undefined ? decidedBy(note, state) : [];
  const kept = keptBy(note, state);
  const known = [...(await store.buyers.keptWords(note.buyer)), ...kept];
  const words = withKept(catalogue, withoutDenied(known, state, decides));
  const dealtWith = note.acts.flatMap((act) => (act.kind === "read" ? [act.letter] : []));
  const about = { about: [note.order], dealtWith: dealtWith.map(String) };
  const report = makeReport(
    {
      files: [],
      sheets: [],
      managing: desk.rules.managing,
      letter: { number: String(letter), came: { receivedAt } },
      ...about,
      note,
      decides,
      ...(why === undefined && typeof moves !== "string" ? { moves } : {}),
    },
    words,
    state,
  );
  const numbers = numbersIn(report);
  const released = releasedBy(note, state, report, desk.clock.now());
  const isRelease = note.acts.some(({ kind }) => kind === "release");
  const fault = why ?? (isRelease ? againstRelease(note, report) : undefined);
  const reminded = note.acts.find((act) => act.kind === "remind");
  const changesNothing = fault !== undefined || reminded !== undefined || isCut(note);
  // Whoever moves a sheet of a released order, or settles what had stopped it, need not be in the engraving room.
  const alarm = [
    ...(report.moved === undefined ? [] : (alarmOf(report) ?? [])),
    ...(changesNothing ? [] : [...heldAgain(report, state), ...releasedAnew(note, released)]),
  ];
  const outcome = {
    letter: { subject: `${note.by}: ${note.why}`, references: [], text: "", attachments: [] },
    report,
    buyer: note.buyer,
    version: state.version,
    changes: changesOf(report, state, (problem) => numbers.get(problem) ?? 0, about),
    about: about.about,
    decides,
    kept,
    by: note.by,
    ...(alarm.length === 0 ? {} : { alarm }),
    ...(released === undefined ? {} : { released: { [note.order]: released } }),
    dealtWith,
  };
  if (reminded !== undefined) return reminding(desk, note, reminded, { ...outcome, changes: [] });
  // What it was about is no longer there. Nothing changes, and one of us is told.
  if (fault !== undefined) {
    const { released: _released, ...rest } = outcome;
    return { ...rest, changes: [], state: "held", why: fault };
  }
  // What is engraved is told to nobody outside, and leaves the order as it is.
  if (isCut(note)) return { ...outcome, changes: [], state: "silent", why: "engraved" };
  // Nothing is left to be told of.
  const answer = report.orders.length === 0 ? undefined : await answerTo(desk, note, report);
  // The record has a NO as it has that of a letter.
  const told = {
    ...outcome,
    ...(isRelease ? { isToPack: true as const } : {}),
    report: { ...report, problems: [...report.problems, ...saidNo(note, catalogue)] },
  };
  if (answer === undefined) return { ...told, state: "silent", why: "nobody is to be answered" };
  return { ...told, state: "ready", answer };
}
