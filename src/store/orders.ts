import type { Kysely } from "kysely";
import { orderKey } from "../judging/state.ts";
import type { Orders } from "../ports/store.ts";
import { readOpenOrders, readOrders, readSheets } from "./read.ts";
import type { Tables } from "./tables.ts";

/** Orders and their sheets, to read. */
export function ordersOver(db: Kysely<Tables>): Orders {
  return {
    named: async (number) =>
      readOrders(
        db,
        await db
          .selectFrom("orders")
          .selectAll()
          .where("key", "=", orderKey(number))
          .where("key", "!=", "")
          .orderBy("id")
          .execute(),
      ),
    sheets: (ids) => readSheets(db, ids),
    revisionsOf: async (buyer, numbers) => {
      const rows = await db
        .selectFrom("orders")
        .innerJoin("revisions", "revisions.id", "orders.latest")
        .select(["orders.key", "revisions.number"])
        .where("orders.buyer", "=", buyer)
        .where("orders.key", "in", ["", ...numbers.map(orderKey)])
        .execute();
      const latest = new Map(rows.map(({ key, number }) => [key, number]));
      return new Map(numbers.map((number) => [number, latest.get(orderKey(number)) ?? 0]));
    },
    openAt: (moment) => readOpenOrders(db, moment),
  };
}
