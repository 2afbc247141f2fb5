import { Kysely, PostgresDialect, sql } from "kysely";
import { Pool, types } from "pg";
import { type Bell, serverBell } from "./bell.ts";
import type { Tables } from "./tables.ts";

/** Connections that one worker holds at most. */
const connections = 8;

/** How long to wait for a connection, in milliseconds. */
const connectWithin = 10_000;

/** How long the server leaves a transaction open whose worker says nothing, in milliseconds. */
const idleFor = 60_000;

/** Names under which servers list a collation that compares texts byte by byte. */
const byBytes = /^(?:C|POSIX|C\.utf-?8)$/i;

// Counts are of this type. None of a record's is beyond what a number of JavaScript holds.
types.setTypeParser(types.builtins.INT8, Number);

/** Opens a record's database on a PostgreSQL server. Throws where the server or its database cannot be used. */
export async function openPostgres(
  url: string,
  password?: string,
): Promise<{ readonly db: Kysely<Tables>; readonly bell: Bell }> {
  const pool = new Pool({
    connectionString: url,
    ...(password === undefined ? {} : { password }),
    max: connections,
    connectionTimeoutMillis: connectWithin,
    idle_in_transaction_session_timeout: idleFor,
    keepAlive: true,
    application_name: "burin",
  });
  // A connection that is lost is told to whoever uses it, and is made anew when it is wanted again.
  pool.on("error", () => undefined);
  pool.on("connect", (client) => client.on("error", () => undefined));
  const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
  try {
    await refuseOtherTexts(db);
    return { db, bell: serverBell(pool) };
  } catch (cause) {
    await db.destroy();
    throw cause;
  }
}

/** Throws where texts would not be sorted and compared as everywhere else. */
async function refuseOtherTexts(db: Kysely<Tables>): Promise<void> {
  const { rows } = await sql<{ collate: string; encoding: string }>`
    SELECT coalesce(daticulocale, datcollate) AS collate, pg_encoding_to_char(encoding) AS encoding
    FROM pg_database WHERE datname = current_database()`.execute(db);
  const { collate = "", encoding = "" } = rows[0] ?? {};
  if (!byBytes.test(collate) || encoding !== "UTF8")
    throw new Error(
      `the database is of ${encoding} and locale ${collate}; make it with: createdb --template=template0 --encoding=UTF8 --locale=C.UTF-8`,
    );
}
