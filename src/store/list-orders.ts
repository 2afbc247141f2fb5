import type { Kysely } from "kysely";
import { soughtIn } from "../orders/terms.ts";
import type { ListedOrder, Sought } from "../ports/store.ts";
import type { Verdict } from "../trade/problem.ts";
import type { Tables } from "./tables.ts";

/** Orders a page at a time, those that changed last first. */
export async function listOrders(
  db: Kysely<Tables>,
  { verdicts, forPerson, released: isReleased, search = "", before, most }: Sought,
): Promise<ListedOrder[]> {
  let query = db
    .selectFrom("orders")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select(["orders.number", "orders.buyer", "orders.project", "orders.verdict", "orders.latest"])
    .select(["orders.released", "revisions.at", "revisions.letter"])
    .orderBy("orders.latest", "desc")
    .limit(most);
  if (verdicts !== undefined) query = query.where("orders.verdict", "in", verdicts);
  if (forPerson === true)
    query = query
      .where("orders.for_person", "=", 1)
      .where((eb) => eb.or([eb("orders.verdict", "!=", "pass"), eb("orders.released", "is not", null)]));
  if (isReleased !== undefined) query = query.where("orders.released", isReleased ? "is not" : "is", null);
  if (before !== undefined) query = query.where("orders.latest", "<", before);
  const words = soughtIn(search);
  const ids = words.length === 0 ? undefined : await fewWith(db, words);
  if (ids !== undefined) query = query.where("orders.id", "in", ids.length === 0 ? [-1] : ids);
  for (const word of words)
    query = query.where((eb) =>
      eb.exists(
        eb
          .selectFrom("order_terms")
          .select("term")
          .whereRef("order_terms.order_id", "=", "orders.id")
          .where("term", ">=", word)
          .where("term", "<", endOf(word)),
      ),
    );
  const rows = await query.execute();
  return rows.map(({ number, buyer, project, verdict, latest, released, at, letter }) => ({
    number,
    buyer,
    ...(project === null ? {} : { project }),
    ...(verdict === null ? {} : { verdict: verdict as Verdict }),
    changedAt: new Date(at),
    ...(letter === null ? {} : { letter }),
    isReleased: released !== null,
    place: latest ?? 0,
  }));
}

/** If no more orders than these have a word, they are looked up by it; otherwise enough of them are found in the list. */
const few = 1_000;

/** The orders that have one of some words, if they are few. */
async function fewWith(db: Kysely<Tables>, words: readonly string[]): Promise<number[] | undefined> {
  for (const word of words) {
    const rows = await db
      .selectFrom("order_terms")
      .select("order_id")
      .where("term", ">=", word)
      .where("term", "<", endOf(word))
      .limit(few + 1)
      .execute();
    if (rows.length <= few) return [...new Set(rows.map(({ order_id }) => order_id))];
  }
  return undefined;
}

/** All terms that begin with a word stand before it. */
function endOf(word: string): string {
  return `${word}\u{10ffff}`;
}
