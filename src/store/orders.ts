import { type Kysely, sql } from "kysely";
import { orderKey } from "../judging/state.ts";
import type { Orders, OrderWeek } from "../ports/store.ts";
import type { Carried } from "../trade/carried.ts";
import type { Confirmation } from "../trade/confirmation.ts";
import type { FileId } from "../trade/sheet.ts";
import { among } from "./among.ts";
import type { Blobs } from "./blobs.ts";
import { listOrders } from "./list-orders.ts";
import { readOpenOrders, readOrders, readSheets } from "./read.ts";
import { problemFrom } from "./shapes.ts";
import type { Tables } from "./tables.ts";
import { readUnread } from "./unread.ts";

/** Orders and their sheets, to read. */
export function ordersOver(db: Kysely<Tables>, blobs: Blobs): Orders {
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
    holding: (sheet) =>
      db
        .selectFrom("revision_sheets")
        .innerJoin("orders", "orders.latest", "revision_sheets.revision")
        .select(["orders.buyer", "orders.number"])
        .where("revision_sheets.sheet", "=", sheet)
        .executeTakeFirst(),
    carrying: (letter) => readCarrying(db, letter),
    originals: (ids) => readOriginals(db, blobs, ids),
    confirmed: (buyer, number) => readConfirmed(db, buyer, number),
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
    waiting: async () =>
      readOrders(
        db,
        await db
          .selectFrom("orders")
          .innerJoin("revisions", "revisions.id", "orders.latest")
          .selectAll("orders")
          .where("revisions.verdict", "in", ["waiting", "confirm", "fail"])
          .where("orders.key", "!=", "")
          .where("orders.released", "is", null)
          .orderBy("orders.id")
          .execute(),
      ),
    passed: (until) =>
      db
        .selectFrom("orders")
        .innerJoin("revisions", "revisions.id", "orders.latest")
        .select(["orders.buyer", "orders.number"])
        .where("orders.verdict", "=", "pass")
        .where("revisions.at", "<=", until.toISOString())
        .where("orders.key", "!=", "")
        .where("orders.released", "is", null)
        .orderBy("orders.id")
        .execute(),
    toPack: (until) =>
      db
        .selectFrom("letters")
        .innerJoin("order_letters", "order_letters.letter", "letters.id")
        .innerJoin("orders", "orders.id", "order_letters.order_id")
        .select(["orders.buyer", "orders.number"])
        .distinct()
        .where("letters.to_pack", "=", sql.lit(1))
        .where("letters.received_at", "<=", until.toISOString())
        .execute(),
    packed: async (buyer, number) => {
      const order = db
        .selectFrom("order_letters")
        .innerJoin("orders", "orders.id", "order_letters.order_id")
        .select("order_letters.letter")
        .where("orders.buyer", "=", buyer)
        .where("orders.key", "=", orderKey(number));
      await db
        .updateTable("letters")
        .set({ to_pack: 0 })
        .where("to_pack", "=", sql.lit(1))
        .where("id", "in", order)
        .execute();
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
    unreadBeside: (order, lane) => readUnread(db, { ...order, lane }),
    list: (sought) => listOrders(db, sought),
    week: (from, until) => readWeek(db, from, until),
    openAt: (moment) => readOpenOrders(db, moment),
  };
}

/** Orders that something happened to in a week, and open ones. */
async function readWeek(db: Kysely<Tables>, from: Date, until: Date): Promise<OrderWeek[]> {
  const [begin, end] = [from.toISOString(), until.toISOString()];
  const moved = await db
    .selectFrom("order_letters")
    .innerJoin("letters", "letters.id", "order_letters.letter")
    .select("order_letters.order_id")
    .distinct()
    .where("letters.received_at", ">=", begin)
    .where("letters.received_at", "<", end)
    .execute();
  const ids = new Set(moved.map(({ order_id }) => order_id));
  const rows = await db
    .selectFrom("orders")
    .selectAll()
    .where("key", "!=", "")
    .where((eb) =>
      eb.or([
        eb("id", "in", among([...ids])),
        eb.and([eb("verdict", "is not", null), eb("verdict", "!=", "pass")]),
        eb.and([eb("verdict", "=", "pass"), eb("released", "is", null)]),
      ]),
    )
    .where("opened_at", "<", end)
    .orderBy("id")
    .execute();
  const asked = Map.groupBy(
    await db
      .selectFrom("questions")
      .select(["order_id", "problem", "shape"])
      .where("opened_at", ">=", begin)
      .where("opened_at", "<", end)
      .orderBy("id")
      .execute(),
    ({ order_id }) => order_id,
  );
  const week: OrderWeek[] = [];
  for (const row of rows) {
    const [order] = await readOrders(db, [row]);
    const slips = (asked.get(row.id) ?? []).map(({ problem, shape }) =>
      problemFrom(JSON.parse(problem), shape),
    );
    if (order !== undefined) week.push({ order, isMoved: ids.has(row.id), slips });
  }
  return week;
}

/** The orders that carry something of a letter. */
async function readCarrying(
  db: Kysely<Tables>,
  letter: number,
): Promise<{ readonly buyer: string; readonly number: string }[]> {
  const rows = await db
    .selectFrom("order_letters")
    .innerJoin("orders", "orders.id", "order_letters.order_id")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select(["orders.buyer", "orders.number", "revisions.carried"])
    .where("order_letters.letter", "=", letter)
    .orderBy("orders.id")
    .execute();
  return rows.flatMap(({ buyer, number, carried }) =>
    (JSON.parse(carried) as Carried[]).some((one) => one.letter === String(letter))
      ? [{ buyer, number }]
      : [],
  );
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

/** Throws when a file is not in the record. */
async function readOriginals(
  db: Kysely<Tables>,
  blobs: Blobs,
  ids: readonly FileId[],
): Promise<ReadonlyMap<FileId, Uint8Array>> {
  const rows =
    ids.length === 0
      ? []
      : await db.selectFrom("attachments").select(["id", "bytes_sha"]).where("id", "in", ids).execute();
  const shas = new Map(rows.map(({ id, bytes_sha }) => [id, bytes_sha]));
  const originals = new Map<FileId, Uint8Array>();
  for (const id of ids) {
    const sha = shas.get(id);
    if (sha === undefined) throw new Error(`the record has no file ${id}`);
    originals.set(id, await blobs.get(sha));
  }
  return originals;
}

async function readConfirmed(db: Kysely<Tables>, buyer: string, number: string): Promise<Confirmation[]> {
  const rows = await db
    .selectFrom("questions")
    .innerJoin("orders", "orders.id", "questions.order_id")
    .innerJoin("letters", "letters.id", "questions.settled_by")
    .selectAll("questions")
    .select(["letters.sender", "letters.subject"])
    .where("orders.buyer", "=", buyer)
    .where("orders.key", "=", orderKey(number))
    .orderBy("questions.number")
    .orderBy("questions.id")
    .execute();
  return rows.flatMap(
    ({ number: asked, problem, shape, station, position, settled_at, settled_by, ...rest }) =>
      settled_at === null || settled_by === null
        ? []
        : {
            number: asked,
            problem: problemFrom(JSON.parse(problem), shape),
            ...(station === null ? {} : { station }),
            ...(position === null ? {} : { position }),
            by: rest.decided_by ?? rest.sender ?? "",
            at: new Date(settled_at),
            letter: settled_by,
            // The subject of a note is who wrote it, and why.
            ...(rest.decided_by === null
              ? {}
              : { why: (rest.subject ?? "").slice(rest.decided_by.length + 2) }),
          },
  );
}
