import type { Kysely, Selectable } from "kysely";
import type { FileKind } from "../trade/attachment.ts";
import type { CutLegend } from "../trade/cut.ts";
import type { Missing } from "../trade/order.ts";
import type { Problem, Verdict } from "../trade/problem.ts";
import type { LetterRecord, LetterState, OpenOrder, OrderRecord } from "../trade/record.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Tables } from "./tables.ts";

type Db = Kysely<Tables>;

/** Rows of letters with all that hangs on them. */
export async function readLetters(
  db: Db,
  rows: readonly Selectable<Tables["letters"]>[],
): Promise<LetterRecord[]> {
  const ids = rows.map(({ id }) => id);
  if (ids.length === 0) return [];
  const attachments = await db.selectFrom("attachments").selectAll().where("letter", "in", ids).execute();
  const sheets = await db.selectFrom("sheets").select(["letter", "id"]).where("letter", "in", ids).execute();
  const problems = await db
    .selectFrom("problems")
    .selectAll()
    .where("letter", "in", ids)
    .orderBy("id")
    .execute();
  const answers = await db
    .selectFrom("answers")
    .select(["letter", "message_id", "sent_at"])
    .where("letter", "in", ids)
    .execute();
  const orders = await db
    .selectFrom("order_letters")
    .innerJoin("orders", "orders.id", "order_letters.order_id")
    .select(["order_letters.letter", "orders.number"])
    .where("order_letters.letter", "in", ids)
    .execute();

  return rows.map((row) => {
    const [answer] = of(answers, row.id);
    return {
      letter: row.id,
      receivedAt: new Date(row.received_at),
      ...(row.sender === null ? {} : { from: row.sender }),
      subject: row.subject ?? "",
      state: row.state as LetterState,
      ...(row.verdict === null ? {} : { verdict: row.verdict as Verdict }),
      ...(row.why === null ? {} : { why: row.why }),
      ...(answer === undefined
        ? {}
        : {
            answer: {
              messageId: answer.message_id,
              ...(answer.sent_at === null ? {} : { sentAt: new Date(answer.sent_at) }),
            },
          }),
      orders: of(orders, row.id).map(({ number }) => number),
      sheets: of(sheets, row.id).length,
      problems: of(problems, row.id).map(problemOf),
      attachments: of(attachments, row.id).map(({ file, kind }) => ({ file, kind: kind as FileKind })),
    };
  });
}

/** Rows of orders with the sheets that count and the letters that brought them. */
export async function readOrders(
  db: Db,
  rows: readonly Selectable<Tables["orders"]>[],
): Promise<OrderRecord[]> {
  const orders: OrderRecord[] = [];
  for (const row of rows) {
    const sheets = await db
      .selectFrom("sheets")
      .select(["id", "content", "cut"])
      .where("buyer", "=", row.buyer)
      .where("order_key", "=", row.key)
      .where("counts", "=", 1)
      .orderBy("letter")
      .orderBy("id")
      .execute();
    const letters = (changes: 0 | 1) =>
      db
        .selectFrom("letters")
        .innerJoin("order_letters", "order_letters.letter", "letters.id")
        .selectAll("letters")
        .where("order_letters.order_id", "=", row.id)
        .where("order_letters.changes", "=", changes)
        .orderBy("letters.id")
        .execute();
    const changed = await readLetters(db, await letters(1));
    orders.push({
      number: row.number,
      buyer: row.buyer,
      ...(row.project === null ? {} : { project: row.project }),
      ...(row.verdict === null ? {} : { verdict: row.verdict as Verdict }),
      missing: JSON.parse(row.missing) as Missing[],
      openedAt: new Date(row.opened_at),
      changedAt: new Date(row.changed_at),
      sheets: sheets.map(({ content }) => JSON.parse(content) as Sheet),
      cut: Object.fromEntries(sheets.map(({ id, cut }) => [id, JSON.parse(cut) as CutLegend[]])),
      revision: changed.length,
      letters: changed,
      replies: await readLetters(db, await letters(0)),
    });
  }
  return orders;
}

/** What each order had come to by its last letter received before a moment, where that was not a pass. */
export async function readOpenOrders(db: Db, moment: Date): Promise<OpenOrder[]> {
  const rows = await db
    .selectFrom("order_letters")
    .innerJoin("letters", "letters.id", "order_letters.letter")
    .innerJoin("orders", "orders.id", "order_letters.order_id")
    .select([
      "orders.id",
      "orders.number",
      "orders.buyer",
      "orders.project",
      "order_letters.verdict",
      "order_letters.missing",
    ])
    .where("letters.received_at", "<", moment.toISOString())
    .orderBy("orders.id")
    .orderBy("letters.received_at")
    .orderBy("letters.id")
    .execute();
  return [...Map.groupBy(rows, ({ id }) => id).values()]
    .flatMap((history) => history.at(-1) ?? [])
    .filter(({ verdict }) => verdict !== null && verdict !== "pass")
    .map(({ number, buyer, project, verdict, missing }) => ({
      number,
      buyer,
      ...(project === null ? {} : { project }),
      verdict: verdict as Verdict,
      missing: JSON.parse(missing) as Missing[],
    }));
}

function of<T extends { letter: number }>(all: readonly T[], id: number): T[] {
  return all.filter(({ letter }) => letter === id);
}

function problemOf(row: Selectable<Tables["problems"]>): Problem {
  const { check, wording } = row;
  return {
    check,
    wording,
    severity: row.severity as Problem["severity"],
    verdict: row.verdict as Verdict,
    facts: JSON.parse(row.facts) as Problem["facts"],
    spots: JSON.parse(row.spots) as Problem["spots"],
  };
}
