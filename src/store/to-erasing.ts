import type { Kysely } from "kysely";
import { chained, digestOf, newSalt, writeHappening } from "./events.ts";
import type { Tables } from "./tables.ts";
import { chainedWhole, type Whole } from "./to-notes.ts";

/** Brings a record to one of which letters and people can be erased while its chain of events stays whole. */
export async function toErasing(db: Kysely<never>): Promise<void> {
  const events = db.schema.alterTable("events");
  await events.addColumn("salt", "text").execute();
  await events.addColumn("digest", "text", (c) => c.notNull().defaultTo("")).execute();
  await events.addColumn("erased_by", "integer").execute();
  await db.schema.alterTable("orders").addColumn("erased_at", "text").execute();
  await db.schema.createIndex("letters_by_buyer").on("letters").column("buyer").execute();
  for (const table of ["letters", "attachments", "answers"])
    await db.schema.createIndex(`${table}_by_bytes`).on(table).column("bytes_sha").execute();
  await db.schema
    .createTable("to_delete")
    .addColumn("what", "text", (c) => c.notNull())
    .addColumn("name", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("to_delete_once", ["what", "name"])
    .execute();
  await chainAnew(db as unknown as Kysely<Tables>);
}

/** So many events are read at once. */
const some = 1_000;

/**
 * Chains the events anew, over digests of what they say. The chain before is recounted on the way: from the first
 * event that does not fit in it, hashes stay as they are, and fit in no chain.
 */
async function chainAnew(db: Kysely<Tables>): Promise<void> {
  let [old, hash, at, last, isWhole] = ["", "", "", 0, true];
  for (;;) {
    const rows = await db
      .selectFrom("events")
      .select(["id", "at", "actor", "subject", "subject_id", "what", "words", "content", "hash"])
      .where("id", ">", last)
      .orderBy("id")
      .limit(some)
      .execute();
    if (rows.length === 0) break;
    for (const { id, hash: before, ...event } of rows) {
      isWhole &&= before === chainedWhole(old, event satisfies Whole);
      const salt = newSalt();
      const digest = digestOf(salt, event);
      hash = chained(hash, event, digest);
      await db
        .updateTable("events")
        .set({ salt, digest, ...(isWhole ? { hash } : {}) })
        .where("id", "=", id)
        .execute();
      [old, at, last] = [before, event.at, id];
    }
  }
  if (last === 0 || !isWhole) return;
  await writeHappening(db, {
    at: new Date(at),
    actor: "burin",
    subject: "record",
    subject_id: null,
    what: "chained anew",
    words: `the chain before ended with ${old}`,
  });
}
