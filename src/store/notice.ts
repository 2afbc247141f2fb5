import type { Kysely, Selectable } from "kysely";
import type { LetterRecord } from "../trade/record.ts";
import { readLetters } from "./read.ts";
import type { Tables } from "./tables.ts";

/** People are told at most so often; and so long a lost answer may take to be found. */
const hour = 3_600_000;

/** Letters that wait for a person, and those whose answer nobody could look for in an hour; oldest first. */
export function lettersForPerson(db: Kysely<Tables>, now: Date): Promise<Selectable<Tables["letters"]>[]> {
  return db
    .selectFrom("letters")
    .selectAll()
    .where((eb) =>
      eb.or([
        eb("state", "in", ["held", "refused"]),
        // An answer on its way is nothing to tell of yet.
        eb.and([eb("state", "=", "sent"), eb("verdict", "in", ["person", "confirm"])]),
        eb.and([
          eb("state", "=", "unknown"),
          eb.exists(
            eb
              .selectFrom("events")
              .select("events.id")
              .whereRef("events.letter", "=", "letters.id")
              .where("events.what", "=", "unknown")
              .where("events.at", "<", new Date(now.getTime() - hour).toISOString()),
          ),
        ]),
      ]),
    )
    .orderBy("received_at")
    .orderBy("id")
    .execute();
}

/** Letters for a person of which nobody was told yet, now marked as told; none within an hour of the last. Those of `reader`, who is told, are left out. */
export function takeNotice(db: Kysely<Tables>, now: Date, reader: string): Promise<readonly LetterRecord[]> {
  return db.transaction().execute(async (tx) => {
    const last = await tx
      .selectFrom("letters")
      .select("noticed_at")
      .where("noticed_at", ">", new Date(now.getTime() - hour).toISOString())
      .executeTakeFirst();
    if (last !== undefined) return [];
    const rows = (await lettersForPerson(tx, now)).filter(
      ({ noticed_at, sender }) => noticed_at === null && sender !== reader,
    );
    const ids = rows.map(({ id }) => id);
    if (ids.length > 0)
      await tx.updateTable("letters").set({ noticed_at: now.toISOString() }).where("id", "in", ids).execute();
    return readLetters(tx, rows);
  });
}
