import type { Kysely } from "kysely";
import type { Audited } from "../trade/audited.ts";
import type { Carried } from "../trade/carried.ts";
import { among } from "./among.ts";
import { becameBy, judgings } from "./became.ts";
import type { Tables } from "./tables.ts";

type Db = Kysely<Tables>;

/**
 * Words that orders carried when the days ended, and letters about no order that needed a person.
 */
export async function unreadAt(db: Db, end: string): Promise<Audited["unread"]> {
  const orders = await db
    .selectFrom("revisions")
    .innerJoin("orders", "orders.id", "revisions.order_id")
    .select(["orders.number", "revisions.carried"])
    .where("revisions.id", "in", (eb) =>
      eb
        .selectFrom("revisions")
        .select((e) => e.fn.max("id").as("id"))
        .where("at", "<", end)
        .groupBy("order_id"),
    )
    .where("revisions.carried", "!=", "[]")
    .execute();
  const words = orders.flatMap(({ number, carried }) => {
    const said = (JSON.parse(carried) as Carried[]).filter(({ what }) => what === "words");
    return [...new Set(said.map(({ letter }) => Number(letter)))].map((letter) => ({ letter, number }));
  });
  const rows = await db
    .selectFrom("letters")
    .select(["letters.id", "letters.received_at"])
    .where("letters.kind", "!=", "note")
    .where("received_at", "<", end)
    .where((eb) =>
      eb.or([
        eb("letters.id", "in", among(words.map(({ letter }) => letter))),
        eb.and([
          eb("for_person", "=", 1),
          eb("letters.why", "is", null),
          eb.or([eb("dealt_with_at", "is", null), eb("dealt_with_at", ">=", end)]),
          // It may wait again since, because its answer came back.
          eb.not(
            eb.exists(
              eb
                .selectFrom("events")
                .select("events.id")
                .where("events.subject", "=", "letter")
                .whereRef("events.subject_id", "=", "letters.id")
                .where("events.what", "=", "put aside")
                .where("events.at", "<", end),
            ),
          ),
          eb.not(
            eb.exists(
              eb
                .selectFrom("order_letters")
                .select("order_letters.letter")
                .whereRef("order_letters.letter", "=", "letters.id"),
            ),
          ),
        ]),
      ]),
    )
    .execute();
  const since = new Map(rows.map(({ id, received_at }) => [id, new Date(received_at)]));
  const named = words.flatMap((one) => {
    const at = since.get(one.letter);
    return at === undefined ? [] : [{ ...one, since: at }];
  });
  const about = new Set(named.map(({ letter }) => letter));
  const others = rows.flatMap(({ id }) => {
    const at = since.get(id);
    return about.has(id) || at === undefined ? [] : [{ letter: id, since: at }];
  });
  return [...named, ...others];
}

/** Letters that were held, and that nobody had dealt with when the days ended. */
export async function heldAt(db: Db, end: string): Promise<Audited["held"]> {
  const rows = await db
    .selectFrom("events")
    .select(["subject_id", "what", "words", "at"])
    .where("subject", "=", "letter")
    .where((eb) =>
      eb.or([eb("what", "in", ["put aside", ...judgings]), eb("what", "like", "let in as letter %")]),
    )
    .where("at", "<", end)
    .orderBy("id")
    .execute();
  const held = new Map<number, Date>();
  for (const { subject_id, what, words, at } of rows)
    if (becameBy(what, words) === "held") held.set(subject_id ?? 0, new Date(at));
    else held.delete(subject_id ?? 0);
  return [...held].map(([letter, since]) => ({ letter, since }));
}
