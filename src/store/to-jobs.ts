import { type Kysely, sql } from "kysely";
import { counted } from "./dialect.ts";

/** Moves what is to be done, and who does it, from the letters to a table of its own. */
export async function toJobs(db: Kysely<never>): Promise<void> {
  await db.schema
    .createTable("jobs")
    .addColumn("id", "integer", counted(db))
    .addColumn("letter", "integer", (c) => c.notNull().unique().references("letters.id"))
    .addColumn("claimed_until", "text")
    .addColumn("fence", "integer", (c) => c.notNull().defaultTo(0))
    .addColumn("opened", "integer", (c) => c.notNull().defaultTo(0))
    .addColumn("tries", "integer", (c) => c.notNull().defaultTo(0))
    .addColumn("unsure", "integer", (c) => c.notNull().defaultTo(0))
    .addColumn("due_at", "text")
    .addColumn("waits_since", "text")
    .execute();
  await sql`INSERT INTO jobs (letter, claimed_until, fence, opened, tries, unsure, due_at, waits_since)
    SELECT id, claimed_until, fence, opened, tries, unsure, due_at, waits_since FROM letters`.execute(db);
  for (const column of ["claimed_until", "fence", "opened", "tries", "unsure", "due_at", "waits_since"])
    await db.schema.alterTable("letters").dropColumn(column).execute();
}
