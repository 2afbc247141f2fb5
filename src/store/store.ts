import type { Kysely } from "kysely";
import { orderKey } from "../judging/state.ts";
import type { Store } from "../ports/store.ts";
import type { LetterState } from "../trade/record.ts";
import type { Blobs } from "./blobs.ts";
import { countOpening, holdOn, letWait, takeClaim } from "./claims.ts";
import { readAnswered, readKept, readSheets } from "./kept.ts";
import { readLines } from "./lines.ts";
import { isMigrated, migrate } from "./migrations.ts";
import { dropNotice, lettersForPerson, takeNotice } from "./notice.ts";
import { readLetters, readOpenOrders, readOrders } from "./read.ts";
import { isProved, numbersKnown, recentAnswers, returned, secretOf, threadOf } from "./senders.ts";
import { readState } from "./state.ts";
import type { Tables } from "./tables.ts";
import { writeEvent, writeOutcome } from "./write.ts";

/** The record over a database and a place for bytes. Brings the tables up to date first. */
export async function openStore(db: Kysely<Tables>, blobs: Blobs): Promise<Store> {
  await migrate(db);
  return storeOver(db, blobs);
}

/** A record to read, as it is. Throws where it is of another version of the program. */
export async function readStore(db: Kysely<Tables>, blobs: Blobs): Promise<Store> {
  if (!(await isMigrated(db)))
    throw new Error("the record is of another version of Burin; `burin work` brings an older one up to date");
  return storeOver(db, blobs);
}

function storeOver(db: Kysely<Tables>, blobs: Blobs): Store {
  return {
    receive: async (key, bytes, receivedAt, lane) => {
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
          .values({
            key,
            bytes_sha,
            received_at: receivedAt.toISOString(),
            state: "received",
            lane: lane ?? null,
          })
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
    linesSeen: (senders, lines) => readLines(db, senders, lines),
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
    claim: (letter, now, until) => takeClaim(db, now, until, { letter }),
    claimDue: (now, until, lane) => takeClaim(db, now, until, lane === undefined ? {} : { lane }),
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
    stateOf: (buyer, numbers) => readState(db, buyer, numbers),
    lettersOfNoOrder: async (buyer) => {
      const rows = await db
        .selectFrom("letters")
        .select("id")
        .where("buyer", "=", buyer)
        .where((eb) =>
          eb.exists(
            eb
              .selectFrom("problems")
              .select("letter")
              .whereRef("problems.letter", "=", "letters.id")
              .where("problems.verdict", "=", "person"),
          ),
        )
        // What was held, or was a machine's, says nothing of the buyer's orders.
        .where("why", "is", null)
        .where((eb) =>
          eb.not(
            eb.exists(
              eb
                .selectFrom("order_letters")
                .select("letter")
                .whereRef("order_letters.letter", "=", "letters.id"),
            ),
          ),
        )
        .orderBy("id", "desc")
        .limit(30)
        .execute();
      return rows.map(({ id }) => id).toReversed();
    },
    ownerOf: async (number) => {
      const owner = await db
        .selectFrom("numbers")
        .select(["buyer", "domain"])
        .where("key", "=", orderKey(number))
        .executeTakeFirst();
      if (owner === undefined) return undefined;
      return { buyer: owner.buyer, ...(owner.domain === null ? {} : { domain: owner.domain }) };
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
          .where("key", "=", orderKey(number))
          .where("key", "!=", "")
          .orderBy("id")
          .execute(),
      ),
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
