import { type Kysely, sql, type Transaction } from "kysely";
import { orderKey } from "../judging/state.ts";
import type { By, ErasePlan, EraseScope } from "../ports/store.ts";
import { safeName } from "../release/names.ts";
import type { Carried } from "../trade/carried.ts";
import { isVerdict } from "../trade/problem.ts";
import type { FileId } from "../trade/sheet.ts";
import { among } from "./among.ts";
import { type Bound, boundTo, planOf } from "./erase-plan.ts";
import { leftOf, writeHappening } from "./events.ts";
import { inTurn } from "./in-turn.ts";
import {
  actorLeft,
  bareProblem,
  countedOf,
  type NewNames,
  questionName,
  residueOf,
  standInOf,
} from "./residue.ts";
import { problemFrom, problemShape } from "./shapes.ts";
import type { Tables } from "./tables.ts";
import type { Judged } from "./write-judged.ts";

type Tx = Transaction<Tables>;

/** What an erasing's event keeps, in place of what it has erased. */
export interface Erasing {
  readonly standIn: string;
  /** The hash of what is left of the events of the person (`leftOf`). */
  readonly left: string;
}

/** How long managers' weeks are known by their keys, in milliseconds: a week is told once. */
const weekKnown = 8 * 86_400_000;

/**
 * Erases what a plan says, in one transaction, and leaves in `to_delete` what lies outside the tables. Where anything
 * stands in the way of an erasing that was asked for, nothing is erased.
 */
export async function erase(
  db: Kysely<Tables>,
  scope: EraseScope,
  by: By,
  now: Date,
): Promise<ErasePlan & { readonly standIn?: string }> {
  return inTurn(db, async (tx) => {
    // Takes the record to itself before anything is read: no letter comes in between.
    await tx.deleteFrom("to_delete").where("what", "=", "nothing").execute();
    const bound = await boundTo(tx, scope, now);
    const plan = planOf(scope, bound);
    const isRefused = scope.before === undefined && plan.inTheWay.length > 0;
    if (isRefused || plan.letters.length + plan.orders.length === 0) return plan;
    const standIn = await eraseBound(tx, scope.address, bound, by, now);
    return { ...plan, standIn };
  });
}

async function eraseBound(tx: Tx, address: string, bound: Bound, by: By, now: Date): Promise<string> {
  const letters = bound.letters.map(({ id }) => id);
  const last = await tx
    .selectFrom("events")
    .select((eb) => eb.fn.max("subject_id").as("number"))
    .where("subject", "=", "person")
    .executeTakeFirst();
  const number = (last?.number ?? 0) + 1;
  const names = await namesFor(tx, standInOf(number), address, bound);
  await leaveToDelete(tx, letters);
  const left = await residuesOf(tx, letters, names);
  const content: Erasing = { standIn: names.standIn, left: leftOf(left) };
  const erasing = await writeHappening(tx, {
    at: now,
    actor: by.name,
    subject: "person",
    subject_id: number,
    what: "erased",
    words: by.why,
    content,
  });
  for (const { id, ...rest } of left)
    await tx
      .updateTable("events")
      .set({ ...rest, salt: null, erased_by: erasing })
      .where("id", "=", id)
      .execute();
  await bareOrders(tx, bound, names);
  await bareLetters(tx, letters, names, now);
  await closeErased(tx, names.standIn, now);
  // What is judged of his orders meanwhile is judged again.
  await tx
    .updateTable("buyers")
    .set((eb) => ({ version: eb("version", "+", 1) }))
    .where("buyer", "=", address)
    .execute();
  for (const one of names.addresses) await forget(tx, one);
  return names.standIn;
}

async function namesFor(
  tx: Tx,
  standIn: string,
  address: string,
  { orders, letters }: Bound,
): Promise<NewNames> {
  const names = new Map(orders.map(({ key }, i) => [key, key === "" ? "" : `${standIn} order ${i + 1}`]));
  const keys = new Map(orders.map(({ id, key }) => [id, key]));
  const rows = await tx
    .selectFrom("questions")
    .select(["order_id", "key"])
    .where("order_id", "in", among(orders.map(({ id }) => id)))
    .orderBy("id")
    .execute();
  const questions = new Map<string, string>();
  for (const { order_id, key } of rows) {
    const name = questionName(keys.get(order_id) ?? "", key);
    if (!questions.has(name)) questions.set(name, String(questions.size + 1));
  }
  const ids = letters.map(({ id }) => id);
  const answered = await tx
    .selectFrom("answers")
    .select("recipient")
    .where("letter", "in", among(ids))
    .execute();
  const addresses = new Set([
    address,
    ...letters.flatMap(({ sender }) => sender ?? []),
    ...answered.map(({ recipient }) => recipient),
  ]);
  return { standIn, orders: names, questions, addresses };
}

