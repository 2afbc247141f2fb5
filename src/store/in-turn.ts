import { type Kysely, sql, type Transaction } from "kysely";
import { isPostgres } from "./dialect.ts";

/** What whoever writes in turn locks; any number that nothing else of the database locks. */
const turn = 2_711_083;

/**
 * A transaction that no other of its kind comes in between. SQLite lets one write at a time. On PostgreSQL they take
 * turns too: every one of them adds to the one chain of events.
 */
export function inTurn<Tables, T>(
  db: Kysely<Tables>,
  write: (tx: Transaction<Tables>) => Promise<T>,
): Promise<T> {
  if (!isPostgres(db)) return db.transaction().execute(write);
  return db
    .transaction()
    .setIsolationLevel("read committed")
    .execute(async (tx) => {
      // Released when the transaction ends, and by the server when the worker dies.
      await sql`SELECT pg_advisory_xact_lock(${turn})`.execute(tx);
      return write(tx);
    });
}
