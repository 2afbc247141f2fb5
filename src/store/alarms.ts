import type { Kysely } from "kysely";
import type { Alarm } from "../ports/store.ts";
import type { Tables } from "./tables.ts";

/**
 * Takes the letters of which the engraving room has to be told, oldest first, and marks them as told. It is one statement, so that
 * of two workers only one gets them.
 */
export async function takeAlarms(
  db: Kysely<Tables>,
  now: Date,
): Promise<{ readonly letter: number; readonly from?: string; readonly alarm: Alarm }[]> {
  const rows = await db
    .updateTable("letters")
    .set({ alarmed_at: now.toISOString() })
    .where("alarm", "is not", null)
    .where("alarmed_at", "is", null)
    .returning(["id", "sender", "alarm"])
    .execute();
  // A statement that writes gives its rows in any order.
  return rows
    .toSorted((a, b) => a.id - b.id)
    .map(({ id, sender, alarm }) => ({
      letter: id,
      ...(sender === null ? {} : { from: sender }),
      alarm: JSON.parse(alarm ?? "[]") as Alarm,
    }));
}

/** Takes back that the engraving room was told of a letter. */
export async function dropAlarm(db: Kysely<Tables>, letter: number): Promise<void> {
  await db.updateTable("letters").set({ alarmed_at: null }).where("id", "=", letter).execute();
}
