import { randomBytes } from "node:crypto";
import type { Kysely, Transaction } from "kysely";
import type { RecentAnswers } from "../ports/store.ts";
import type { Tables } from "./tables.ts";

type Db = Kysely<Tables>;

/** When answers were made since a moment, and how many letters of the sender wait. */
export async function recentAnswers(
  db: Db,
  moment: Date,
  sender: string,
  thread: string,
  most: number,
): Promise<RecentAnswers> {
  const made = db
    .selectFrom("answers")
    .select("made_at")
    .where("made_at", ">=", moment.toISOString())
    .orderBy("made_at", "desc")
    .limit(Math.min(most, Number.MAX_SAFE_INTEGER));
  const ofLetters = made.innerJoin("letters", "letters.id", "answers.letter");
  const times = (rows: readonly { readonly made_at: string }[]) =>
    rows.map(({ made_at }) => new Date(made_at)).toReversed();
  const toAll = times(await made.execute());
  const toOne = times(await ofLetters.where("letters.sender", "=", sender).execute());
  const inThread = times(await ofLetters.where("letters.thread", "=", thread).execute());
  const { waiting } = await db
    .selectFrom("letters")
    .select((eb) => eb.fn.countAll<number>().as("waiting"))
    .where("state", "=", "received")
    .where("sender", "=", sender)
    .executeTakeFirstOrThrow();
  return { toOne, toAll, inThread, waiting };
}

export async function threadOf(db: Db, messageIds: readonly string[]): Promise<string | undefined> {
  if (messageIds.length === 0) return undefined;
  const first = await db
    .selectFrom("letters")
    .innerJoin("answers", "answers.letter", "letters.id")
    .select("letters.thread")
    .where("answers.message_id", "in", messageIds)
    .where("letters.thread", "is not", null)
    .orderBy("letters.id")
    .executeTakeFirst();
  return first?.thread ?? undefined;
}

/** Whether anybody has an order of one of these numbers. */
export async function numbersKnown(db: Db, keys: readonly string[]): Promise<boolean> {
  if (keys.length === 0) return false;
  const found = await db.selectFrom("numbers").select("key").where("key", "in", keys).executeTakeFirst();
  return found !== undefined;
}

/**
 * Whether a letter of this sender was ever proved. If the domain is one company's, any proved letter of the domain
 * counts.
 */
export async function isProved(db: Db, sender: string): Promise<boolean> {
  const own = await db
    .selectFrom("letters")
    .select("id")
    .where("sender", "=", sender)
    .where("proof", "=", "pass")
    .executeTakeFirst();
  if (own !== undefined) return true;
  // A number keeps a domain only if that was proved and is not shared.
  const domain = sender.split("@")[1] ?? "";
  const order = await db.selectFrom("numbers").select("key").where("domain", "=", domain).executeTakeFirst();
  return order !== undefined;
}

/** Writes that the answer to a letter came back. False if that was known, or if the letter got no answer. */
export async function returned(tx: Transaction<Tables>, letter: number, why: string): Promise<boolean> {
  const changed = await tx
    .updateTable("letters")
    .set({ state: "refused", why, dealt_with_at: null })
    .where("id", "=", letter)
    .where("state", "in", ["sent", "sending", "unknown"])
    .returning("id")
    .executeTakeFirst();
  return changed !== undefined;
}

/** A secret of the record's own. Two programs that make it at once get the same one. */
export async function secretOf(db: Db, name: string): Promise<string> {
  await db
    .insertInto("secrets")
    .values({ name, value: randomBytes(32).toString("hex") })
    .onConflict((conflict) => conflict.column("name").doNothing())
    .execute();
  const { value } = await db
    .selectFrom("secrets")
    .select("value")
    .where("name", "=", name)
    .executeTakeFirstOrThrow();
  return value;
}
