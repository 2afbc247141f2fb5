import type { ExpressionBuilder, ExpressionWrapper, Kysely, Selectable, SqlBool } from "kysely";
import type { LetterRecord } from "../trade/record.ts";
import { readLetters } from "./read.ts";
import type { Tables } from "./tables.ts";

/** People are told at most so often; and so long a lost answer may take to be found. */
const hour = 3_600_000;

/** Letters that are read at once, and that people are told of at once; the others have their turn later. */
const most = 500;

/** Letters that wait for a person, and those whose answer nobody could look for in an hour; oldest first. */
export async function lettersForPerson(db: Kysely<Tables>, now: Date): Promise<LetterRecord[]> {
  const rows = await db
    .selectFrom("letters")
    .selectAll()
    .where((eb) => isForPerson(eb, now))
    .orderBy("received_at")
    .orderBy("id")
    .execute();
  const read: LetterRecord[] = [];
  for (let n = 0; n < rows.length; n += most) read.push(...(await readLetters(db, rows.slice(n, n + most))));
  return read;
}

/**
 * Letters for a person of which nobody was told yet, now marked as told; none within an hour of the last. Those of
 * `reader`, who is told, are left out. One statement, so that of two workers one gets them.
 */
export async function takeNotice(
  db: Kysely<Tables>,
  now: Date,
  reader: string,
): Promise<readonly LetterRecord[]> {
  const rows: Selectable<Tables["letters"]>[] = await db
    .updateTable("letters")
    .set((eb) => ({ noticed_at: now.toISOString(), noticed_as: eb.ref("state") }))
    .where("id", "in", (eb) =>
      eb
        .selectFrom("letters")
        .select("id")
        .where((those) =>
          those.and([
            isForPerson(those, now),
            // Whoever was told of a letter before it was held or refused was told something else.
            those.or([
              those("noticed_as", "is", null),
              those.and([
                those("state", "in", ["held", "refused"]),
                those("noticed_as", "!=", those.ref("state")),
              ]),
            ]),
            those.or([those("sender", "is", null), those("sender", "!=", reader)]),
          ]),
        )
        .orderBy("received_at")
        .orderBy("id")
        .limit(most),
    )
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom("letters as told")
            .select("told.id")
            .where("told.noticed_at", ">", new Date(now.getTime() - hour).toISOString()),
        ),
      ),
    )
    .returningAll()
    .execute();
  return readLetters(
    db,
    rows.toSorted((a, b) => a.received_at.localeCompare(b.received_at) || a.id - b.id),
  );
}

/** What was taken at that moment was not told after all. */
export async function dropNotice(db: Kysely<Tables>, taken: Date): Promise<void> {
  await db
    .updateTable("letters")
    .set({ noticed_at: null, noticed_as: null })
    .where("noticed_at", "=", taken.toISOString())
    .execute();
}

function isForPerson(
  eb: ExpressionBuilder<Tables, "letters">,
  now: Date,
): ExpressionWrapper<Tables, "letters", SqlBool> {
  return eb.or([
    eb("state", "in", ["held", "refused"]),
    // An answer on its way is nothing to tell of yet.
    eb.and([eb("state", "=", "sent"), eb("verdict", "in", ["person", "confirm"])]),
    eb.and([
      eb("state", "=", "unknown"),
      eb.exists(
        eb
          .selectFrom("events")
          .select("events.id")
          .where("events.subject", "=", "letter")
          .whereRef("events.subject_id", "=", "letters.id")
          .where("events.what", "=", "unknown")
          .where("events.at", "<", new Date(now.getTime() - hour).toISOString()),
      ),
    ]),
  ]);
}
