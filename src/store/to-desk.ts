import { type Kysely, sql } from "kysely";
import type { Carried } from "../trade/carried.ts";
import { openQuestions } from "./read.ts";
import type { Tables } from "./tables.ts";
import { writeTerms } from "./terms.ts";
import { waitsForPerson } from "./write-revision.ts";

/** Brings a record to one that the desk's page can list and search, with accounts for those who may come in. */
export async function toDesk(db: Kysely<never>): Promise<void> {
  await db.schema
    .createTable("accounts")
    .addColumn("user", "text", (c) => c.primaryKey())
    .addColumn("name", "text", (c) => c.notNull())
    .addColumn("role", "text", (c) => c.notNull())
    .addColumn("password", "text")
    .addColumn("is_shut", "integer", (c) => c.notNull().defaultTo(0))
    .execute();
  await db.schema
    .createTable("sessions")
    .addColumn("hash", "text", (c) => c.primaryKey())
    .addColumn("user", "text", (c) => c.notNull().references("accounts.user"))
    .addColumn("until", "text", (c) => c.notNull())
    .execute();
  await db.schema
    .createTable("order_terms")
    .addColumn("order_id", "integer", (c) => c.notNull().references("orders.id"))
    .addColumn("term", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("order_terms_once", ["term", "order_id"])
    .execute();
  await db.schema.createIndex("order_terms_by_order").on("order_terms").column("order_id").execute();
  await db.schema.alterTable("orders").addColumn("verdict", "text").execute();
  await sql`UPDATE orders SET verdict = (SELECT verdict FROM revisions WHERE revisions.id = orders.latest)`.execute(
    db,
  );
  await db.schema
    .alterTable("orders")
    .addColumn("for_person", "integer", (c) => c.notNull().defaultTo(0))
    .execute();
  await db.schema.createIndex("orders_for_person").on("orders").column("for_person").execute();
  await db.schema.createIndex("orders_by_verdict").on("orders").columns(["verdict", "latest"]).execute();
  const orders = db as unknown as Kysely<Tables>;
  for (const { id, latest } of await orders.selectFrom("orders").select(["id", "latest"]).execute()) {
    await writeTerms(orders, id);
    if (latest !== null && (await isForPerson(orders, id, latest)))
      await orders.updateTable("orders").set({ for_person: 1 }).where("id", "=", id).execute();
  }
}

/** Whether something of an order waits for one of our own people: a question, words of a letter, silence. */
async function isForPerson(db: Kysely<Tables>, order: number, latest: number): Promise<boolean> {
  const { carried, at } = await db
    .selectFrom("revisions")
    .select(["carried", "at"])
    .where("id", "=", latest)
    .executeTakeFirstOrThrow();
  const silence = await db
    .selectFrom("reminders")
    .select("letter")
    .where("order_id", "=", order)
    .where("what", "=", "person")
    .where("at", ">=", at)
    .executeTakeFirst();
  const questions = await openQuestions(db, order);
  return silence !== undefined || waitsForPerson({ questions, carried: JSON.parse(carried) as Carried[] });
}
