import { type Kysely, sql } from "kysely";
import { closeErased, type Erasing } from "./erase.ts";
import { inTurn } from "./in-turn.ts";
import type { Tables } from "./tables.ts";
import { type Judged, writeJudged } from "./write-judged.ts";

type Db = Kysely<Tables>;

/** What follows from letters and events, in an order in which it can be emptied. */
const derived = [
  "reminders",
  "order_terms",
  "revision_sheets",
  "questions",
  "order_letters",
  "kept_words",
  "revisions",
  "orders",
  "numbers",
] as const satisfies readonly (keyof Tables)[];

/** Throws the tables of orders away, and makes them again of the events. */
export async function rebuildOrders(db: Db): Promise<void> {
  await inTurn(db, async (tx) => {
    await tx.updateTable("orders").set({ latest: null }).execute();
    for (const table of derived) await tx.deleteFrom(table).execute();
    const events = await tx
      .selectFrom("events")
      .select(["at", "subject_id", "content"])
      .where("content", "is not", null)
      .orderBy("id")
      .execute();
    for (const { at, subject_id, content } of events) {
      const said = JSON.parse(content ?? "") as Judged | Erasing;
      if ("standIn" in said) await closeErased(tx, said.standIn, new Date(at));
      else await writeJudged(tx, subject_id ?? 0, said, new Date(at));
    }
  });
}

/** What the tables of orders say of each order, without the numbers of their rows. By buyer and number. */
export async function ordersInWords(db: Db): Promise<ReadonlyMap<string, string>> {
  const orders = await db.selectFrom("orders").selectAll().orderBy("id").execute();
  const words = new Map<string, string>();
  for (const { id, buyer, key, number, project, opened_at, released, erased_at } of orders) {
    const revisions = await db
      .selectFrom("revisions")
      .selectAll()
      .select((eb) =>
        eb
          .selectFrom("revision_sheets")
          .select(sql<string>`string_agg(sheet, ' ' ORDER BY sheet)`.as("sheets"))
          .whereRef("revision", "=", "revisions.id")
          .as("sheets"),
      )
      .where("order_id", "=", id)
      .orderBy("number")
      .execute();
    const places = new Map(revisions.map((revision) => [revision.id, revision.number]));
    const questions = await db
      .selectFrom("questions")
      .selectAll()
      .where("order_id", "=", id)
      .orderBy("id")
      .execute();
    const letters = await db
      .selectFrom("order_letters")
      .select("letter")
      .where("order_id", "=", id)
      .orderBy("letter")
      .execute();
    const reminders = await db
      .selectFrom("reminders")
      .select(["letter", "what", "at"])
      .where("order_id", "=", id)
      .orderBy("letter")
      .execute();
    words.set(
      `${buyer} ${key}`,
      JSON.stringify([
        [number, project, opened_at, released, erased_at],
        revisions.map(({ id: _id, order_id: _order, ...rest }) => rest),
        questions.map(({ id: _id, order_id: _order, opened_by, closed_by, ...rest }) => ({
          ...rest,
          opened_by: places.get(opened_by),
          closed_by: places.get(closed_by ?? -1),
        })),
        letters.map(({ letter }) => letter),
        reminders,
      ]),
    );
  }
  return words;
}

/** The orders some of whose revisions no event keeps: the record is older than that. */
export async function ordersBefore(db: Db): Promise<ReadonlySet<string>> {
  const rows = await db
    .selectFrom("orders")
    .innerJoin("revisions", "revisions.order_id", "orders.id")
    .select(["buyer", "key"])
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom("events")
            .select("events.id")
            .where("subject", "=", "letter")
            .whereRef("subject_id", "=", "revisions.letter")
            .where("content", "is not", null),
        ),
      ),
    )
    .execute();
  return new Set(rows.map(({ buyer, key }) => `${buyer} ${key}`));
}
