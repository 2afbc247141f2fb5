import { type Kysely, sql } from "kysely";
import { orderKey } from "../judging/state.ts";
import type { Unread } from "../ports/store.ts";
import { among } from "./among.ts";
import { isOpen } from "./for-person.ts";
import type { Tables } from "./tables.ts";

/** An order, and the lane of its buyer. */
interface Sought {
  readonly buyer: string;
  readonly number: string;
  readonly lane: string | undefined;
}

/**
 * Letters that nobody has read yet and that may concern an order, oldest first: those that wait to be judged, those
 * that are held, and those that a person has to read. Each is in the lane of its buyer or of a letter about it, in the
 * thread of one, or brought a sheet of its number.
 */
export async function readUnread(db: Kysely<Tables>, { buyer, number, lane }: Sought): Promise<Unread[]> {
  const key = orderKey(number);
  const about = await db
    .selectFrom("orders")
    .innerJoin("order_letters", "order_letters.order_id", "orders.id")
    .innerJoin("letters", "letters.id", "order_letters.letter")
    .select(["letters.lane", "letters.thread"])
    .distinct()
    .where("orders.buyer", "=", buyer)
    .where("orders.key", "=", key)
    .execute();
  const lanes = [...new Set([lane, ...about.map((one) => one.lane)])].filter(
    (one) => typeof one === "string",
  );
  const threads = [...new Set(about.map(({ thread }) => thread ?? ""))].filter((one) => one !== "");
  const rows = await db
    .selectFrom("letters")
    .select(["letters.id", "letters.state", "letters.sender", "letters.lane", "letters.thread"])
    .select((eb) =>
      eb
        .selectFrom("order_letters")
        .select("order_letters.order_id")
        .whereRef("order_letters.letter", "=", "letters.id")
        .limit(1)
        .as("other"),
    )
    .where("letters.id", "in", (eb) =>
      eb
        .selectFrom("letters as one")
        .select("one.id")
        .where("one.state", "in", ["received", "held"])
        .where("one.dealt_with_at", "is", null)
        // As the index `letters_for_person` has it.
        .unionAll(
          eb
            .selectFrom("letters as one")
            .select("one.id")
            .where("one.for_person", "=", sql.lit(1))
            .where("one.dealt_with_at", "is", null),
        ),
    )
    .where("letters.kind", "!=", "note")
    .where((eb) =>
      eb.or([
        eb("letters.lane", "in", among(lanes)),
        eb("letters.thread", "in", among(threads)),
        eb.exists(
          eb
            .selectFrom("sheets")
            .select("sheets.id")
            .whereRef("sheets.letter", "=", "letters.id")
            .where("sheets.order_key", "=", key),
        ),
      ]),
    )
    .where((eb) => eb.or([eb("letters.state", "in", ["received", "held"]), isOpen(eb)]))
    .orderBy("letters.received_at")
    .orderBy("letters.id")
    .execute();
  const isOfBuyer = (of: { readonly lane: string | null; readonly thread: string | null }): boolean =>
    lanes.includes(of.lane ?? "") || threads.includes(of.thread ?? "");
  return rows.map(({ id, state, sender, other, ...of }) => ({
    letter: id,
    ...(sender === null ? {} : { from: sender }),
    how: state === "received" ? "waits" : state === "held" ? "held" : "unread",
    isOfOthers: other !== null || !isOfBuyer(of),
  }));
}
