import type { Kysely } from "kysely";
import { soughtIn } from "../orders/terms.ts";
import type { ListedOrder, Sought } from "../ports/store.ts";
import type { Verdict } from "../trade/problem.ts";
import type { Tables } from "./tables.ts";

/** Orders a page at a time, those that changed last first. */
export async function listOrders(
  db: Kysely<Tables>,
  { verdicts, search = "", before, most }: Sought,
): Promise<ListedOrder[]> {
  let query = db
    .selectFrom("orders")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select(["orders.number", "orders.buyer", "orders.project", "orders.verdict", "orders.latest"])
    .select(["orders.released", "revisions.at"])
    .orderBy("orders.latest", "desc")
    .limit(most);
  if (verdicts !== undefined) query = query.where("orders.verdict", "in", verdicts);
  if (before !== undefined) query = query.where("orders.latest", "<", before);
  for (const word of soughtIn(search))
    query = query.where("orders.id", "in", (eb) =>
      eb
        .selectFrom("order_terms")
        .select("order_id")
        .where("term", ">=", word)
        .where("term", "<", `${word}\u{10ffff}`),
    );
  const rows = await query.execute();
  return rows.map(({ number, buyer, project, verdict, latest, released, at }) => ({
    number,
    buyer,
    ...(project === null ? {} : { project }),
    ...(verdict === null ? {} : { verdict: verdict as Verdict }),
    changedAt: new Date(at),
    isReleased: released !== null,
    place: latest ?? 0,
  }));
}
