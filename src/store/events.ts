import { createHash } from "node:crypto";
import type { Kysely, Transaction } from "kysely";
import type { Tables } from "./tables.ts";

/** Something that happened, as the record keeps it. */
export interface Happening {
  readonly at: Date;
  /** "burin", or the name of one of our own people. */
  readonly actor: string;
  readonly subject: "letter" | "order" | "account";
  readonly subject_id: number | null;
  readonly what: string;
  readonly words: string;
  /** What the tables of orders follow from. */
  readonly content?: unknown;
}

type Written = Omit<Tables["events"], "id" | "hash">;

/** Writes an event behind the last. Its hash takes in the hash of the one before, so that none can be changed. */
export async function writeHappening(
  tx: Transaction<Tables>,
  { at, content, ...rest }: Happening,
): Promise<void> {
  const last = await tx.selectFrom("events").select("hash").orderBy("id", "desc").limit(1).executeTakeFirst();
  const event = {
    ...rest,
    at: at.toISOString(),
    content: content === undefined ? null : JSON.stringify(content),
  };
  await tx
    .insertInto("events")
    .values({ ...event, hash: chained(last?.hash ?? "", event) })
    .execute();
}

/** The hash of an event: SHA-256 (FIPS 180-4) over the hash before and all that the event says. */
export function chained(
  before: string,
  { at, actor, subject, subject_id, what, words, content }: Written,
): string {
  return createHash("sha256")
    .update(JSON.stringify([before, at, actor, subject, subject_id, what, words, content]))
    .digest("hex");
}

/** How many events there are, and the first whose hash does not fit; events are counted from 1. */
export async function recountEvents(
  db: Kysely<Tables>,
): Promise<{ readonly events: number; readonly broken?: number }> {
  const rows = await db.selectFrom("events").selectAll().orderBy("id").execute();
  let before = "";
  for (const [i, event] of rows.entries()) {
    if (event.hash !== chained(before, event)) return { events: rows.length, broken: i + 1 };
    before = event.hash;
  }
  return { events: rows.length };
}
