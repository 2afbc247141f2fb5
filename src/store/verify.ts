import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Kysely, sql } from "kysely";
import type { Verified } from "../ports/store.ts";
import { copyRows } from "./copy-rows.ts";
import { isPostgres } from "./dialect.ts";
import { recountEvents } from "./events.ts";
import { migrate } from "./migrations.ts";
import { ordersBefore, ordersInWords, rebuildOrders } from "./rebuild.ts";
import { openSqlite } from "./sqlite.ts";
import type { Tables } from "./tables.ts";

/** Recounts the events, and makes the orders again of them in a copy, to compare. The record stays as it is. */
export async function verifyRecord(db: Kysely<Tables>): Promise<Verified> {
  const recounted = await recountEvents(db);
  const folder = await mkdtemp(join(tmpdir(), "burin-"));
  try {
    const copy = await copyInto(join(folder, "copy.sqlite"), db);
    try {
      const [before, are] = [await ordersBefore(db), await ordersInWords(db)];
      await rebuildOrders(copy);
      const made = await ordersInWords(copy);
      const names = [...new Set([...are.keys(), ...made.keys()])].filter((name) => !before.has(name));
      const differ = names.filter((name) => are.get(name) !== made.get(name));
      return { ...recounted, orders: names.length, older: before.size, differ };
    } finally {
      await copy.destroy();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function copyInto(path: string, db: Kysely<Tables>): Promise<Kysely<Tables>> {
  if (!isPostgres(db)) {
    await sql`VACUUM INTO ${path}`.execute(db);
    return openSqlite(path);
  }
  const copy = openSqlite(path);
  await migrate(copy);
  await db
    .transaction()
    .setIsolationLevel("repeatable read")
    .execute((source) => copy.transaction().execute((tx) => copyRows(source, tx)));
  return copy;
}
