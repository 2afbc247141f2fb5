import type { Transaction } from "kysely";
import type { Revision } from "../judging/changes.ts";
import { isForPerson } from "../judging/for-person.ts";
import { orderKey } from "../judging/state.ts";
import { isAsReleased } from "../orders/piece.ts";
import { StateMoved } from "../ports/store.ts";
import type { Carried } from "../trade/carried.ts";
import type { QuestionOf } from "../trade/question.ts";
import type { Released } from "../trade/released.ts";
import { insertAll } from "./insert-all.ts";
import { readSheets } from "./read.ts";
import { isStandIn } from "./residue.ts";
import { problemShape } from "./shapes.ts";
import type { Tables } from "./tables.ts";
import { writeTerms } from "./terms.ts";
import type { Judged } from "./write-judged.ts";

type Tx = Transaction<Tables>;

/** Writes what an order is after a letter, and the questions that this leaves open or closes. Throws StateMoved. */
export async function writeRevision(
  tx: Tx,
  letter: number,
  { buyer, domain, settles, decides, by, released = {} }: Judged,
  revision: Revision,
  now: Date,
): Promise<void> {
  const key = orderKey(revision.number);
  if (!isStandIn(buyer)) await claimNumber(tx, key, buyer, domain);
  const project = revision.project ?? null;
  const order = await tx
    .insertInto("orders")
    .values({ buyer, key, number: revision.number, project, opened_at: now.toISOString(), latest: null })
    .onConflict((conflict) => conflict.columns(["buyer", "key"]).doUpdateSet({ project }))
    .returning(["id", "latest", "released"])
    .executeTakeFirstOrThrow();
  const before = await tx
    .selectFrom("revisions")
    .select("number")
    .where("id", "=", order.latest)
    .executeTakeFirst();
  const { id } = await tx
    .insertInto("revisions")
    .values({
      order_id: order.id,
      number: (before?.number ?? 0) + 1,
      at: now.toISOString(),
      cause: by === undefined ? "letter" : "person",
      letter,
      verdict: revision.verdict ?? null,
      missing: JSON.stringify(revision.missing),
      carried: JSON.stringify(revision.carried),
      withdrawn: JSON.stringify(revision.withdrawn),
      shape: problemShape,
      problems: JSON.stringify(revision.problems),
    })
    .returning("id")
    .executeTakeFirstOrThrow();
  const sheets = revision.sheets.map((sheet) => ({ revision: id, sheet }));
  await insertAll(tx, "revision_sheets", sheets);
  const isReleasedNow = Object.keys(released).some((number) => orderKey(number) === key);
  const forPerson =
    waitsForPerson(revision) || (!isReleasedNow && (await waitsForRelease(tx, order.released, revision)));
  await tx
    .updateTable("orders")
    .set({ latest: id, verdict: revision.verdict ?? null, for_person: forPerson ? 1 : 0 })
    .where("id", "=", order.id)
    .execute();
  await tx.insertInto("order_letters").values({ order_id: order.id, letter }).execute();
  const asked = { order: order.id, letter, now };
  await settleQuestions(tx, asked, keysIn(settles, key));
  await settleQuestions(tx, asked, keysIn(decides, key), by);
  await writeQuestions(tx, { order: order.id, revision: id, now }, revision);
  await writeTerms(tx, order.id);
}

/**
 * Whether an order that is released must not be cut as it is now: it has to be released anew, or mended before. Nobody
 * outside is reminded of that.
 */
async function waitsForRelease(
  tx: Tx,
  released: string | null,
  { verdict, sheets }: Revision,
): Promise<boolean> {
  if (released === null || verdict === undefined) return false;
  return verdict !== "pass" || !isAsReleased(await readSheets(tx, sheets), JSON.parse(released) as Released);
}

/** Whether something of an order waits for one of our own people. */
export function waitsForPerson({
  questions,
  carried,
}: {
  readonly questions: readonly { readonly problem: Parameters<typeof isForPerson>[0] }[];
  readonly carried: readonly Carried[];
}): boolean {
  return (
    questions.some(({ problem }) => isForPerson(problem)) || carried.some(({ what }) => what === "words")
  );
}

/** A number belongs to the buyer who names it first. Throws StateMoved when that was somebody else just now. */
async function claimNumber(tx: Tx, key: string, buyer: string, domain?: string): Promise<void> {
  if (key === "") return;
  await tx
    .insertInto("numbers")
    .values({ key, buyer, domain: domain ?? null })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
  const owner = await tx
    .selectFrom("numbers")
    .select("buyer")
    .where("key", "=", key)
    .executeTakeFirstOrThrow();
  if (owner.buyer === buyer) return;
  // In older records a stranger could have an order of the buyer's number. Such an order stays his.
  const own = await tx
    .selectFrom("orders")
    .select("id")
    .where("buyer", "=", buyer)
    .where("key", "=", key)
    .executeTakeFirst();
  if (own === undefined) throw new StateMoved(`order ${key} is another buyer's by now`);
}

function keysIn(questions: readonly QuestionOf[], key: string): string[] {
  return questions.filter((one) => orderKey(one.order) === key).map((one) => one.key);
}

/** Closes the open questions to which a letter says that it is meant so, or that one of our own people decides. */
async function settleQuestions(
  tx: Tx,
  { order, letter, now }: { readonly order: number; readonly letter: number; readonly now: Date },
  keys: readonly string[],
  by?: string,
): Promise<void> {
  if (keys.length > 0)
    await tx
      .updateTable("questions")
      .set({ settled_at: now.toISOString(), settled_by: letter, decided_by: by ?? null })
      .where("order_id", "=", order)
      .where("key", "in", keys)
      .where("closed_at", "is", null)
      .execute();
}

/**
 * Writes the questions of a revision. Those that it still asks stay open, and those that it no longer asks are closed
 * by it.
 */
async function writeQuestions(
  tx: Tx,
  { order, revision, now }: { readonly order: number; readonly revision: number; readonly now: Date },
  { questions }: Revision,
): Promise<void> {
  const open = await tx
    .selectFrom("questions")
    .select(["id", "key"])
    .where("order_id", "=", order)
    .where("closed_at", "is", null)
    .execute();
  const asked = new Map(questions.map((question) => [question.key, question]));
  const closed = open.filter(({ key }) => !asked.has(key)).map(({ id }) => id);
  if (closed.length > 0)
    await tx
      .updateTable("questions")
      .set({ closed_at: now.toISOString(), closed_by: revision })
      .where("id", "in", closed)
      .execute();
  const isOpen = new Set(open.map(({ key }) => key));
  const rows = questions
    .filter(({ key }) => !isOpen.has(key))
    .map(({ key, number, problem, station, position }) => ({
      order_id: order,
      key,
      number,
      shape: problemShape,
      problem: JSON.stringify(problem),
      station: station ?? null,
      position: position ?? null,
      opened_at: now.toISOString(),
      opened_by: revision,
    }));
  await insertAll(tx, "questions", rows);
}
