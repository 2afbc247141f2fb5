import type { Kysely } from "kysely";
import { plainText } from "../orders/keys.ts";
import type { Store } from "../ports/store.ts";
import type { LetterState } from "../trade/record.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Blobs } from "./blobs.ts";
import { countOpening, holdOn, letWait, takeClaim } from "./claims.ts";
import { readAnswered, readKept, readSheets } from "./kept.ts";
import { migrate } from "./migrations.ts";
import { dropNotice, lettersForPerson, takeNotice } from "./notice.ts";
import { readLetters, readOpenOrders, readOrders } from "./read.ts";
import { isProved, numbersKnown, recentAnswers, returned, secretOf, threadOf } from "./senders.ts";
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
    settle: async (claim, outcome, now) => {
      const attachments = new Map<string, string>();
      for (const { id, bytes } of outcome.letter.attachments) attachments.set(id, await blobs.put(bytes));
      const shas = {
        attachments,
        ...(outcome.answer === undefined ? {} : { answer: await blobs.put(outcome.answer.bytes) }),
      };
      await db.transaction().execute(async (tx) => {
        await holdOn(tx, claim);
        await writeOutcome(tx, claim.letter, outcome, shas, now);
      });
    },
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
    answered: (messageIds) => readAnswered(db, messageIds),
    keptWords: (buyer) => readKept(db, buyer),
    sheets: (ids) => readSheets(db, ids),
    mark: (claim, state, words, now, dueAt) =>
      db.transaction().execute(async (tx) => {
        await holdOn(tx, claim);
        await tx
          .updateTable("letters")
          .set((eb) => ({
            state,
            ...(state === "held" ? { why: words, verdict: "person" } : {}),
            ...(state === "sending" ? { tries: eb("tries", "+", 1) } : {}),
            ...(state === "unknown"
              ? { unsure: eb("unsure", "+", eb.case().when("state", "=", "sending").then(1).else(0).end()) }
              : {}),
            ...(dueAt === undefined ? {} : { due_at: dueAt.toISOString(), claimed_until: null }),
          }))
          .where("id", "=", claim.letter)
          .execute();
        if (state === "sent")
          await tx
            .updateTable("answers")
            .set({ sent_at: now.toISOString(), words })
            .where("letter", "=", claim.letter)
            .execute();
        await writeEvent(tx, claim.letter, state, words, now);
      }),
    claim: (letter, now, until) => takeClaim(db, now, until, letter),
    claimDue: (now, until) => takeClaim(db, now, until),
    renew: (claim, until) =>
      db.transaction().execute(async (tx) => {
        await holdOn(tx, claim);
        await tx
          .updateTable("letters")
          .set({ claimed_until: until.toISOString() })
          .where("id", "=", claim.letter)
          .where("claimed_until", "<", until.toISOString())
          .execute();
      }),
    opening: (claim) => db.transaction().execute((tx) => countOpening(tx, claim)),
    letWait: (claim, wait, now) =>
      db.transaction().execute(async (tx) => {
        await letWait(tx, claim, wait, now);
        await writeEvent(tx, claim.letter, "waiting", wait.why, now);
      }),
    returned: (letter, why, now) =>
      db.transaction().execute(async (tx) => {
        const changed = await returned(tx, letter, why);
        if (changed) await writeEvent(tx, letter, "refused", why, now);
        return changed;
      }),
    answersSince: (moment, sender, thread) => recentAnswers(db, moment, sender, thread),
    threadOf: (messageIds) => threadOf(db, messageIds),
    numbersKnown: (keys) => numbersKnown(db, keys),
    secret: () => secretOf(db, "message-id"),
    proved: (sender) => isProved(db, sender),
    states: async () =>
      Object.fromEntries(
        (
          await db
            .selectFrom("letters")
            .select(["state", (eb) => eb.fn.countAll<number>().as("count")])
            .groupBy("state")
            .execute()
        ).map(({ state, count }) => [state, count]),
      ),
    forPerson: (now) => lettersForPerson(db, now),
    takeNotice: (now, told) => takeNotice(db, now, told),
    dropNotice: (taken) => dropNotice(db, taken),
    markOf: async (mailbox) =>
      db.selectFrom("marks").select(["validity", "uid"]).where("mailbox", "=", mailbox).executeTakeFirst(),
    setMark: async (mailbox, mark) => {
      await db
        .insertInto("marks")
        .values({ mailbox, ...mark })
        .onConflict((conflict) => conflict.column("mailbox").doUpdateSet(mark))
        .execute();
    },
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
    ownerOf: async (number) => {
      const first = await db
        .selectFrom("orders")
        .select(["buyer", "domain"])
        .where("key", "=", plainText(number))
        .orderBy("id")
        .executeTakeFirst();
      if (first === undefined) return undefined;
      return { buyer: first.buyer, ...(first.domain === null ? {} : { domain: first.domain }) };
    },
    knows: async (sender) =>
      (await db
        .selectFrom("answers")
        .innerJoin("letters", "letters.id", "answers.letter")
        .select("letters.id")
        .where("letters.sender", "=", sender)
        .where("sent_at", "is not", null)
        .executeTakeFirst()) !== undefined,
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
    revisionsBefore: async (letter, buyer, numbers) => {
      if (numbers.length === 0) return new Map();
      const rows = await db
        .selectFrom("order_letters")
        .innerJoin("orders", "orders.id", "order_letters.order_id")
        .select(["orders.key", (eb) => eb.fn.countAll<number>().as("count")])
        .where("orders.buyer", "=", buyer)
        .where("orders.key", "in", numbers.map(plainText))
        .where("order_letters.letter", "!=", letter)
        .where("order_letters.changes", "=", 1)
        .groupBy("orders.key")
        .execute();
      const counts = new Map(rows.map(({ key, count }) => [key, count]));
      return new Map(numbers.map((number) => [number, counts.get(plainText(number)) ?? 0]));
    },
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
    room: () => blobs.room(),
    close: () => db.destroy(),
  };
}
