import type { InsertObject, Transaction } from "kysely";
import type { Tables } from "./tables.ts";

/** So many rows go in one statement; a database takes so many values in one, and each statement is a way to it. */
const atOnce = 500;

/** Inserts rows, in their order. */
export async function insertAll<T extends keyof Tables>(
  tx: Transaction<Tables>,
  table: T,
  rows: readonly InsertObject<Tables, T>[],
): Promise<void> {
  for (let i = 0; i < rows.length; i += atOnce)
    await tx
      .insertInto(table)
      .values(rows.slice(i, i + atOnce))
      .execute();
}
