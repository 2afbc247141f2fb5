import type { ExpressionBuilder, ExpressionWrapper, Kysely, SqlBool, Transaction } from "kysely";
import { type Claim, ClaimLost, type Hold, opensInTurn } from "../ports/store.ts";
import type { LetterState } from "../trade/record.ts";
import { isPostgres } from "./dialect.ts";
import type { Tables } from "./tables.ts";

/** States in which something is still to be done for a letter. */
export const openStates = [
  "received",
  "ready",
  "sending",
  "later",
  "unknown",
] as const satisfies readonly LetterState[];

/** Which letters are asked for: one, those of one lane, or any. */
interface Wanted {
  readonly letter?: number;
  readonly lane?: string;
}

/**
 * Takes up the job of a letter, or the oldest that is due. It is one statement, so that of two workers that ask at
 * once only one gets it. While a letter is in hand, no other of its lane is handed out. Claims live in the record
 * alone; flags and moves in a mailbox are no claim.
 */
export async function takeClaim(
  db: Kysely<Tables>,
  now: Date,
  until: Date,
  { letter, lane }: Wanted = {},
): Promise<Claim | undefined> {
  const moment = now.toISOString();
  const job = await db
    .updateTable("jobs")
    .set((eb) => ({ claimed_until: until.toISOString(), fence: eb("fence", "+", 1) }))
    .where("id", "=", (eb) =>
      eb
        .selectFrom("jobs")
        .innerJoin("letters", "letters.id", "jobs.letter")
        .select("jobs.id")
        .where("letters.state", "in", openStates)
        .where((w) => w.or([w("claimed_until", "is", null), w("claimed_until", "<=", moment)]))
        .where((w) => w.or([w("due_at", "is", null), w("due_at", "<=", moment)]))
        .where((w) => w.or([w("letters.state", "!=", "received"), w.not(hasOlder(w))]))
        .where((w) =>
          w.or([w("letters.lane", "is", null), w("letters.lane", "not in", lanesInHand(w, moment))]),
        )
        .$if(letter !== undefined, (q) => q.where("letters.id", "=", letter ?? 0))
        .$if(lane !== undefined, (q) =>
          q
            .where("letters.lane", "=", lane ?? "")
            // What waits in its lane is found in the order of the index, however much waits there.
            .where("letters.state", "=", "received")
            .where("opened", "<=", opensInTurn)
            .orderBy("letters.received_at"),
        )
        // Letters that were opened before come last, so that one over which workers have died delays no other.
        .$if(lane === undefined, (q) => q.orderBy("opened"))
        .orderBy("letters.id")
        .limit(1)
        // What another worker is about to take is passed over. SQLite lets one write at a time.
        .$if(isPostgres(db), (q) => q.forUpdate("jobs").skipLocked()),
    )
    .returning(["letter", "fence", "opened", "tries", "unsure", "waits_since"])
    .executeTakeFirst();
  if (job === undefined) return undefined;
  const { received_at, state, kind, let_in_as } = await db
    .selectFrom("letters")
    .select(["received_at", "state", "kind", "let_in_as"])
    .where("id", "=", job.letter)
    .executeTakeFirstOrThrow();
  const { waits_since, ...counts } = job;
  return {
    ...counts,
    receivedAt: new Date(received_at),
    state: state as LetterState,
    kind: kind === "note" ? "note" : "letter",
    ...(let_in_as === null ? {} : { letInAs: let_in_as }),
    ...(waits_since === null ? {} : { waitsSince: new Date(waits_since) }),
  };
}

/** The lanes of which a letter is in somebody's hands. One that is done with is in nobody's, whatever its claim says. */
function lanesInHand(eb: ExpressionBuilder<Tables, "jobs" | "letters">, moment: string) {
  return eb
    .selectFrom("jobs as held")
    .innerJoin("letters as busy", "busy.id", "held.letter")
    .select("busy.lane")
    .where("held.claimed_until", ">", moment)
    .where("busy.state", "in", openStates)
    .where("busy.lane", "is not", null);
}

/**
 * Whether an older letter of the same lane is still to be judged, since the oldest is judged first. Two kinds of
 * older letters hold up no others: one that waits because of a limit, and one that rests since workers have died over
 * it. When their turn comes, their sheets are the older ones.
 */
