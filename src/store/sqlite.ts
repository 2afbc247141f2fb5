import { existsSync } from "node:fs";
import { DatabaseSync, type SQLInputValue, type StatementSync } from "node:sqlite";
import { pathToFileURL } from "node:url";
import { Kysely, SqliteDialect } from "kysely";
import { remember } from "../trade/remember.ts";
import type { Tables } from "./tables.ts";

/** How long to wait while another program has the database to itself, in milliseconds. */
const lockedFor = 10_000;

/** Opens the embedded database; ":memory:" keeps nothing. */
export function openSqlite(path: string): Kysely<Tables> {
  // The time-out holds from the first statement. After a worker was killed, the first to open its database mends it,
  // and others wait.
  const database = new DatabaseSync(path, { timeout: lockedFor });
  // WAL lets the day's audit read while the worker writes; FULL keeps a committed answer through a power cut.
  database.exec("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
  return kyselyOver(database);
}

/**
 * Opens the database of a record to read it. Nothing is made or changed, and whoever may read its files may use it.
 * Throws where there is none.
 */
export function openSqliteToRead(path: string): Kysely<Tables> {
  if (!existsSync(path)) throw new Error("there is no record");
  try {
    return kyselyOver(readable(new DatabaseSync(path, { readOnly: true, timeout: lockedFor })));
  } catch (cause) {
    // SQLite's documentation, "Write-Ahead Logging", section 5: a reader that may not write beside the database has
    // two ways to open it. Somebody else has it open, or nobody changes it (immutable).
    if (existsSync(`${path}-wal`)) throw cause;
    const unchanging = pathToFileURL(path);
    unchanging.searchParams.set("immutable", "1");
    return kyselyOver(readable(new DatabaseSync(unchanging, { readOnly: true })));
  }
}

/** A database that opens may still refuse to be read. */
function readable(database: DatabaseSync): DatabaseSync {
  database.prepare("SELECT count(*) FROM sqlite_schema").get();
  return database;
}

/** So many statements are kept prepared, the ones used last. A desk has about two hundred. */
const mostPrepared = 500;

function kyselyOver(database: DatabaseSync): Kysely<Tables> {
  const prepared = new Map<string, StatementSync>();
  return new Kysely<Tables>({
    dialect: new SqliteDialect({
      database: {
        close: () => database.close(),
        prepare: (sql) => {
          const statement = remember(prepared, sql, mostPrepared, () => database.prepare(sql));
          return {
            reader: statement.columns().length > 0,
            all: (parameters) => statement.all(...values(parameters)),
            run: (parameters) => statement.run(...values(parameters)),
            // Rows are still taken from it when the same statement may be asked again.
            iterate: (parameters) => database.prepare(sql).iterate(...values(parameters)),
          };
        },
      },
    }),
  });
}

function values(parameters: readonly unknown[]): SQLInputValue[] {
  return parameters as SQLInputValue[];
}
