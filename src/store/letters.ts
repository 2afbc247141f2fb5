import { type Kysely, type RawBuilder, type SqlBool, sql, type Transaction } from "kysely";
import type { By, Claim, Hold, Letters, Outcome, Received } from "../ports/store.ts";
import type { LetterState } from "../trade/record.ts";
import type { Bell } from "./bell.ts";
import type { Blobs } from "./blobs.ts";
import { bytesFirst, stillThere } from "./bytes-first.ts";
import { countOpening, holdOn, letWait, markLetter, releaseClaim, renewClaim, takeClaim } from "./claims.ts";
import { writeHappening } from "./events.ts";
import { inTurn } from "./in-turn.ts";
import { readLetters } from "./read.ts";
import { returned } from "./senders.ts";
import type { Tables } from "./tables.ts";
import { type Shas, writeDealtWith, writeEvent, writeOutcome } from "./write.ts";

/** Letters, and in whose hands they are. */
export function lettersOver(db: Kysely<Tables>, blobs: Blobs, bell: Bell): Letters {
  return {
    receive: (key, bytes, receivedAt, lane, kind = "letter") =>
      receiveLetter(db, { blobs, bell }, { key, bytes, receivedAt, lane, kind }),
    arrival: bell.wait,
    isKnown: async (key) =>
      (await db.selectFrom("letters").select("id").where("key", "=", key).executeTakeFirst()) !== undefined,
    claim: (letter, now, until) => takeClaim(db, now, until, { letter }),
    claimDue: (now, until, lane) => takeClaim(db, now, until, lane === undefined ? {} : { lane }),
    opening: (claim) => db.transaction().execute((tx) => countOpening(tx, claim)),
    letWait: (claim, wait, now) =>
      inTurn(db, async (tx) => {
        await letWait(tx, claim, wait, now);
        await writeEvent(tx, claim.letter, "waiting", wait.why, now);
      }),
    renew: (claim, until) => db.transaction().execute((tx) => renewClaim(tx, claim, until)),
    settle: (claim, outcome, now) => settleLetter(db, blobs, claim, outcome, now),
    mark: (claim, state, words, now, dueAt) =>
      inTurn(db, async (tx) => {
        await markLetter(tx, claim, state, words, dueAt);
        await writeEvent(tx, claim.letter, state, words, now);
      }),
    sent: (claim, words, unreached, now) =>
      inTurn(db, async (tx) => {
        await markLetter(tx, claim, "sent", words);
        await tx
          .updateTable("answers")
          .set({ sent_at: now.toISOString(), words, unreached: unreached ?? null })
          .where("letter", "=", claim.letter)
          .execute();
        await writeEvent(tx, claim.letter, "sent", words, now);
        if (unreached !== undefined) await writeUnreached(tx, claim.letter, unreached, now);
      }),
    release: (claim) => db.transaction().execute((tx) => releaseClaim(tx, claim)),
    letIn: (letter, as, by, now) =>
      inTurn(db, async (tx) => {
        const copy = await copyLetter(tx, letter, as);
        if (copy === undefined) return undefined;
        await writeDealtWith(tx, letter, now);
        await writeDone(tx, letter, `let in as letter ${copy}`, by, now);
        await writeDone(tx, copy, "received", by, now);
        return copy;
      }),
    putAside: (letter, by, now) =>
      inTurn(db, async (tx) => {
        await writeDealtWith(tx, letter, now);
        await writeDone(tx, letter, "put aside", by, now);
      }),
    copyReturned: (letter, why, now) =>
      inTurn(db, async (tx) => {
        await tx.updateTable("answers").set({ unreached: why }).where("letter", "=", letter).execute();
        await writeUnreached(tx, letter, why, now);
      }),
    returned: (letter, why, now) =>
      inTurn(db, async (tx) => {
        const changed = await returned(tx, letter, why);
        if (changed) await writeEvent(tx, letter, "refused", why, now);
        return changed;
      }),
    sendAgain: (letter, by, now) =>
      inTurn(db, async (tx) => {
        const isAgain = await openAgain(tx, letter);
        if (isAgain) await writeDone(tx, letter, "sent again", by, now);
        return isAgain;
      }),
    history: async (letter) =>
      (
        await db
          .selectFrom("events")
          .select(["at", "actor", "what", "words"])
          .where("subject", "=", "letter")
          .where("subject_id", "=", letter)
          .orderBy("id")
          .execute()
      ).map(({ at, ...rest }) => ({ ...rest, at: new Date(at) })),
    read: async (letter) => {
      const [record] = await readLetters(
        db,
        await db.selectFrom("letters").selectAll().where("id", "=", letter).execute(),
      );
      if (record === undefined) throw new Error(`no letter ${letter} in the record`);
      return record;
    },
    between: async (from, to) =>
      readLetters(
        db,
        await db
          .selectFrom("letters")
          .selectAll()
          .where("received_at", ">=", from.toISOString())
          .where("received_at", "<", to.toISOString())
          .where("kind", "=", "letter")
          .orderBy("received_at")
          .orderBy("id")
          .execute(),
      ),
    list: async (most, before) => {
      const all = db
        .selectFrom("letters")
        .selectAll()
        .where("kind", "!=", "note")
        .orderBy("id", "desc")
        .limit(most);
      return readLetters(db, await (before === undefined ? all : all.where("id", "<", before)).execute());
    },
    bytesOf: async (letter) => {
      const { bytes_sha } = await db
        .selectFrom("letters")
        .select("bytes_sha")
        .where("id", "=", letter)
        .executeTakeFirstOrThrow();
      if (bytes_sha === "") throw new Error(`letter ${letter} is erased`);
      return blobs.get(bytes_sha);
    },
    states: () => countedByState(db),
    // As the index `letters_unfinished` has it.
    unfinished: () =>
      countedByState(db, sql<SqlBool>`state NOT IN ('sent', 'silent') AND dealt_with_at IS NULL`),
  };
}

