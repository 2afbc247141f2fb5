import type { Kysely } from "kysely";
import type { Audited, AuditedLetter, AuditedOrder, AuditedPair, AuditedSlip } from "../trade/audited.ts";
import type { Problem, Verdict } from "../trade/problem.ts";
import { among } from "./among.ts";
import { becameBy, judgings } from "./became.ts";
import { endingOf } from "./ended.ts";
import { isStandIn } from "./residue.ts";
import { problemFrom } from "./shapes.ts";
import type { Tables } from "./tables.ts";
import { heldAt, unreadAt } from "./waited.ts";

type Db = Kysely<Tables>;

/** What the record knows of the time from `from` on and before `to`. Whatever came later is left out. */
export async function readAudited(db: Db, from: Date, to: Date): Promise<Audited> {
  const [start, end] = [from.toISOString(), to.toISOString()];
  return {
    letters: await lettersOf(db, start, end),
    orders: await ordersOf(db, start, end),
    pairs: await pairsOf(db, start, end),
    slips: await slipsOf(db, start, end),
    unread: await unreadAt(db, end),
    held: await heldAt(db, end),
  };
}

async function lettersOf(db: Db, start: string, end: string): Promise<AuditedLetter[]> {
  const events = await db
    .selectFrom("events")
    .select(["subject_id", "what", "words", "at"])
    .where("subject", "=", "letter")
    .where("what", "in", ["sent", ...judgings])
    .where("at", ">=", start)
    .where("at", "<", end)
    .orderBy("id")
    .execute();
  const sent = new Map<number | null, string>();
  const judged = new Map<number | null, AuditedLetter["became"]>();
  for (const { subject_id, what, words, at } of events) {
    const now = becameBy(what, words);
    if (now !== undefined) judged.set(subject_id, now);
    else if (!sent.has(subject_id)) sent.set(subject_id, at);
  }
  const rows = await db
    .selectFrom("letters")
    .leftJoin("sheets", "sheets.letter", "letters.id")
    .select(["letters.id", "letters.received_at", "letters.sender", "letters.subject", "letters.verdict"])
    .select((eb) => eb.fn.count("sheets.id").as("sheets"))
    .where("received_at", ">=", start)
    .where("received_at", "<", end)
    .where("letters.kind", "=", "letter")
    .groupBy("letters.id")
    .orderBy("received_at")
    .orderBy("letters.id")
    .execute();
  return rows.map(({ id, received_at, sender, subject, verdict, sheets }) => {
    const answered = sent.get(id);
    const now = judged.get(id);
    return {
      letter: id,
      receivedAt: new Date(received_at),
      from: sender ?? "",
      subject: subject ?? "",
      sheets: now === undefined ? 0 : Number(sheets),
      ...(now === undefined ? {} : { became: now }),
      ...(verdict === null || now !== "answered" ? {} : { verdict: verdict as Verdict }),
      ...(answered === undefined ? {} : { answeredAt: new Date(answered) }),
    };
  });
}

/** Letters of these days and the orders that they were about when the days ended. A pair is there once. */
async function pairsOf(db: Db, start: string, end: string): Promise<AuditedPair[]> {
  const rows = await db
    .selectFrom("order_letters")
    .innerJoin("letters", "letters.id", "order_letters.letter")
    .innerJoin("orders", "orders.id", "order_letters.order_id")
    .leftJoin("revisions", (join) =>
      join
        .onRef("revisions.letter", "=", "letters.id")
        .onRef("revisions.order_id", "=", "orders.id")
        .on("revisions.at", "<", end),
    )
    .select(["letters.id as letter", "letters.key", "letters.kind", "orders.id as order"])
    .select(["orders.number", "orders.buyer", "revisions.number as revision", "revisions.verdict"])
    .where("letters.received_at", ">=", start)
    .where("letters.received_at", "<", end)
    .where("letters.kind", "!=", "note")
    .where((eb) =>
      eb.exists(
        eb
          .selectFrom("events")
          .select("events.id")
          .where("subject", "=", "letter")
          .whereRef("subject_id", "=", "letters.id")
          .where("what", "in", judgings)
          .where("at", "<", end),
      ),
    )
    .orderBy("letters.received_at")
    .orderBy("letters.id")
    .orderBy("orders.id")
    .execute();
  return rows.map(({ letter, key, kind, order, number, buyer, revision, verdict }) => ({
    letter: kind === "let-in" ? Number(key.replace(/^let in /, "")) : letter,
    order,
    number,
    buyer,
    ...(revision === null ? {} : { revision }),
    ...(verdict === null ? {} : { verdict: verdict as Verdict }),
  }));
}

