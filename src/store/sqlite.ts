import { DatabaseSync, type SQLInputValue } from "node:sqlite";
import { Kysely, SqliteDialect } from "kysely";
import type { Tables } from "./tables.ts";

/** How long to wait for others that have the database to themselves, in milliseconds. */
const lockedFor = 10_000;

/** Opens the embedded database; ":memory:" keeps nothing. */
export function openSqlite(path: string): Kysely<Tables> {
  // From the first word on: where a worker was killed, the first to open its database mends it, and others wait.
  const database = new DatabaseSync(path, { timeout: lockedFor });
  // WAL lets the day's audit read while the worker writes; FULL keeps a committed answer through a power cut.
  database.exec("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
  return new Kysely<Tables>({
    dialect: new SqliteDialect({
      database: {
        close: () => database.close(),
        prepare: (sql) => {
          const statement = database.prepare(sql);
          return {
            reader: statement.columns().length > 0,
            all: (parameters) => statement.all(...values(parameters)),
            run: (parameters) => statement.run(...values(parameters)),
            iterate: (parameters) => statement.iterate(...values(parameters)),
          };
        },
      },
    }),
  });
}

function values(parameters: readonly unknown[]): SQLInputValue[] {
  return parameters as SQLInputValue[];
}
