import { type ColumnDefinitionBuilder, type Kysely, PostgresAdapter, sql } from "kysely";

/** Whether a record's database is PostgreSQL; else it is SQLite. */
export function isPostgres<T>(db: Kysely<T>): boolean {
  return db.getExecutor().adapter instanceof PostgresAdapter;
}

/** A key that the database counts, each number once. */
export function counted<T>(db: Kysely<T>): (column: ColumnDefinitionBuilder) => ColumnDefinitionBuilder {
  return (column) =>
    isPostgres(db) ? column.primaryKey().generatedByDefaultAsIdentity() : column.primaryKey().autoIncrement();
}

/** What time it is on a PostgreSQL server. */
export async function timeOf<T>(db: Kysely<T>): Promise<Date> {
  const { rows } = await sql<{ now: Date }>`SELECT clock_timestamp() AS now`.execute(db);
  const [row] = rows;
  if (row === undefined) throw new Error("the server of the record says no time");
  return row.now;
}