/** Puts an answer that is done with back among those to be sent. False if there is none that is done with. */
async function openAgain(tx: Transaction<Tables>, letter: number): Promise<boolean> {
  const answer = await tx
    .selectFrom("answers")
    .select("letter")
    .where("letter", "=", letter)
    .executeTakeFirst();
  if (answer === undefined) return false;
  const changed = await tx
    .updateTable("letters")
    .set((eb) => ({
      state: "ready",
      // Why it could not be delivered no longer holds; why it was held still does.
      why: eb.case().when("state", "=", "refused").then(null).else(eb.ref("why")).end(),
    }))
    .where("id", "=", letter)
    .where("state", "in", ["sent", "refused"])
    .returning("id")
    .executeTakeFirst();
  if (changed === undefined) return false;
  await tx
    .updateTable("jobs")
    .set({ due_at: null, claimed_until: null, tries: 0, unsure: 0 })
    .where("letter", "=", letter)
    .execute();
  return true;
}

/** Writes that somebody was not reached with a copy of an answer. It waits for a person, whatever was dealt with before. */
async function writeUnreached(
  tx: Transaction<Tables>,
  letter: number,
  why: string,
  now: Date,
): Promise<void> {
  await tx.updateTable("letters").set({ dealt_with_at: null }).where("id", "=", letter).execute();
  await writeEvent(tx, letter, "copy not delivered", why, now);
}

/** A copy of a letter to be judged as another sender's. Undefined if there is one. */
async function copyLetter(
  tx: Transaction<Tables>,
  letter: number,
  { sender, lane }: { readonly sender: string; readonly lane?: string },
): Promise<number | undefined> {
  const { bytes_sha, received_at, dated_at } = await tx
    .selectFrom("letters")
    .select(["bytes_sha", "received_at", "dated_at"])
    .where("id", "=", letter)
    .executeTakeFirstOrThrow();
  const copy = await tx
    .insertInto("letters")
    .values({
      key: `let in ${letter}`,
      bytes_sha,
      received_at,
      dated_at,
      state: "received",
      lane: lane ?? null,
      kind: "let-in",
      let_in_as: sender,
    })
    .onConflict((conflict) => conflict.column("key").doNothing())
    .returning("id")
    .executeTakeFirst();
  if (copy === undefined) return undefined;
  await tx.insertInto("jobs").values({ letter: copy.id }).execute();
  return copy.id;
}

