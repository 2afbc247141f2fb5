import {
  type ExpressionBuilder,
  type ExpressionWrapper,
  type Kysely,
  type Selectable,
  type SqlBool,
  sql,
} from "kysely";
import type { LetterRecord } from "../trade/record.ts";
import { among } from "./among.ts";
import { readLetters } from "./read.ts";
import type { Tables } from "./tables.ts";

/** People are told once in so many milliseconds at most. A lost answer has as long to be found. */
const hour = 3_600_000;

/** So many letters are read at once, and told of at once. The others come later. */
const most = 500;

/** Letters that wait for a person, and letters whose answer stayed unknown for an hour. Oldest first. */
export async function lettersForPerson(
  db: Kysely<Tables>,
  now: Date,
  limit?: number,
): Promise<LetterRecord[]> {
  const rows = await db
    .selectFrom("letters")
    .selectAll()
    .where((eb) => isForPerson(eb, now))
    .orderBy("received_at")
    .orderBy("id")
    .$if(limit !== undefined, (query) => query.limit(limit ?? 0))
    .execute();
  const read: LetterRecord[] = [];
  for (let n = 0; n < rows.length; n += most) read.push(...(await readLetters(db, rows.slice(n, n + most))));
  return read;
}

/** Which of some letters wait for a person. */
export async function waitingAmong(
  db: Kysely<Tables>,
  letters: readonly number[],
  now: Date,
): Promise<ReadonlySet<number>> {
  const rows = await db
    .selectFrom("letters")
    .select("id")
    .where("id", "in", among(letters))
    .where((eb) => isForPerson(eb, now))
    .execute();
  return new Set(rows.map(({ id }) => id));
}

/**
 * Takes the letters for a person of which nobody was told yet, and marks them as told. There are none within an hour
 * of the last notice. Letters of `reader`, who is told, are left out. It is one statement, so that of two workers
 * only one gets them.
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
            those("letters.id", "in", waiting(those, now).unionAll(overdue(those))),
            those.or([isForPerson(those, now), isUnanswered(those)]),
            // A letter that has been held or refused since people were told of it is news again.
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

/** Takes back that people were told, for all that was taken at that moment. */
export async function dropNotice(db: Kysely<Tables>, taken: Date): Promise<void> {
  await db
    .updateTable("letters")
    .set({ noticed_at: null, noticed_as: null })
    .where("noticed_at", "=", taken.toISOString())
    .execute();
}

/** The letters among which those for a person are. */
function waiting(eb: ExpressionBuilder<Tables, "letters">, now: Date) {
  // Each part has an index of its own, which one condition of all would not use.
  const one = () => eb.selectFrom("letters as one").select("one.id").where("one.dealt_with_at", "is", null);
  const unknown = one()
    .where("one.state", "=", "unknown")
    .where((of) =>
      of.exists(
        of
          .selectFrom("events")
          .select("events.id")
          .where("events.subject", "=", "letter")
          .whereRef("events.subject_id", "=", "one.id")
          .where("events.what", "=", "unknown")
          .where("events.at", "<", new Date(now.getTime() - hour).toISOString()),
      ),
    );
  return (
    one()
      .where("one.state", "in", ["held", "refused"])
      // An answer on its way is nothing to tell of yet.
      .unionAll(one().where("one.for_person", "=", sql.lit(1)).where("one.state", "=", "sent"))
      .unionAll(unknown)
      .unionAll(
        eb
          .selectFrom("answers")
          .innerJoin("letters as one", "one.id", "answers.letter")
          .select("one.id")
          .where("answers.unreached", "is not", null)
          .where("one.dealt_with_at", "is", null),
      )
  );
}

/** The notes that have found an order for which nobody answers. */
function overdue(eb: ExpressionBuilder<Tables, "letters">) {
  return eb
    .selectFrom("reminders")
    .select("reminders.letter as id")
    .where("reminders.what", "=", sql.lit("person"));
}

function isForPerson(
  eb: ExpressionBuilder<Tables, "letters">,
  now: Date,
): ExpressionWrapper<Tables, "letters", SqlBool> {
  return eb.and([
    eb("letters.id", "in", waiting(eb, now)),
    eb.or([eb("letters.state", "!=", "sent"), isOpen(eb), isUnreached(eb)]),
  ]);
}

/** Whether somebody who was to have a copy of the answer has none. */
function isUnreached(
  eb: ExpressionBuilder<Tables, "letters">,
): ExpressionWrapper<Tables, "letters", SqlBool> {
  return eb.exists(
    eb
      .selectFrom("answers")
      .select("answers.letter")
      .whereRef("answers.letter", "=", "letters.id")
      .where("answers.unreached", "is not", null),
  );
}

/** Whether a letter is about no order, or about one that has not passed. */
export function isOpen(
  eb: ExpressionBuilder<Tables, "letters">,
): ExpressionWrapper<Tables, "letters", SqlBool> {
  const orders = eb
    .selectFrom("order_letters")
    .innerJoin("orders", "orders.id", "order_letters.order_id")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select("revisions.id")
    .whereRef("order_letters.letter", "=", "letters.id");
  return eb.or([
    eb.not(eb.exists(orders)),
    eb.exists(orders.where("revisions.verdict", "is not", null).where("revisions.verdict", "!=", "pass")),
  ]);
}

/** Whether a note has found that nobody answers for an order, and nothing has happened to the order since. */
function isUnanswered(
  eb: ExpressionBuilder<Tables, "letters">,
): ExpressionWrapper<Tables, "letters", SqlBool> {
  const found = eb
    .selectFrom("reminders")
    .innerJoin("orders", "orders.id", "reminders.order_id")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select("reminders.letter")
    .whereRef("reminders.letter", "=", "letters.id")
    .where("reminders.what", "=", "person")
    .whereRef("reminders.at", ">=", "revisions.at")
    .where("revisions.verdict", "!=", "pass");
  return eb.and([eb("dealt_with_at", "is", null), eb.exists(found)]);
}
