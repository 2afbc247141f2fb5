import type { Transaction } from "kysely";
import { countingAfter, type OrderReport } from "../judging/report.ts";
import { gatherOrders } from "../orders/gather.ts";
import { plainText } from "../orders/keys.ts";
import { isNoNumber } from "../orders/no-number.ts";
import { stillMissing } from "../orders/still-missing.ts";
import type { Outcome } from "../ports/store.ts";
import type { Problem } from "../trade/problem.ts";
import type { Sheet } from "../trade/sheet.ts";
import { writeKept } from "./kept.ts";
import type { Tables } from "./tables.ts";

type Tx = Transaction<Tables>;

/** Where the outcome's bytes were put: attachments by their ids, and the answer. */
interface Shas {
  readonly attachments: ReadonlyMap<string, string>;
  readonly answer?: string;
}

/** Writes everything that checking a letter has led to. A letter checked before is written anew. */
export async function writeOutcome(
  tx: Tx,
  letter: number,
  outcome: Outcome,
  shas: Shas,
  now: Date,
): Promise<void> {
  const { report, buyer, why, state } = outcome;
  for (const table of [
    "attachments",
    "sheets",
    "problems",
    "order_letters",
    "answers",
    "kept_words",
  ] as const)
    await tx.deleteFrom(table).where("letter", "=", letter).execute();

  await tx
    .updateTable("letters")
    .set({
      state,
      why: why ?? null,
      buyer,
      sender: outcome.letter.from ?? null,
      subject: outcome.letter.subject,
      message_id: outcome.letter.messageId ?? null,
      proof: outcome.proof ?? null,
      thread: outcome.thread ?? null,
      verdict: report.verdict,
    })
    .where("id", "=", letter)
    .execute();
  for (const { file } of report.files) {
    const bytes_sha = shas.attachments.get(file.id);
    if (bytes_sha === undefined) throw new Error(`attachment ${file.id} has no bytes`);
    await tx
      .insertInto("attachments")
      .values({ id: file.id, letter, file: file.file, kind: file.kind, bytes_sha })
      .execute();
  }
  await writeSheets(tx, letter, outcome);
  await writeProblems(tx, letter, outcome);
  // A letter that is not answered, being a machine's, a forger's or nobody's, changes no order.
  if (state === "ready") {
    for (const order of report.orders) await writeOrder(tx, letter, buyer, order, outcome, now);
    await writeEmptied(tx, letter, outcome);
    await writeKept(tx, letter, outcome, now);
  }
  await writeReplies(tx, letter, outcome);
  if (outcome.answer !== undefined && shas.answer !== undefined)
    await tx
      .insertInto("answers")
      .values({
        letter,
        message_id: outcome.answer.messageId,
        recipient: outcome.answer.recipient,
        subject: outcome.answer.subject,
        bytes_sha: shas.answer,
        made_at: now.toISOString(),
      })
      .execute();
  await writeEvent(tx, letter, state, why ?? report.verdict, now);
}

export async function writeEvent(
  tx: Tx,
  letter: number,
  what: string,
  words: string,
  at: Date,
): Promise<void> {
  await tx.insertInto("events").values({ at: at.toISOString(), letter, what, words }).execute();
}