/** Writes what one of our own people did with a letter. */
async function writeDone(
  tx: Transaction<Tables>,
  letter: number,
  what: string,
  { name, why }: By,
  at: Date,
): Promise<void> {
  await writeHappening(tx, { at, actor: name, subject: "letter", subject_id: letter, what, words: why });
}

interface Arrival {
  readonly key: string;
  readonly bytes: Uint8Array;
  readonly receivedAt: Date;
  readonly lane: string | undefined;
  readonly kind: Claim["kind"];
}

/** Keeps a letter, unless one with its key is in the record. Of two workers that do it at once, one makes the row. */
async function receiveLetter(
  db: Kysely<Tables>,
  { blobs, bell }: { readonly blobs: Blobs; readonly bell: Bell },
  { key, bytes, receivedAt, lane, kind }: Arrival,
): Promise<Received> {
  const known = await db
    .selectFrom("letters")
    .select(["id", "state"])
    .where("key", "=", key)
    .executeTakeFirst();
  if (known !== undefined) return { letter: known.id, state: known.state as LetterState, again: true };
  return bytesFirst(
    () => blobs.put(bytes),
    (bytes_sha) =>
      inTurn(db, async (tx) => {
        const made = await tx
          .insertInto("letters")
          .values({
            key,
            bytes_sha,
            received_at: receivedAt.toISOString(),
            state: "received",
            lane: lane ?? null,
            kind,
          })
          .onConflict((conflict) => conflict.column("key").doNothing())
          .returning("id")
          .executeTakeFirst();
        if (made !== undefined) {
          await stillThere(tx, blobs, [bytes_sha]);
          await tx.insertInto("jobs").values({ letter: made.id }).execute();
          await writeEvent(tx, made.id, "received", "", receivedAt);
          await bell.ring(tx);
          return { letter: made.id, state: "received", again: false };
        }
        const other = await tx
          .selectFrom("letters")
          .select(["id", "state"])
          .where("key", "=", key)
          .executeTakeFirstOrThrow();
        return { letter: other.id, state: other.state as LetterState, again: true };
      }),
  );
}

/** Puts the bytes of an outcome where they stay, then writes all of it in one transaction. */
async function settleLetter(
  db: Kysely<Tables>,
  blobs: Blobs,
  claim: Hold,
  outcome: Outcome,
  now: Date,
): Promise<void> {
  await bytesFirst(
    () => putAll(blobs, outcome),
    (shas) =>
      inTurn(db, async (tx) => {
        await holdOn(tx, claim);
        await stillThere(tx, blobs, [
          ...shas.attachments.values(),
          ...(shas.answer === undefined ? [] : [shas.answer]),
        ]);
        await writeOutcome(tx, claim.letter, outcome, shas, now);
      }),
  );
}

/** Puts the bytes of an outcome where they stay. What is there already is not written again. */
async function putAll(blobs: Blobs, { letter, answer }: Outcome): Promise<Shas> {
  const attachments = new Map<string, string>();
  for (const { id, bytes } of letter.attachments) attachments.set(id, await blobs.put(bytes));
  return { attachments, ...(answer === undefined ? {} : { answer: await blobs.put(answer.bytes) }) };
}

async function countedByState(
  db: Kysely<Tables>,
  which: RawBuilder<SqlBool> = sql<SqlBool>`1 = 1`,
): Promise<Partial<Record<LetterState, number>>> {
  const rows = await db
    .selectFrom("letters")
    .select(["state", (eb) => eb.fn.countAll<number>().as("count")])
    .where(which)
    .groupBy("state")
    .execute();
  return Object.fromEntries(rows.map(({ state, count }) => [state, count]));
}
