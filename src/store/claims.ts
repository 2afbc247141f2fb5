import type { Kysely, Transaction } from "kysely";
import { type Claim, ClaimLost, type Hold } from "../ports/store.ts";
import type { LetterState } from "../trade/record.ts";
import type { Tables } from "./tables.ts";

/** States in which something is still to be done for a letter. */
const open = ["received", "ready", "sending", "later", "unknown"] as const satisfies readonly LetterState[];

/**
 * Takes up a letter, or the oldest that is due, in one statement: of two workers that ask at once, one
 * gets it. Claims live in the record and nowhere else; flags and moves in a mailbox are no claim.
 */
export async function takeClaim(
  db: Kysely<Tables>,
  now: Date,
  until: Date,
  { letter, lane }: { readonly letter?: number; readonly lane?: string } = {},
): Promise<Claim | undefined> {
  const moment = now.toISOString();
  const row = await db
    .updateTable("letters")
    .set((eb) => ({
      claimed_until: until.toISOString(),
      fence: eb("fence", "+", 1),
    }))
    .where("id", "=", (eb) =>
      eb
        .selectFrom("letters")
        .select("id")
        .where("state", "in", open)
        .where((w) => w.or([w("claimed_until", "is", null), w("claimed_until", "<=", moment)]))
        .where((w) => w.or([w("due_at", "is", null), w("due_at", "<=", moment)]))
        // Of the letters of one lane that are yet to be judged, the oldest is judged first. One that waits because of a
        // limit holds up no others: when its turn comes, what it brings is the older.
        .where((w) =>
          w.or([
            w("state", "!=", "received"),
            w("lane", "is", null),
            w.not(
              w.exists(
                w
                  .selectFrom("letters as older")
                  .select("older.id")
                  .whereRef("older.lane", "=", "letters.lane")
                  .where("older.state", "=", "received")
                  .where("older.waits_since", "is", null)
                  .where((o) =>
                    o.or([
                      o("older.received_at", "<", o.ref("letters.received_at")),
                      o.and([
                        o("older.received_at", "=", o.ref("letters.received_at")),
                        o("older.id", "<", o.ref("letters.id")),
                      ]),
                    ]),
                  ),
              ),
            ),
          ]),
        )
        .$if(letter !== undefined, (q) => q.where("id", "=", letter ?? 0))
        .$if(lane !== undefined, (q) => q.where("lane", "=", lane ?? ""))
        // A letter over which workers have died keeps those behind it waiting no longer.
        .orderBy("opened")
        .orderBy("id")
        .limit(1),
    )
    .returning(["id", "received_at", "state", "fence", "opened", "tries", "unsure", "waits_since"])
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const { id, received_at, state, waits_since, ...counts } = row;
  return {
    letter: id,
    receivedAt: new Date(received_at),
    state: state as LetterState,
    ...counts,
    ...(waits_since === null ? {} : { waitsSince: new Date(waits_since) }),
  };
}

/** Counts that a letter is opened, before it is: one that kills the worker is seen to have done so. */
export async function countOpening(tx: Transaction<Tables>, claim: Claim): Promise<Claim> {
  await holdOn(tx, claim);
  const opened = claim.opened + 1;
  await tx.updateTable("letters").set({ opened }).where("id", "=", claim.letter).execute();
  return { ...claim, opened };
}

/** Lets a letter go until its turn comes. It was not opened, so that waiting is nothing against it. */
export async function letWait(
  tx: Transaction<Tables>,
  claim: Hold,
  { sender, why, until }: { readonly sender: string; readonly why: string; readonly until: Date },
  now: Date,
): Promise<void> {
  await holdOn(tx, claim);
  await tx
    .updateTable("letters")
    .set((eb) => ({
      sender,
      why,
      due_at: until.toISOString(),
      claimed_until: null,
      opened: eb("opened", "-", 1),
      waits_since: eb.fn.coalesce("waits_since", eb.val(now.toISOString())),
    }))
    .where("id", "=", claim.letter)
    .execute();
}

/** Makes sure, within a transaction, that a letter is still in the same hands. Throws ClaimLost otherwise. */
export async function holdOn(tx: Transaction<Tables>, { letter, fence }: Hold): Promise<void> {
  // An update, not a look: it locks the row until the transaction ends.
  const held = await tx
    .updateTable("letters")
    .set({ fence })
    .where("id", "=", letter)
    .where("fence", "=", fence)
    .returning("id")
    .executeTakeFirst();
  if (held === undefined) throw new ClaimLost(`letter ${letter} is in other hands`);
}
