import type { Transaction } from "kysely";
import { orderKey } from "../judging/state.ts";
import { type Outcome, StateMoved } from "../ports/store.ts";
import type { Problem } from "../trade/problem.ts";
import { writeHappening } from "./events.ts";
import { insertAll } from "./insert-all.ts";
import { writeLines } from "./lines.ts";
import { problemShape, sheetShape } from "./shapes.ts";
import type { Tables } from "./tables.ts";
import { type Judged, writeJudged } from "./write-judged.ts";

type Tx = Transaction<Tables>;

/** Where the outcome's bytes were put: attachments by their ids, and the answer. */
export interface Shas {
  readonly attachments: ReadonlyMap<string, string>;
  readonly answer?: string;
}

/**
 * Writes everything that judging a letter has led to; it decides nothing. A held letter that is judged again is
 * written anew.
 */
export async function writeOutcome(
  tx: Tx,
  letter: number,
  outcome: Outcome,
  shas: Shas,
  now: Date,
): Promise<void> {
  const { report, why, state } = outcome;
  await clear(tx, letter);
  await writeLetter(tx, letter, outcome);
  await writeAttachments(tx, letter, outcome, shas);
  await writeOriginals(tx, letter, outcome);
  await writeSheets(tx, letter, outcome);
  await writeProblems(tx, letter, outcome);
  // A letter that gets no answer changes nothing: a machine, a forger or nobody sent it. A letter for a person
  // changes nothing either. A note changes what it says, whether or not there is anybody to be answered.
  const isNote = state === "silent" && outcome.dealtWith !== undefined;
  const isTaken =
    (state === "ready" || isNote || outcome.released !== undefined || outcome.reminded !== undefined) &&
    !report.held;
  if (isTaken) {
    await moveOn(tx, outcome);
    await writeLines(tx, outcome);
  }
  const judged = judgedBy(outcome, isTaken);
  await writeJudged(tx, letter, judged, now);
  for (const one of outcome.dealtWith ?? []) await writeDealtWith(tx, one, now);
  await writeAnswer(tx, letter, outcome, shas, now);
  await writeHappening(tx, {
    at: now,
    actor: outcome.by ?? "burin",
    subject: "letter",
    subject_id: letter,
    what: state,
    words: why ?? report.verdict,
    content: judged,
  });
}

/** What the tables of orders follow from. A letter that is not taken changes nothing in them. */
function judgedBy(outcome: Outcome, isTaken: boolean): Judged {
  const { buyer, domain, changes, about = [], settles = [], decides = [], kept = [] } = outcome;
  const { by, released, reminded } = outcome;
  const whose = { buyer, about, ...(domain === undefined ? {} : { domain }) };
  if (!isTaken) return { ...whose, changes: [], settles: [], decides: [], kept: [] };
  return {
    ...whose,
    changes,
    settles,
    decides,
    kept,
    ...(released === undefined ? {} : { released }),
    ...(reminded === undefined ? {} : { reminded }),
    ...(by === undefined ? {} : { by }),
  };
}

/** Takes away what was written of a letter when it was held. */
async function clear(tx: Tx, letter: number): Promise<void> {
  for (const table of ["attachments", "sheets", "problems", "answers"] as const)
    await tx.deleteFrom(table).where("letter", "=", letter).execute();
}

async function writeLetter(tx: Tx, letter: number, outcome: Outcome): Promise<void> {
  await tx
    .updateTable("letters")
    .set({
      state: outcome.state,
      why: outcome.why ?? null,
      buyer: outcome.buyer,
      sender: outcome.letter.from ?? null,
      subject: outcome.letter.subject,
      message_id: outcome.letter.messageId ?? null,
      dated_at: outcome.letter.date?.toISOString() ?? null,
      proof: outcome.proof ?? null,
      thread: outcome.thread ?? null,
      verdict: outcome.report.verdict,
      for_person: outcome.forPerson === true ? 1 : 0,
      alarm: outcome.alarm === undefined ? null : JSON.stringify(outcome.alarm),
      to_pack: outcome.isToPack === true ? 1 : 0,
    })
    .where("id", "=", letter)
    .execute();
}

