import type { Kysely, Selectable } from "kysely";
import type { FileKind } from "../trade/attachment.ts";
import type { Carried } from "../trade/carried.ts";
import type { CutLegend } from "../trade/cut.ts";
import type { Missing } from "../trade/order.ts";
import type { Problem, Verdict } from "../trade/problem.ts";
import type {
  LetterRecord,
  LetterState,
  OpenOrder,
  OrderRecord,
  ReminderRecord,
  RevisionRecord,
} from "../trade/record.ts";
import type { Released } from "../trade/released.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { problemFrom, sheetFrom } from "./shapes.ts";
import type { Tables } from "./tables.ts";

type Db = Kysely<Tables>;

/** Rows of letters with all that hangs on them. */
export async function readLetters(
  db: Db,
  rows: readonly Selectable<Tables["letters"]>[],
): Promise<LetterRecord[]> {
  const ids = rows.map(({ id }) => id);
  if (ids.length === 0) return [];
  const attachments = byLetter(
    await db.selectFrom("attachments").selectAll().where("letter", "in", ids).execute(),
  );
  const sheets = byLetter(
    await db.selectFrom("sheets").select(["letter", "id"]).where("letter", "in", ids).execute(),
  );
  const problems = byLetter(
    await db.selectFrom("problems").selectAll().where("letter", "in", ids).orderBy("id").execute(),
  );
  const answers = byLetter(
    await db
      .selectFrom("answers")
      .select(["letter", "message_id", "sent_at", "unreached"])
      .where("letter", "in", ids)
      .execute(),
  );
  const orders = byLetter(
    await db
      .selectFrom("order_letters")
      .innerJoin("orders", "orders.id", "order_letters.order_id")
      .select(["order_letters.letter", "orders.number"])
      .where("order_letters.letter", "in", ids)
      .where("orders.key", "!=", "")
      .execute(),
  );

  return rows.map((row) => {
    const [answer] = answers.get(row.id) ?? [];
    return {
      letter: row.id,
      receivedAt: new Date(row.received_at),
      ...(row.sender === null ? {} : { from: row.sender }),
      subject: row.subject ?? "",
      state: row.state as LetterState,
      ...(row.verdict === null ? {} : { verdict: row.verdict as Verdict }),
      ...(row.why === null ? {} : { why: row.why }),
      ...(row.bytes_sha === "" ? { isErased: true as const } : {}),
      ...(row.kind === "note" ? { isNote: true as const } : {}),
      ...(answer === undefined
        ? {}
        : {
            answer: {
              messageId: answer.message_id,
              ...(answer.sent_at === null ? {} : { sentAt: new Date(answer.sent_at) }),
              ...(answer.unreached === null ? {} : { unreached: answer.unreached }),
            },
          }),
      orders: (orders.get(row.id) ?? []).map(({ number }) => number),
      sheets: (sheets.get(row.id) ?? []).length,
      problems: (problems.get(row.id) ?? []).map(problemOf),
      attachments: (attachments.get(row.id) ?? []).map(({ id, file, kind }) => ({
        id,
        file,
        kind: kind as FileKind,
      })),
    };
  });
}

type Revisions = Selectable<Tables["revisions"]>;

/** Rows of orders with the sheets that stand and the letters that brought them. */
export async function readOrders(
  db: Db,
  rows: readonly Selectable<Tables["orders"]>[],
): Promise<OrderRecord[]> {
  const orders: OrderRecord[] = [];
  for (const row of rows) {
    const revision = await latestOf(db, row);
    if (revision === undefined) continue;
    const sheets = await sheetsIn(db, [revision.id]);
    const changed = await lettersOf(db, row.id, true);
    orders.push({
      number: row.number,
      buyer: row.buyer,
      ...(row.project === null ? {} : { project: row.project }),
      ...(revision.verdict === null ? {} : { verdict: revision.verdict as Verdict }),
      missing: JSON.parse(revision.missing) as Missing[],
      openedAt: new Date(row.opened_at),
      changedAt: new Date(revision.at),
      sheets: sheets.map(({ sheet }) => sheet),
      cut: Object.fromEntries(sheets.map(({ sheet, cut }) => [sheet.id, cut])),
      problems: problemsIn(revision),
      questions: await openQuestions(db, row.id),
      carried: JSON.parse(revision.carried) as Carried[],
      withdrawn: await withdrawnFrom(db, row.id),
      ...(row.released === null ? {} : { released: JSON.parse(row.released) as Released }),
      revision: revision.number,
      letters: changed,
      replies: await lettersOf(db, row.id, false),
      revisions: await revisionsOf(db, row.id),
      reminders: (
        await db
          .selectFrom("reminders")
          .innerJoin("letters", "letters.id", "reminders.letter")
          .select(["reminders.letter", "reminders.at", "reminders.what", "letters.dealt_with_at"])
          .where("order_id", "=", row.id)
          .orderBy("reminders.letter")
          .execute()
      ).map(({ letter, at, what, dealt_with_at }) => ({
        letter,
        at: new Date(at),
        what: what as ReminderRecord["what"],
        isDealtWith: dealt_with_at !== null,
      })),
    });
  }
  return orders;
}

