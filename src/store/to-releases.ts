import type { Kysely } from "kysely";

/** Brings a record to one that knows what was handed to engraving, and whom a letter has to alarm. */
export async function toReleases(db: Kysely<never>): Promise<void> {
  await db.schema.alterTable("orders").addColumn("released", "text").execute();
  const letters = db.schema.alterTable("letters");
  await letters.addColumn("alarm", "text").execute();
  await letters.addColumn("alarmed_at", "text").execute();
}