/** Writes down which bytes and packages go with some letters. */
async function leaveToDelete(tx: Tx, letters: readonly number[]): Promise<void> {
  const shas = await tx
    .selectFrom("letters")
    .select("bytes_sha")
    .where("id", "in", among(letters))
    .union((eb) => eb.selectFrom("attachments").select("bytes_sha").where("letter", "in", among(letters)))
    .union((eb) => eb.selectFrom("answers").select("bytes_sha").where("letter", "in", among(letters)))
    .execute();
  const events = await tx
    .selectFrom("events")
    .select("content")
    .where("subject", "=", "letter")
    .where("subject_id", "in", among(letters))
    .where("content", "is not", null)
    .execute();
  const released = events.flatMap(({ content }) =>
    Object.entries((JSON.parse(content ?? "") as Judged).released ?? {}),
  );
  const all = [
    { what: "traces", name: "" },
    ...shas.map(({ bytes_sha }) => ({ what: "bytes", name: bytes_sha })),
    // As packages are named when they are made.
    ...released.map(([order, { revision }]) => ({
      what: "package",
      name: `${safeName(order)} revision ${revision}`,
    })),
  ];
  for (const one of all)
    await tx
      .insertInto("to_delete")
      .values(one)
      .onConflict((conflict) => conflict.doNothing())
      .execute();
}

/** What is left of the events of some letters. */
async function residuesOf(tx: Tx, letters: readonly number[], names: NewNames) {
  const rows = await tx
    .selectFrom("events")
    .select(["id", "actor", "words", "content"])
    .where("subject", "=", "letter")
    .where("subject_id", "in", among(letters))
    .where("erased_by", "is", null)
    .orderBy("id")
    .execute();
  return rows.map(({ id, actor, words, content }) => ({
    id,
    actor: actorLeft(actor, names),
    words: isVerdict(words) ? words : "",
    content: content === null ? null : JSON.stringify(residueOf(JSON.parse(content) as Judged, names)),
  }));
}

/** Makes of orders what the residues of their events would make of them. */
async function bareOrders(tx: Tx, { orders }: Bound, names: NewNames): Promise<void> {
  const ids = orders.map(({ id }) => id);
  const revisions = await tx
    .selectFrom("revisions")
    .select(["id", "carried", "withdrawn", "problems", "shape"])
    .where("order_id", "in", among(ids))
    .execute();
  for (const { id, shape, ...revision } of revisions) {
    const { carried, withdrawn, problems } = countedOf({
      carried: JSON.parse(revision.carried) as Carried[],
      withdrawn: JSON.parse(revision.withdrawn) as FileId[],
      problems: (JSON.parse(revision.problems) as unknown[]).map((problem) => problemFrom(problem, shape)),
    });
    await tx
      .updateTable("revisions")
      .set({
        missing: "[]",
        carried: JSON.stringify(carried),
        withdrawn: JSON.stringify(withdrawn),
        problems: JSON.stringify(problems),
        shape: problemShape,
      })
      .where("id", "=", id)
      .execute();
  }
  await tx
    .deleteFrom("revision_sheets")
    .where("revision", "in", (eb) =>
      eb.selectFrom("revisions").select("id").where("order_id", "in", among(ids)),
    )
    .execute();
  await tx.deleteFrom("reminders").where("order_id", "in", among(ids)).execute();
  for (const { id, key, buyer } of orders) {
    const name = names.orders.get(key) ?? "";
    await tx.deleteFrom("numbers").where("key", "=", key).where("buyer", "=", buyer).execute();
    await tx
      .updateTable("orders")
      .set({ buyer: names.standIn, key: orderKey(name), number: name, project: null })
      .where("id", "=", id)
      .execute();
    await bareQuestions(tx, id, key, names);
  }
}