/** The orders of which something waits for one of our own people, the oldest first. */
export async function readOrdersForPerson(db: Db, most?: number): Promise<OrderRecord[]> {
  const rows = await db
    .selectFrom("orders")
    .selectAll()
    .where("for_person", "=", 1)
    .where("verdict", "is not", null)
    .where((eb) => eb.or([eb("verdict", "!=", "pass"), eb("released", "is not", null)]))
    .orderBy("id")
    .$if(most !== undefined, (query) => query.limit(most ?? 0))
    .execute();
  return readOrders(db, rows);
}

function latestOf(db: Db, { latest }: Selectable<Tables["orders"]>): Promise<Revisions | undefined> {
  return db.selectFrom("revisions").selectAll().where("id", "=", latest).executeTakeFirst();
}

async function revisionsOf(db: Db, order: number): Promise<RevisionRecord[]> {
  const rows = await db
    .selectFrom("revisions")
    .leftJoin("letters", "letters.id", "revisions.letter")
    .selectAll("revisions")
    .select(["letters.kind", "letters.subject"])
    .where("order_id", "=", order)
    .orderBy("revisions.number")
    .execute();
  const ids = rows.map(({ id }) => id);
  const sheets = Map.groupBy(await sheetsIn(db, ids), ({ revision }) => revision);
  const questions = await db
    .selectFrom("questions")
    .select(["number", "opened_by", "closed_by"])
    .where("order_id", "=", order)
    .orderBy("number")
    .execute();
  const numbers = (is: (one: (typeof questions)[number]) => boolean): number[] => [
    ...new Set(questions.filter(is).map(({ number }) => number)),
  ];
  return rows.map(({ id, number, at, letter, verdict, kind, subject }) => ({
    number,
    at: new Date(at),
    cause: kind === "note" ? (subject ?? "") : "letter",
    ...(letter === null ? {} : { letter }),
    ...(verdict === null ? {} : { verdict: verdict as Verdict }),
    sheets: (sheets.get(id) ?? []).map(({ sheet }) => ({ id: sheet.id, file: sheet.file })),
    opened: numbers(({ opened_by }) => opened_by === id),
    closed: numbers(({ closed_by }) => closed_by === id),
  }));
}

/** The sheets that were withdrawn from an order, in the order in which that happened. */
async function withdrawnFrom(db: Db, order: number): Promise<OrderRecord["withdrawn"]> {
  const revisions = await db
    .selectFrom("revisions")
    .select(["letter", "withdrawn"])
    .where("order_id", "=", order)
    .where("withdrawn", "!=", "[]")
    .orderBy("id")
    .execute();
  const found = await Promise.all(
    revisions.map(async ({ letter, withdrawn }) => {
      const ids = JSON.parse(withdrawn) as FileId[];
      const sheets = await readSheets(db, ids);
      const moved = await copiesOf(db, ids, letter ?? 0);
      return sheets.map((sheet) => {
        const movedTo = moved.get(sheet.id);
        return { sheet, letter: letter ?? 0, ...(movedTo === undefined ? {} : { movedTo }) };
      });
    }),
  );
  return found.flat();
}

/** The copies that a note has put elsewhere of some sheets, by their ids. A copy has the bytes of its sheet. */
async function copiesOf(db: Db, ids: readonly FileId[], note: number): Promise<ReadonlyMap<FileId, Sheet>> {
  const rows = await db
    .selectFrom("attachments")
    .innerJoin("letters", "letters.id", "attachments.letter")
    .select(["attachments.id", "attachments.bytes_sha"])
    .where("attachments.letter", "=", note)
    .where("letters.kind", "=", "note")
    .execute();
  if (rows.length === 0) return new Map();
  const copies = await readSheets(
    db,
    rows.map(({ id }) => id),
  );
  const bySha = new Map(rows.map(({ id, bytes_sha }) => [bytes_sha, copies.find((one) => one.id === id)]));
  const originals = await db
    .selectFrom("attachments")
    .select(["id", "bytes_sha"])
    .where("id", "in", ids)
    .execute();
  return new Map(
    originals.flatMap(({ id, bytes_sha }) => {
      const copy = bySha.get(bytes_sha);
      return copy === undefined ? [] : [[id, copy] as const];
    }),
  );
}