function hasOlder(
  eb: ExpressionBuilder<Tables, "jobs" | "letters">,
): ExpressionWrapper<Tables, "jobs" | "letters", SqlBool> {
  return eb.exists(
    eb
      .selectFrom("letters as older")
      .innerJoin("jobs as job", "job.letter", "older.id")
      .select("older.id")
      .whereRef("older.lane", "=", "letters.lane")
      .where("older.state", "=", "received")
      // Said twice, so that the index leads to the older ones alone.
      .whereRef("older.received_at", "<=", "letters.received_at")
      .where("job.waits_since", "is", null)
      .where("job.opened", "<=", opensInTurn)
      .where((o) =>
        o.or([
          o("older.received_at", "<", o.ref("letters.received_at")),
          o.and([
            o("older.received_at", "=", o.ref("letters.received_at")),
            o("older.id", "<", o.ref("letters.id")),
          ]),
        ]),
      ),
  );
}

/** Counts that a letter is opened, before it is opened. So a letter that kills the worker is counted too. */
export async function countOpening(tx: Transaction<Tables>, claim: Claim): Promise<Claim> {
  await holdOn(tx, claim);
  const opened = claim.opened + 1;
  await tx.updateTable("jobs").set({ opened }).where("letter", "=", claim.letter).execute();
  return { ...claim, opened };
}

/** Lets a letter go until its turn comes. It was not opened, so the opening is taken back. */
export async function letWait(
  tx: Transaction<Tables>,
  claim: Hold,
  { sender, why, until }: { readonly sender: string; readonly why: string; readonly until: Date },
  now: Date,
): Promise<void> {
  await holdOn(tx, claim);
  await tx.updateTable("letters").set({ sender, why }).where("id", "=", claim.letter).execute();
  await tx
    .updateTable("jobs")
    .set((eb) => ({
      due_at: until.toISOString(),
      claimed_until: null,
      opened: eb("opened", "-", 1),
      waits_since: eb.fn.coalesce("waits_since", eb.val(now.toISOString())),
    }))
    .where("letter", "=", claim.letter)
    .execute();
}

/** Keeps a letter in the same hands for longer, never for less. */
export async function renewClaim(tx: Transaction<Tables>, claim: Hold, until: Date): Promise<void> {
  await holdOn(tx, claim);
  await tx
    .updateTable("jobs")
    .set({ claimed_until: until.toISOString() })
    .where("letter", "=", claim.letter)
    .where("claimed_until", "<", until.toISOString())
    .execute();
}

/** Lets a letter go, so that whoever asks next can take it up. */
export async function releaseClaim(tx: Transaction<Tables>, claim: Hold): Promise<void> {
  await holdOn(tx, claim);
  await tx.updateTable("jobs").set({ claimed_until: null }).where("letter", "=", claim.letter).execute();
}

/** Writes where a letter stands; with `dueAt` it is let go and not taken up before. */
export async function markLetter(
  tx: Transaction<Tables>,
  claim: Hold,
  state: LetterState,
  words: string,
  dueAt?: Date,
): Promise<void> {
  await holdOn(tx, claim);
  const before = await tx
    .selectFrom("letters")
    .select("state")
    .where("id", "=", claim.letter)
    .executeTakeFirstOrThrow();
  await tx
    .updateTable("letters")
    .set({
      state,
      ...(state === "held" ? { why: words, verdict: "person" } : {}),
      // Whoever has dealt with what it said did not know that its answer would not arrive.
      ...(state === "refused" ? { dealt_with_at: null } : {}),
    })
    .where("id", "=", claim.letter)
    .execute();
  const isUnsure = state === "unknown" && before.state === "sending";
  await tx
    .updateTable("jobs")
    .set((eb) => ({
      fence: claim.fence,
      ...(state === "sending" ? { tries: eb("tries", "+", 1) } : {}),
      ...(isUnsure ? { unsure: eb("unsure", "+", 1) } : {}),
      ...(dueAt === undefined ? {} : { due_at: dueAt.toISOString(), claimed_until: null }),
    }))
    .where("letter", "=", claim.letter)
    .execute();
}

/** Makes sure, within a transaction, that a letter is still in the same hands. Throws ClaimLost if it is not. */
export async function holdOn(tx: Transaction<Tables>, { letter, fence }: Hold): Promise<void> {
  // It updates rather than reads, which locks the row until the transaction ends.
  const held = await tx
    .updateTable("jobs")
    .set({ fence })
    .where("letter", "=", letter)
    .where("fence", "=", fence)
    .returning("id")
    .executeTakeFirst();
  if (held === undefined) throw new ClaimLost(`letter ${letter} is in other hands`);
}