async function ordersOf(db: Db, start: string, end: string): Promise<AuditedOrder[]> {
  const rows = await db
    .selectFrom("revisions")
    .innerJoin("orders", "orders.id", "revisions.order_id")
    .select(["orders.id", "orders.number", "orders.buyer", "revisions.at", "revisions.verdict"])
    .select(["revisions.cause", "revisions.problems"])
    .where("orders.key", "!=", "")
    .where("revisions.at", "<", end)
    .where("orders.id", "in", (eb) =>
      eb.selectFrom("revisions").select("order_id").where("at", ">=", start).where("at", "<", end),
    )
    .orderBy("revisions.id")
    .execute();
  return [...Map.groupBy(rows, ({ id }) => id)].map(([order, revisions]) => ({
    order,
    number: revisions[0]?.number ?? "",
    buyer: revisions[0]?.buyer ?? "",
    revisions: revisions.map(({ at, verdict, cause, problems }) => ({
      at: new Date(at),
      ...(verdict === null ? {} : { verdict: verdict as Verdict }),
      checks: [...new Set((JSON.parse(problems) as { readonly check: string }[]).map(({ check }) => check))],
      isLetter: cause === "letter",
    })),
  }));
}

/** The sheet that a question is asked about. */
function fileOf({ spots }: Problem): string | undefined {
  return spots[0]?.file;
}

async function editionsOf(db: Db, files: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await db
    .selectFrom("sheets")
    .select(["id", "edition"])
    .where("id", "in", among(files))
    .execute();
  return new Map(rows.map(({ id, edition }) => [id, edition]));
}

async function slipsOf(db: Db, start: string, end: string): Promise<AuditedSlip[]> {
  const rows = await db
    .selectFrom("questions")
    .innerJoin("orders", "orders.id", "questions.order_id")
    .leftJoin("revisions", "revisions.id", "questions.closed_by")
    .selectAll("questions")
    .select(["orders.number as name", "orders.buyer", "orders.erased_at"])
    .select(["revisions.withdrawn", "revisions.cause"])
    .select((eb) =>
      eb
        .exists(
          eb
            .selectFrom("order_letters")
            .innerJoin("answers", "answers.letter", "order_letters.letter")
            .select("answers.letter")
            .whereRef("order_letters.order_id", "=", "orders.id")
            .whereRef("answers.recipient", "=", "questions.decided_by"),
        )
        .as("is_senders"),
    )
    .where("questions.opened_at", "<", end)
    .where((eb) =>
      eb.or([
        eb("questions.opened_at", ">=", start),
        eb("questions.closed_at", "is", null),
        eb("questions.closed_at", ">=", start),
      ]),
    )
    .orderBy("questions.id")
    .execute();
  // A question that was asked anew is the slip that it was, and has ended as it stood last.
  const slips = new Map<string, AuditedSlip>();
  const asked = rows.map((row) => ({ row, problem: problemFrom(JSON.parse(row.problem), row.shape) }));
  const editions = await editionsOf(
    db,
    asked.flatMap(({ problem }) => fileOf(problem) ?? []),
  );
  for (const { row, problem } of asked) {
    const edition = editions.get(fileOf(problem) ?? "");
    const key = `${row.order_id} ${row.key}`;
    slips.set(key, {
      order: row.order_id,
      number: row.name,
      buyer: row.buyer,
      problem,
      ...(edition === undefined ? {} : { edition }),
      openedAt: slips.get(key)?.openedAt ?? new Date(row.opened_at),
      ending: endingOf(
        { ...row, isSenders: Boolean(row.is_senders) || isStandIn(row.decided_by ?? "") },
        problem,
        end,
      ),
      ...(row.erased_at !== null && row.erased_at < end ? { isErased: true } : {}),
    });
  }
  return [...slips.values()].filter(
    ({ openedAt, ending, isErased }) =>
      openedAt.toISOString() >= start || (ending === "open" && isErased === undefined),
  );
}
