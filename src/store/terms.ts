import type { Kysely } from "kysely";
import { termsOf } from "../orders/terms.ts";
import { sheetsIn } from "./read.ts";
import type { Tables } from "./tables.ts";

/** Writes the words by which an order is found, from its latest revision. */
export async function writeTerms(db: Kysely<Tables>, order: number): Promise<void> {
  const { number, buyer, project, latest } = await db
    .selectFrom("orders")
    .select(["number", "buyer", "project", "latest"])
    .where("id", "=", order)
    .executeTakeFirstOrThrow();
  const sheets = latest === null ? [] : (await sheetsIn(db, [latest])).map(({ sheet }) => sheet);
  const terms = termsOf({ number, buyer, ...(project === null ? {} : { project }), sheets });
  await db.deleteFrom("order_terms").where("order_id", "=", order).execute();
  if (terms.length > 0)
    await db
      .insertInto("order_terms")
      .values(terms.map((term) => ({ order_id: order, term })))
      .onConflict((conflict) => conflict.doNothing())
      .execute();
}
