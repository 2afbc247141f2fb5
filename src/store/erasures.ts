import { type Kysely, sql } from "kysely";
import type { Deleted, Erasures } from "../ports/store.ts";
import type { Blobs } from "./blobs.ts";
import { isPostgres } from "./dialect.ts";
import { erase } from "./erase.ts";
import { boundTo, peopleBefore, planOf } from "./erase-plan.ts";
import { inTurn } from "./in-turn.ts";
import type { Tables } from "./tables.ts";

/** Erasing, over a database and a place for bytes. */
export function erasuresOver(db: Kysely<Tables>, blobs: Blobs): Erasures {
  return {
    plan: async (scope, now) => planOf(scope, await boundTo(db, scope, now)),
    erase: (scope, by, now) => erase(db, scope, by, now),
    due: (before) => peopleBefore(db, before),
    finish: (remove) => finish(db, blobs, remove),
  };
}

/**
 * Deletes what is left to delete. A thing leaves the list once it is gone; "traces" leaves it last, when the file of the
 * record is written anew and its log is empty.
 */
async function finish(
  db: Kysely<Tables>,
  blobs: Blobs,
  remove: (name: string) => Promise<boolean>,
): Promise<Deleted> {
  const left = await db.selectFrom("to_delete").selectAll().execute();
  const deleted = { bytes: 0, packages: [] as string[], notFound: [] as string[] };
  for (const { what, name } of left) {
    if (what === "traces") continue;
    if (what === "package") deleted[(await remove(name)) ? "packages" : "notFound"].push(name);
    await inTurn(db, async (tx) => {
      // Deleting from the table first keeps all others from writing until the bytes are gone.
      await tx.deleteFrom("to_delete").where("what", "=", what).where("name", "=", name).execute();
      if (what !== "bytes" || (await isNamed(tx, name))) return;
      await blobs.remove(name, tx);
      deleted.bytes++;
    });
  }
  return { ...deleted, isFree: left.length === 0 || (await freeFile(db)) };
}

/** Whether any letter, file or answer has these bytes. */
async function isNamed(db: Kysely<Tables>, sha: string): Promise<boolean> {
  for (const table of ["letters", "attachments", "answers"] as const) {
    const row = await db
      .selectFrom(table)
      .select("bytes_sha")
      .where("bytes_sha", "=", sha)
      .executeTakeFirst();
    if (row !== undefined) return true;
  }
  return false;
}

/** Writes the file of the record anew, without what was erased, and empties its log. False while others read there. */
async function freeFile(db: Kysely<Tables>): Promise<boolean> {
  if (isPostgres(db)) {
    // Source: PostgreSQL 15's documentation, "VACUUM": FULL writes a table anew without what was deleted. Nothing
    // empties the server's log and its backups but their own age.
    await sql`VACUUM FULL`.execute(db);
    await db.deleteFrom("to_delete").where("what", "=", "traces").execute();
    return true;
  }
  // Source: SQLite's documentation, "VACUUM" ("to prevent deleted content from being recovered") and
  // "PRAGMA wal_checkpoint": TRUNCATE leaves the log with no bytes, unless somebody still reads in it (busy).
  await sql`VACUUM`.execute(db);
  const { rows } = await sql<{ busy: number }>`PRAGMA wal_checkpoint(TRUNCATE)`.execute(db);
  if (rows.some(({ busy }) => busy !== 0)) return false;
  await db.deleteFrom("to_delete").where("what", "=", "traces").execute();
  return true;
}
