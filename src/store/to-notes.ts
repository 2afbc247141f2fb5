import { createHash } from "node:crypto";
import { type Kysely, sql } from "kysely";

/**
 * Brings a record to one that keeps what our own people do: notes beside letters, who has decided a question, and
 * events that form a chain.
 */
export async function toNotes(db: Kysely<never>): Promise<void> {
  const letters = db.schema.alterTable("letters");
  await letters.addColumn("kind", "text", (c) => c.notNull().defaultTo("letter")).execute();
  await letters.addColumn("for_person", "integer", (c) => c.notNull().defaultTo(0)).execute();
  await letters.addColumn("dealt_with_at", "text").execute();
  await letters.addColumn("let_in_as", "text").execute();
  // Before, every answered letter of these verdicts waited for a person.
  await sql`UPDATE letters SET for_person = 1 WHERE verdict IN ('person', 'confirm')`.execute(db);
  await db.schema.alterTable("questions").addColumn("decided_by", "text").execute();
  const events = db.schema.alterTable("events");
  await events.addColumn("content", "text").execute();
  await events.addColumn("hash", "text", (c) => c.notNull().defaultTo("")).execute();
  await chainOf(db);
}

/** An event of a chain over all that events say. */
export interface Whole {
  readonly at: string;
  readonly actor: string;
  readonly subject: string;
  readonly subject_id: number | null;
  readonly what: string;
  readonly words: string;
  readonly content: string | null;
}

/** The hash of an event, as chains had it until what events say could be erased. */
export function chainedWhole(
  before: string,
  { at, actor, subject, subject_id, what, words, content }: Whole,
): string {
  return createHash("sha256")
    .update(JSON.stringify([before, at, actor, subject, subject_id, what, words, content]))
    .digest("hex");
}

/** Chains the events that are there. */
async function chainOf(db: Kysely<never>): Promise<void> {
  const { rows } = await sql<
    Whole & { id: number }
  >`SELECT id, at, actor, subject, subject_id, what, words, content FROM events ORDER BY id`.execute(db);
  let hash = "";
  for (const { id, ...event } of rows) {
    hash = chainedWhole(hash, event);
    await sql`UPDATE events SET hash = ${hash} WHERE id = ${id}`.execute(db);
  }
}