export async function readSheets(db: Db, ids: readonly FileId[]): Promise<readonly Sheet[]> {
  if (ids.length === 0) return [];
  const rows = await db
    .selectFrom("sheets")
    .select(["content", "shape"])
    .where("id", "in", ids)
    .orderBy("letter")
    .orderBy("id")
    .execute();
  return rows.map(sheetFrom);
}

async function lettersOf(db: Db, order: number, changes: boolean): Promise<LetterRecord[]> {
  const rows = await db
    .selectFrom("letters")
    .innerJoin("order_letters", "order_letters.letter", "letters.id")
    .selectAll("letters")
    .where("order_letters.order_id", "=", order)
    .where((eb) => {
      const revision = eb.exists(
        eb
          .selectFrom("revisions")
          .select("revisions.id")
          .where("revisions.order_id", "=", order)
          .whereRef("revisions.letter", "=", "letters.id"),
      );
      return changes ? revision : eb.not(revision);
    })
    .orderBy("letters.id")
    .execute();
  return readLetters(db, rows);
}

/** The questions of an order that nobody has closed. */
export async function openQuestions(db: Db, order: number): Promise<OrderRecord["questions"]> {
  const rows = await db
    .selectFrom("questions")
    .selectAll()
    .where("order_id", "=", order)
    .where("closed_at", "is", null)
    .orderBy("id")
    .execute();
  return rows.map(({ key, number, problem, shape, station, position, opened_at }) => ({
    key,
    number,
    problem: problemFrom(JSON.parse(problem), shape),
    ...(station === null ? {} : { station }),
    ...(position === null ? {} : { position }),
    openedAt: new Date(opened_at),
  }));
}

/** The sheets of some revisions, in the order in which they came. */
export async function sheetsIn(
  db: Db,
  revisions: readonly number[],
): Promise<{ readonly revision: number; readonly sheet: Sheet; readonly cut: readonly CutLegend[] }[]> {
  if (revisions.length === 0) return [];
  const rows = await db
    .selectFrom("revision_sheets")
    .innerJoin("sheets", "sheets.id", "revision_sheets.sheet")
    .select(["revision_sheets.revision", "content", "shape", "cut"])
    .where("revision_sheets.revision", "in", revisions)
    .orderBy("letter")
    .orderBy("id")
    .execute();
  return rows.map(({ revision, cut, ...stored }) => ({
    revision,
    sheet: sheetFrom(stored),
    cut: JSON.parse(cut) as CutLegend[],
  }));
}

/** The orders whose last revision before a moment was no pass, as they stood then. */
export async function readOpenOrders(db: Db, moment: Date): Promise<OpenOrder[]> {
  const rows = await db
    .selectFrom("revisions")
    .innerJoin("orders", "orders.id", "revisions.order_id")
    .select(["orders.id", "orders.number", "buyer", "project", "revisions.verdict", "missing"])
    .where("orders.key", "!=", "")
    .where((eb) =>
      eb(
        "revisions.id",
        "in",
        eb
          .selectFrom("revisions as earlier")
          .select((e) => e.fn.max("earlier.id").as("id"))
          .where("earlier.at", "<", moment.toISOString())
          .groupBy("earlier.order_id"),
      ),
    )
    .orderBy("orders.id")
    .execute();
  return rows
    .filter(({ verdict }) => verdict !== null && verdict !== "pass")
    .map(({ number, buyer, project, verdict, missing }) => ({
      number,
      buyer,
      ...(project === null ? {} : { project }),
      verdict: verdict as Verdict,
      missing: JSON.parse(missing) as Missing[],
    }));
}

function byLetter<T extends { letter: number }>(all: readonly T[]): Map<number, T[]> {
  return Map.groupBy(all, ({ letter }) => letter);
}

function problemsIn({ problems, shape }: Revisions): Problem[] {
  return (JSON.parse(problems) as unknown[]).map((problem) => problemFrom(problem, shape));
}

function problemOf(row: Selectable<Tables["problems"]>): Problem {
  const { check, wording, severity, verdict, facts, spots, shape } = row;
  const parsed = { facts: JSON.parse(facts) as unknown, spots: JSON.parse(spots) as unknown };
  return problemFrom({ check, wording, severity, verdict, ...parsed }, shape);
}