async function bareQuestions(tx: Tx, order: number, of: string, names: NewNames): Promise<void> {
  const rows = await tx.selectFrom("questions").selectAll().where("order_id", "=", order).execute();
  for (const { id, key, problem, shape, decided_by } of rows)
    await tx
      .updateTable("questions")
      .set({
        key: names.questions.get(questionName(of, key)) ?? "",
        problem: JSON.stringify(bareProblem(problemFrom(JSON.parse(problem), shape))),
        shape: problemShape,
        station: null,
        position: null,
        decided_by: decided_by === null ? null : actorLeft(decided_by, names),
      })
      .where("id", "=", id)
      .execute();
}

/** Leaves of letters that they came, when, and what they came to, with the checks by their ids. */
async function bareLetters(
  tx: Tx,
  letters: readonly number[],
  { standIn }: NewNames,
  now: Date,
): Promise<void> {
  await tx.deleteFrom("attachments").where("letter", "in", among(letters)).execute();
  await tx.deleteFrom("answers").where("letter", "in", among(letters)).execute();
  await tx.deleteFrom("kept_words").where("letter", "in", among(letters)).execute();
  await tx
    .updateTable("sheets")
    .set({ buyer: standIn, order_key: "", station: null, position: null, content: "{}", cut: "[]" })
    .where("letter", "in", among(letters))
    .execute();
  await tx
    .updateTable("problems")
    .set({ order_key: null, facts: "{}", spots: "[]" })
    .where("letter", "in", among(letters))
    .execute();
  // The key of a letter is a hash of all of it. It stays, so that a letter which is still in its mailbox is not
  // answered once more.
  await tx
    .updateTable("letters")
    .set((eb) => ({ key: sql<string>`'erased ' || ${eb.ref("id")}` }))
    .where("id", "in", among(letters))
    .where("kind", "=", "note")
    .where((eb) =>
      eb.or([
        eb("buyer", "!=", ""),
        eb("received_at", "<", new Date(now.getTime() - weekKnown).toISOString()),
      ]),
    )
    .execute();
  await tx
    .updateTable("letters")
    .set({
      bytes_sha: "",
      sender: standIn,
      buyer: standIn,
      subject: null,
      message_id: null,
      dated_at: null,
      lane: null,
      proof: null,
      thread: null,
      alarm: null,
      to_pack: 0,
      let_in_as: null,
    })
    .where("id", "in", among(letters))
    .execute();
  // Days still count for how long a letter waited for a person, and that it was not taken.
  await tx
    .updateTable("letters")
    .set((eb) => ({
      dealt_with_at: eb.fn.coalesce("dealt_with_at", eb.val(now.toISOString())),
      why: eb.case().when("why", "is", null).then(null).else("").end(),
    }))
    .where("id", "in", among(letters))
    .execute();
}

/** Closes the orders of a stand-in: they are counted and no longer shown, searched for, awaited or released. */
export async function closeErased(tx: Tx, standIn: string, now: Date): Promise<void> {
  await tx
    .deleteFrom("order_terms")
    .where("order_id", "in", (eb) => eb.selectFrom("orders").select("id").where("buyer", "=", standIn))
    .execute();
  await tx
    .updateTable("orders")
    .set({ latest: null, verdict: null, for_person: 0, released: null, erased_at: now.toISOString() })
    .where("buyer", "=", standIn)
    .execute();
}

/** Forgets what was known of somebody besides his letters, if none of them is left. */
async function forget(tx: Tx, address: string): Promise<void> {
  if (address === "" || (await isKnown(tx, address))) return;
  await tx.deleteFrom("buyers").where("buyer", "=", address).execute();
  // Lines of a company may be his. What else stands in all its letters is learnt anew.
  const names = [address, address.split("@").at(-1) ?? ""];
  await tx.deleteFrom("lines").where("sender", "in", names).execute();
}

async function isKnown(tx: Tx, address: string): Promise<boolean> {
  const order = await tx.selectFrom("orders").select("id").where("buyer", "=", address).executeTakeFirst();
  const own = await tx.selectFrom("letters").select("id").where("sender", "=", address).executeTakeFirst();
  const letter = await tx.selectFrom("letters").select("id").where("buyer", "=", address).executeTakeFirst();
  return [order, own, letter].some((one) => one !== undefined);
}