async function writeSheets(tx: Tx, letter: number, { report, buyer, state }: Outcome): Promise<void> {
  const counting = new Set(state === "ready" ? countingAfter(report).map((sheet) => sheet.id) : []);
  for (const { sheet, verdict, cut } of report.sheets)
    await tx
      .insertInto("sheets")
      .values({
        id: sheet.id,
        letter,
        buyer,
        order_key: keyOf(sheet),
        kind: sheet.kind,
        edition: sheet.edition.name,
        station: sheet.mark ?? null,
        position: sheet.kind === "device" ? (sheet.position ?? null) : null,
        verdict,
        counts: counting.has(sheet.id) ? 1 : 0,
        content: JSON.stringify(sheet),
        cut: JSON.stringify(cut),
      })
      .execute();
  if (state !== "ready") return;
  // Sheets that were stopped and are judged again count if nothing stops them now.
  const judged = new Set(report.orders.flatMap(({ order }) => order.sheets.map((sheet) => sheet.id)));
  const risen = report.earlier.map(({ id }) => id).filter((id) => judged.has(id) && counting.has(id));
  if (risen.length > 0) await tx.updateTable("sheets").set({ counts: 1 }).where("id", "in", risen).execute();
  // Sheets that new ones replace, and earlier ones that a stopping problem now points at, count no more.
  const fallen = [...report.replaced, ...report.earlier]
    .filter((sheet) => !counting.has(sheet.id))
    .map((sheet) => sheet.id);
  if (fallen.length > 0)
    await tx.updateTable("sheets").set({ counts: 0 }).where("id", "in", fallen).execute();
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
      facts: JSON.stringify(facts),
      spots: JSON.stringify(spots),
    }));
  const all = [
    ...report.files.flatMap(({ problems }) => rows(problems, null)),
    ...report.sheets.flatMap(({ sheet, problems }) => rows(problems, keyOf(sheet))),
    ...report.orders.flatMap(({ order, problems }) => rows(problems, plainText(order.number))),
    ...rows(report.problems, null),
  ];
  for (const row of all) await tx.insertInto("problems").values(row).execute();
}

async function writeOrder(
  tx: Tx,
  letter: number,
  buyer: string,
  { order, verdict }: OrderReport,
  { report, domain }: Outcome,
  now: Date,
): Promise<void> {
  // Sheets without a number belong to no order until they come again with one.
  if (isNoNumber(order.number)) return;
  const key = plainText(order.number);
  const counting = countingAfter(report).filter((sheet) => keyOf(sheet) === key);
  const state = {
    project: order.project ?? null,
    verdict,
    missing: JSON.stringify(gatherOrders(counting).flatMap((one) => stillMissing(one, []))),
    changed_at: now.toISOString(),
  };
  const { id } = await tx
    .insertInto("orders")
    .values({
      buyer,
      key,
      number: order.number,
      opened_at: now.toISOString(),
      domain: domain ?? null,
      ...state,
    })
    .onConflict((conflict) => conflict.columns(["buyer", "key"]).doUpdateSet(state))
    .returning("id")
    .executeTakeFirstOrThrow();
  await tx
    .insertInto("order_letters")
    .values({ order_id: id, letter, verdict, missing: state.missing })
    .execute();
}

/** Orders whose last sheet has come again under another number: they are open no more. */
async function writeEmptied(tx: Tx, letter: number, { report, buyer }: Outcome): Promise<void> {
  const left = new Set(countingAfter(report).map(keyOf));
  const touched = new Set(report.orders.map(({ order }) => plainText(order.number)));
  for (const key of new Set(report.replaced.map(keyOf))) {
    if (left.has(key) || touched.has(key)) continue;
    const state = { verdict: null, missing: "[]" };
    const order = await tx
      .updateTable("orders")
      .set(state)
      .where("buyer", "=", buyer)
      .where("key", "=", key)
      .returning("id")
      .executeTakeFirst();
    if (order !== undefined)
      await tx
        .insertInto("order_letters")
        .values({ order_id: order.id, letter, ...state })
        .execute();
  }
}

/** Orders that the letter speaks of and does not change. */
async function writeReplies(tx: Tx, letter: number, { buyer, about = [] }: Outcome): Promise<void> {
  for (const number of about) {
    const order = await tx
      .selectFrom("orders")
      .select(["id", "verdict", "missing"])
      .where("buyer", "=", buyer)
      .where("key", "=", plainText(number))
      .executeTakeFirst();
    if (order === undefined) continue;
    const { id: order_id, ...state } = order;
    await tx
      .insertInto("order_letters")
      .values({ order_id, letter, ...state, changes: 0 })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
}

function keyOf({ order }: Sheet): string {
  return plainText(order ?? "");
}
