import type { Kysely } from "kysely";
import { orderKey } from "../judging/state.ts";
import type { Orders } from "../ports/store.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { readOpenOrders, readOrders } from "./read.ts";
import { sheetFrom } from "./shapes.ts";
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
    laneOf: async (buyer, number) => (await lastLetter(db, buyer, number))?.lane ?? undefined,
    lastWriter: async (buyer, number) => {
      const last = await lastLetter(db, buyer, number);
      if (last?.recipient == null) return undefined;
      return {
        recipient: last.recipient,
        ...(last.message_id === null ? {} : { messageId: last.message_id }),
      };
    },
    openAt: (moment) => readOpenOrders(db, moment),
  };
}

/** The last letter of a sender about an order. */
function lastLetter(db: Kysely<Tables>, buyer: string, number: string) {
  return db
    .selectFrom("letters")
    .innerJoin("order_letters", "order_letters.letter", "letters.id")
    .innerJoin("orders", "orders.id", "order_letters.order_id")
    .leftJoin("answers", "answers.letter", "letters.id")
    .select(["letters.lane", "letters.message_id", "answers.recipient"])
    .where("orders.buyer", "=", buyer)
    .where("orders.key", "=", orderKey(number))
    .where("letters.kind", "!=", "note")
    .orderBy("letters.id", "desc")
    .executeTakeFirst();
}

async function readSheets(db: Kysely<Tables>, ids: readonly FileId[]): Promise<readonly Sheet[]> {
  if (ids.length === 0) return [];
  const rows = await db.selectFrom("sheets").select(["content", "shape"]).where("id", "in", ids).execute();
  return rows.map(sheetFrom);
}
