import { type Kysely, sql } from "kysely";
import type { Audited, AuditedLetter, AuditedOrder, AuditedSlip, Ending } from "../trade/audited.ts";
import type { Verdict } from "../trade/problem.ts";
import { problemFrom } from "./shapes.ts";
import type { Tables } from "./tables.ts";

type Db = Kysely<Tables>;

/** What the record knows of the time from `from` on and before `to`. Whatever came later is left out. */
export async function readAudited(db: Db, from: Date, to: Date): Promise<Audited> {
  const [start, end] = [from.toISOString(), to.toISOString()];
  return {
    letters: await lettersOf(db, start, end),
    orders: await ordersOf(db, start, end),
    slips: await slipsOf(db, start, end),
    held: await heldAt(db, end),
  };
}

async function lettersOf(db: Db, start: string, end: string): Promise<AuditedLetter[]> {
  const events = await db
    .selectFrom("events")
    .select(["subject_id", "what", (eb) => eb.fn.min("at").as("at")])
    .where("subject", "=", "letter")
    .where("what", "in", ["ready", "held", "silent", "sent"])
    .where("at", ">=", start)
    .where("at", "<", end)
    .groupBy(["subject_id", "what"])
    .execute();
  const sent = new Map(events.flatMap((one) => (one.what === "sent" ? [[one.subject_id, one.at]] : [])));
  const judged = new Set(events.flatMap(({ what, subject_id }) => (what === "sent" ? [] : [subject_id])));
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
    return {
      letter: id,
      receivedAt: new Date(received_at),
      from: sender ?? "",
      subject: subject ?? "",
      sheets: judged.has(id) ? Number(sheets) : 0,
      ...(verdict === null || !judged.has(id) ? {} : { verdict: verdict as Verdict }),
      ...(answered === undefined ? {} : { answeredAt: new Date(answered) }),
    };
  });
}

async function ordersOf(db: Db, start: string, end: string): Promise<AuditedOrder[]> {
  const rows = await db
    .selectFrom("revisions")
    .innerJoin("orders", "orders.id", "revisions.order_id")
    .leftJoin("letters", "letters.id", "revisions.letter")
    .select(["orders.id", "orders.number", "orders.buyer", "revisions.at", "revisions.verdict"])
    .select("letters.kind")
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
    revisions: revisions.map(({ at, verdict, kind }) => ({
      at: new Date(at),
      ...(verdict === null ? {} : { verdict: verdict as Verdict }),
      isLetter: kind !== "note",
    })),
  }));
}

async function slipsOf(db: Db, start: string, end: string): Promise<AuditedSlip[]> {
  const rows = await db
    .selectFrom("questions")
    .innerJoin("orders", "orders.id", "questions.order_id")
    .leftJoin("sheets", (join) =>
      join.on("sheets.id", "=", sql<string>`json_extract(questions.problem, '$.spots[0].file')`),
    )
    .selectAll("questions")
    .select(["orders.number as name", "orders.buyer", "orders.erased_at", "sheets.edition"])
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
  for (const row of rows) {
    const problem = problemFrom(JSON.parse(row.problem), row.shape);
    const key = `${row.order_id} ${row.key}`;
    slips.set(key, {
      order: row.order_id,
      number: row.name,
      buyer: row.buyer,
      problem,
      ...(row.edition === null ? {} : { edition: row.edition }),
      openedAt: slips.get(key)?.openedAt ?? new Date(row.opened_at),
      ending: endingOf(row, end),
      ...(row.erased_at !== null && row.erased_at < end ? { isErased: true } : {}),
    });
  }
  return [...slips.values()].filter(
    ({ openedAt, ending, isErased }) =>
      openedAt.toISOString() >= start || (ending === "open" && isErased === undefined),
  );
}

function endingOf(
  row: {
    readonly settled_at: string | null;
    readonly decided_by: string | null;
    readonly closed_at: string | null;
  },
  end: string,
): Ending {
  if (row.settled_at !== null && row.settled_at < end) return row.decided_by === null ? "yes" : "decided";
  return row.closed_at !== null && row.closed_at < end ? "corrected" : "open";
}

async function heldAt(db: Db, end: string): Promise<Audited["held"]> {
  const rows = await db
    .selectFrom("events")
    .select(["subject_id", "what", "at"])
    .where("subject", "=", "letter")
    .where((eb) =>
      eb.or([eb("what", "in", ["held", "put aside", "ready"]), eb("what", "like", "let in as letter %")]),
    )
    .where("at", "<", end)
    .orderBy("id")
    .execute();
  const held = new Map<number, Date>();
  for (const { subject_id, what, at } of rows)
    if (what === "held") held.set(subject_id ?? 0, new Date(at));
    else held.delete(subject_id ?? 0);
  return [...held].map(([letter, since]) => ({ letter, since }));
}
