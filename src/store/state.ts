import type { Kysely } from "kysely";
import { type BuyerState, orderKey } from "../judging/state.ts";
import { letterOf } from "../orders/ids.ts";
import type { Carried } from "../trade/carried.ts";
import type { Came } from "../trade/letter.ts";
import { sheetsIn } from "./read.ts";
import type { Tables } from "./tables.ts";

/** How many of a buyer's latest orders are compared with a new letter. */
const latestOrders = 30;

/** What judging a letter of a buyer depends on, as it stands now. */
export async function readState(
  db: Kysely<Tables>,
  buyer: string,
  numbers: readonly string[],
): Promise<BuyerState> {
  // The version comes first: whatever changes while the rest is read makes it an old one.
  const version = await db
    .selectFrom("buyers")
    .select("version")
    .where("buyer", "=", buyer)
    .executeTakeFirst();
  if (version === undefined) return { buyer, version: 0, orders: [], arrivals: new Map() };
  const latest = await db
    .selectFrom("orders")
    .select("id")
    .where("buyer", "=", buyer)
    .orderBy("latest", "desc")
    .limit(latestOrders)
    .execute();
  const orders = await db
    .selectFrom("orders")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select(["orders.number", "revisions.id", "revisions.carried"])
    .where("orders.buyer", "=", buyer)
    .where((eb) =>
      eb.or([
        eb("orders.id", "in", [-1, ...latest.map(({ id }) => id)]),
        eb("orders.key", "in", ["", ...numbers.map(orderKey)]),
      ]),
    )
    .orderBy("orders.id")
    .execute();
  const sheets = Map.groupBy(
    await sheetsIn(
      db,
      orders.map(({ id }) => id),
    ),
    ({ revision }) => revision,
  );
  return {
    buyer,
    version: version.version,
    orders: orders.map(({ id, number, carried }) => ({
      number,
      sheets: (sheets.get(id) ?? []).map(({ sheet }) => sheet),
      carried: JSON.parse(carried) as Carried[],
    })),
    arrivals: await readArrivals(
      db,
      [...sheets.values()].flat().map(({ sheet }) => letterOf(sheet.id)),
    ),
  };
}

async function readArrivals(db: Kysely<Tables>, letters: readonly string[]): Promise<Map<string, Came>> {
  const rows =
    letters.length === 0
      ? []
      : await db
          .selectFrom("letters")
          .select(["id", "received_at", "dated_at"])
          .where("id", "in", [...new Set(letters)].map(Number))
          .execute();
  return new Map(
    rows.map(({ id, received_at, dated_at }) => [
      String(id),
      {
        receivedAt: new Date(received_at),
        ...(dated_at === null ? {} : { dated: new Date(dated_at) }),
      },
    ]),
  );
}
