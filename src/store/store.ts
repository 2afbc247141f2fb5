import type { Kysely } from "kysely";
import { plainText } from "../orders/keys.ts";
import type { Store } from "../ports/store.ts";
import type { LetterState } from "../trade/record.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Blobs } from "./blobs.ts";
import { migrate } from "./migrations.ts";
import { readLetters, readOpenOrders, readOrders } from "./read.ts";
import type { Tables } from "./tables.ts";
import { writeEvent, writeOutcome } from "./write.ts";

/** How many of a buyer's latest orders are compared with a new letter. */
const latestOrders = 30;

/** The record over a database and a place for bytes. Brings the tables up to date first. */
export async function openStore(db: Kysely<Tables>, blobs: Blobs): Promise<Store> {
  await migrate(db);
  return {
    receive: async (key, bytes, receivedAt) => {
      const known = await db
        .selectFrom("letters")
        .select(["id", "state"])
        .where("key", "=", key)
        .executeTakeFirst();
      if (known !== undefined) return { letter: known.id, state: known.state as LetterState, again: true };
      const bytes_sha = await blobs.put(bytes);
      return db.transaction().execute(async (tx) => {
        const made = await tx
          .insertInto("letters")
          .values({ key, bytes_sha, received_at: receivedAt.toISOString(), state: "received" })
          .onConflict((conflict) => conflict.column("key").doNothing())
          .returning("id")
          .executeTakeFirst();
        if (made !== undefined) {
          await writeEvent(tx, made.id, "received", "", receivedAt);
          return { letter: made.id, state: "received", again: false };
        }
        const other = await tx
          .selectFrom("letters")
          .select(["id", "state"])
          .where("key", "=", key)
          .executeTakeFirstOrThrow();
        return { letter: other.id, state: other.state as LetterState, again: true };
      });
    },
    settle: async (letter, outcome, now) => {
      const attachments = new Map<string, string>();
      for (const { id, bytes } of outcome.letter.attachments) attachments.set(id, await blobs.put(bytes));
      const shas = {
        attachments,
        ...(outcome.answer === undefined ? {} : { answer: await blobs.put(outcome.answer.bytes) }),
      };
      await db.transaction().execute((tx) => writeOutcome(tx, letter, outcome, shas, now));
    },
    hold: (letter, why, now) =>
      db.transaction().execute(async (tx) => {
        await tx
          .updateTable("letters")
          .set({ state: "held", why, verdict: "person" })
          .where("id", "=", letter)
          .execute();
        await writeEvent(tx, letter, "held", why, now);
      }),
    answer: async (letter) => {
      const row = await db.selectFrom("answers").selectAll().where("letter", "=", letter).executeTakeFirst();
      if (row === undefined) return undefined;
      return {
        letter,
        messageId: row.message_id,
        recipient: row.recipient,
        bytes: await blobs.get(row.bytes_sha),
      };
    },
    isAnswer: async (messageIds) =>
      messageIds.length > 0 &&
      (await db
        .selectFrom("answers")
        .select("letter")
        .where("message_id", "in", messageIds)
        .executeTakeFirst()) !== undefined,
    mark: (letter, state, words, now) =>
      db.transaction().execute(async (tx) => {
        await tx.updateTable("letters").set({ state }).where("id", "=", letter).execute();
        if (state === "sent")
          await tx
            .updateTable("answers")
            .set({ sent_at: now.toISOString(), words })
            .where("letter", "=", letter)
            .execute();
        await writeEvent(tx, letter, state, words, now);
      }),
    inState: async (...states) =>
      (await db.selectFrom("letters").select("id").where("state", "in", states).orderBy("id").execute()).map(
        ({ id }) => id,
      ),
    bytesOf: async (letter) => {
      const { bytes_sha } = await db
        .selectFrom("letters")
        .select("bytes_sha")
        .where("id", "=", letter)
        .executeTakeFirstOrThrow();
      return blobs.get(bytes_sha);
    },
    countingSheets: async (buyer, numbers) => {
      const latest = await db
        .selectFrom("orders")
        .select("key")
        .where("buyer", "=", buyer)
        .orderBy("changed_at", "desc")
        .limit(latestOrders)
        .execute();
      const rows = await db
        .selectFrom("sheets")
        .select("content")
        .where("buyer", "=", buyer)
        .where("counts", "=", 1)
        .where("order_key", "in", [...latest.map(({ key }) => key), ...numbers.map(plainText)])
        .orderBy("letter")
        .orderBy("id")
        .execute();
      return rows.map(({ content }) => JSON.parse(content) as Sheet);
    },
    belongsToAnother: async (number, buyer) => {
      const first = await db
        .selectFrom("orders")
        .select("buyer")
        .where("key", "=", plainText(number))
        .orderBy("id")
        .executeTakeFirst();
      return first !== undefined && first.buyer !== buyer;
    },
    orders: async (number) =>
      readOrders(
        db,
        await db
          .selectFrom("orders")
          .selectAll()
          .where("key", "=", plainText(number))
          .orderBy("id")
          .execute(),
      ),
    openOrdersAt: (moment) => readOpenOrders(db, moment),
    letter: async (letter) => {
      const [record] = await readLetters(
        db,
        await db.selectFrom("letters").selectAll().where("id", "=", letter).execute(),
      );
      if (record === undefined) throw new Error(`no letter ${letter} in the record`);
      return record;
    },
    lettersBetween: async (from, to) =>
      readLetters(
        db,
        await db
          .selectFrom("letters")
          .selectAll()
          .where("received_at", ">=", from.toISOString())
          .where("received_at", "<", to.toISOString())
          .orderBy("received_at")
          .orderBy("id")
          .execute(),
      ),
    close: () => db.destroy(),
  };
}