async function writeAttachments(tx: Tx, letter: number, { report }: Outcome, shas: Shas): Promise<void> {
  const rows = report.files.map(({ file: { id, file, kind } }) => {
    const bytes_sha = shas.attachments.get(id);
    if (bytes_sha === undefined) throw new Error(`attachment ${id} has no bytes`);
    return { id, letter, file, kind, bytes_sha };
  });
  await insertAll(tx, "attachments", rows);
}

/** A sheet that was put elsewhere keeps the bytes with which it came. */
async function writeOriginals(tx: Tx, letter: number, { report }: Outcome): Promise<void> {
  for (const { sheet, old } of report.moved?.sheets ?? []) {
    const { file, kind, bytes_sha } = await tx
      .selectFrom("attachments")
      .select(["file", "kind", "bytes_sha"])
      .where("id", "=", old.id)
      .executeTakeFirstOrThrow();
    await tx.insertInto("attachments").values({ id: sheet.id, letter, file, kind, bytes_sha }).execute();
  }
}

async function writeAnswer(
  tx: Tx,
  letter: number,
  { answer }: Outcome,
  shas: Shas,
  now: Date,
): Promise<void> {
  if (answer === undefined || shas.answer === undefined) return;
  await tx
    .insertInto("answers")
    .values({
      letter,
      message_id: answer.messageId,
      recipient: answer.recipient,
      copies: JSON.stringify(answer.copies ?? []),
      subject: answer.subject,
      bytes_sha: shas.answer,
      made_at: now.toISOString(),
    })
    .execute();
}

/** Writes that all that a letter said is dealt with. */
export async function writeDealtWith(tx: Tx, letter: number, now: Date): Promise<void> {
  await tx
    .updateTable("letters")
    .set({ dealt_with_at: now.toISOString() })
    .where("id", "=", letter)
    .execute();
}

/** What Burin itself did with a letter. */
export async function writeEvent(
  tx: Tx,
  letter: number,
  what: string,
  words: string,
  at: Date,
): Promise<void> {
  await writeHappening(tx, { at, actor: "burin", subject: "letter", subject_id: letter, what, words });
}

/** Makes sure that nothing has changed what the report was made from, and counts the change. Throws StateMoved. */
async function moveOn(tx: Tx, { buyer, version, changes, kept = [], released }: Outcome): Promise<void> {
  const isChanged = changes.length + kept.length > 0 || released !== undefined;
  const next = version + (isChanged ? 1 : 0);
  const moved =
    version === 0
      ? await tx
          .insertInto("buyers")
          .values({ buyer, version: Math.max(next, 1) })
          .onConflict((conflict) => conflict.doNothing())
          .returning("version")
          .executeTakeFirst()
      : await tx
          .updateTable("buyers")
          .set({ version: next })
          .where("buyer", "=", buyer)
          .where("version", "=", version)
          .returning("version")
          .executeTakeFirst();
  if (moved === undefined) throw new StateMoved(`${buyer} has more than version ${version} by now`);
}

async function writeSheets(tx: Tx, letter: number, { report, buyer }: Outcome): Promise<void> {
  const rows = [...report.sheets, ...(report.moved?.sheets ?? [])].map(({ sheet, verdict, cut }) => ({
    id: sheet.id,
    letter,
    buyer,
    order_key: orderKey(sheet.order ?? ""),
    kind: sheet.kind,
    edition: sheet.edition.name,
    station: sheet.mark ?? null,
    position: sheet.kind === "device" ? (sheet.position ?? null) : null,
    verdict,
    shape: sheetShape,
    content: JSON.stringify(sheet),
    cut: JSON.stringify(cut),
  }));
  await insertAll(tx, "sheets", rows);
}

async function writeProblems(tx: Tx, letter: number, { report }: Outcome): Promise<void> {
  const rows = (problems: readonly Problem[], order_key: string | null) =>
    problems.map(({ check, wording, severity, verdict, facts, spots }) => ({
      letter,
      order_key,
      check,
      wording,
      severity,
      verdict,
      shape: problemShape,
      facts: JSON.stringify(facts),
      spots: JSON.stringify(spots),
    }));
  const all = [
    ...report.files.flatMap(({ problems }) => rows(problems, null)),
    ...report.sheets.flatMap(({ sheet, problems }) => rows(problems, orderKey(sheet.order ?? ""))),
    ...report.orders.flatMap(({ order, problems }) => rows(problems, orderKey(order.number))),
    ...rows(report.problems, null),
  ];
  await insertAll(tx, "problems", all);
}
