import { createHash } from "node:crypto";
import { type Kysely, sql, type Transaction } from "kysely";
import { isPostgres } from "./dialect.ts";
import type { Tables } from "./tables.ts";

/** The tables, each behind those that it refers to, with the columns by which its rows are known. */
export const keys = {
  letters: ["id"],
  jobs: ["id"],
  attachments: ["id"],
  sheets: ["id"],
  problems: ["id"],
  buyers: ["buyer"],
  numbers: ["key"],
  orders: ["id"],
  revisions: ["id"],
  revision_sheets: ["revision", "sheet"],
  questions: ["id"],
  reminders: ["letter"],
  order_letters: ["order_id", "letter"],
  order_terms: ["term", "order_id"],
  answers: ["letter"],
  kept_words: ["letter", "project", "word"],
  lines: ["sender", "line"],
  marks: ["mailbox"],
  leases: ["what"],
  secrets: ["name"],
  accounts: ["user"],
  sessions: ["hash"],
  events: ["id"],
  to_delete: ["what", "name"],
} as const satisfies { readonly [table in keyof Tables]: readonly string[] };

export const tables = Object.keys(keys) as readonly (keyof Tables)[];

/** How many rows a table has, and the SHA-256 of all of them in the order of their keys. */
export interface Counted {
  readonly rows: number;
  readonly hash: string;
}

type Row = Readonly<Record<string, unknown>>;

/** Rows are read and written so many at a time. */
const atOnce = 200;

/** The rows of a table in the order of their keys, some at a time. */
export async function* rowsOf(db: Kysely<Tables>, table: keyof Tables): AsyncGenerator<readonly Row[]> {
  const columns = sql.join(keys[table].map((column) => sql.ref(column)));
  for (let last: Row | undefined; ; ) {
    const behind = last && sql.join(keys[table].map((column) => last?.[column]));
    const after = behind === undefined ? sql`` : sql`WHERE (${columns}) > (${behind})`;
    const { rows } = await sql<Row>`
      SELECT * FROM ${sql.table(table)} ${after} ORDER BY ${columns} LIMIT ${sql.lit(atOnce)}`.execute(db);
    if (rows.length > 0) yield rows;
    if (rows.length < atOnce) return;
    last = rows.at(-1);
  }
}

/** Counts the rows of a table; `each` gets them, some at a time. */
export async function countRows(
  db: Kysely<Tables>,
  table: keyof Tables,
  each: (rows: readonly Row[]) => Promise<void> = () => Promise.resolve(),
): Promise<Counted> {
  const hash = createHash("sha256");
  let count = 0;
  for await (const rows of rowsOf(db, table)) {
    // Columns stand in one order here, and may not in another database.
    for (const row of rows) hash.update(`${JSON.stringify(Object.entries(row).toSorted(byName))}\n`);
    count += rows.length;
    await each(rows);
  }
  return { rows: count, hash: hash.digest("hex") };
}

function byName([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number {
  return a < b ? -1 : 1;
}

/** Writes all rows of one record into the empty tables of another. */
export async function copyRows(
  from: Kysely<Tables>,
  to: Transaction<Tables>,
  progress: (table: keyof Tables) => void = () => undefined,
): Promise<ReadonlyMap<keyof Tables, Counted>> {
  const copied = new Map<keyof Tables, Counted>();
  for (const table of tables) {
    progress(table);
    let last: unknown;
    const counted = await countRows(from, table, async (rows) => {
      await to.insertInto(table).values(rows).execute();
      last = rows.at(-1)?.["id"];
    });
    // PostgreSQL goes on to count behind what it has counted itself; SQLite behind what is there.
    if (isPostgres(to) && typeof last === "number")
      await sql`SELECT setval(pg_get_serial_sequence(${table}, 'id'), ${last})`.execute(to);
    copied.set(table, counted);
  }
  return copied;
}
