import type { Transaction } from "kysely";
import type { Revision } from "../judging/changes.ts";
import { orderKey } from "../judging/state.ts";
import type { Reminded } from "../ports/store.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { QuestionOf } from "../trade/question.ts";
import type { Released } from "../trade/released.ts";
import { writeKept } from "./kept-words.ts";
import type { Tables } from "./tables.ts";
import { writeRevision } from "./write-revision.ts";

type Tx = Transaction<Tables>;

/** What a letter changes in the orders of its buyer. Events keep it, and the tables of orders can be made of it again. */
export interface Judged {
  readonly buyer: string;
  readonly domain?: string;
  readonly changes: readonly Revision[];
  /** Numbers of orders that the letter is about, whether or not it changes them. */
  readonly about: readonly string[];
  /** Questions that the sender has settled, and what one of our own people has decided. */
  readonly settles: readonly QuestionOf[];
  readonly decides: readonly QuestionOf[];
  readonly kept: readonly KeptWord[];
  /** What is handed to engraving, or engraved, of orders by their numbers. */
  readonly released?: Readonly<Record<string, Released>>;
  /** What its buyer was reminded of: the number of the order, and whether it was the last reminder. */
  readonly reminded?: Reminded;
  /** Which of our own people did it, where it is a note. */
  readonly by?: string;
}

/** Writes the tables of orders. What the same letter led to before gives way. Throws StateMoved. */
export async function writeJudged(tx: Tx, letter: number, judged: Judged, now: Date): Promise<void> {
  for (const table of ["order_letters", "kept_words"] as const)
    await tx.deleteFrom(table).where("letter", "=", letter).execute();
  for (const revision of judged.changes) await writeRevision(tx, letter, judged, revision, now);
  await writeKept(tx, letter, judged, now);
  await writeReplies(tx, letter, judged);
  await writeReminder(tx, letter, judged, now);
  for (const [number, released] of Object.entries(judged.released ?? {}))
    await tx
      .updateTable("orders")
      .set({ released: JSON.stringify(released) })
      .where("buyer", "=", judged.buyer)
      .where("key", "=", orderKey(number))
      .execute();
}

async function writeReminder(tx: Tx, letter: number, { buyer, reminded }: Judged, now: Date): Promise<void> {
  if (reminded === undefined) return;
  const { id } = await tx
    .selectFrom("orders")
    .select("id")
    .where("buyer", "=", buyer)
    .where("key", "=", orderKey(reminded.order))
    .executeTakeFirstOrThrow();
  const reminder = { order_id: id, letter, what: reminded.what, at: now.toISOString() };
  await tx.insertInto("reminders").values(reminder).execute();
  if (reminded.what === "person")
    await tx.updateTable("orders").set({ for_person: 1 }).where("id", "=", id).execute();
}

async function writeReplies(tx: Tx, letter: number, { buyer, about }: Judged): Promise<void> {
  for (const number of about) {
    const order = await tx
      .selectFrom("orders")
      .select("id")
      .where("buyer", "=", buyer)
      .where("key", "=", orderKey(number))
      .executeTakeFirst();
    if (order !== undefined)
      await tx
        .insertInto("order_letters")
        .values({ order_id: order.id, letter })
        .onConflict((conflict) => conflict.doNothing())
        .execute();
  }
}
