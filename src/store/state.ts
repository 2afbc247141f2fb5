import type { Kysely, Selectable } from "kysely";
import { questionAnswered } from "../checks/letter/question-answered.ts";
import { type BuyerState, type GoneBefore, orderKey } from "../judging/state.ts";
import { letterOf } from "../orders/ids.ts";
import type { Carried } from "../trade/carried.ts";
import type { Came } from "../trade/letter.ts";
import type { Problem } from "../trade/problem.ts";
import type { KnownQuestion } from "../trade/question.ts";
import type { Released } from "../trade/released.ts";
import type { FileId } from "../trade/sheet.ts";
import { withdrawnIn } from "./ended.ts";
import { readSheets, sheetsIn } from "./read.ts";
import { problemFrom } from "./shapes.ts";
import type { Tables } from "./tables.ts";

/** How many of a buyer's latest orders are compared with a new letter. */
const latestOrders = 30;

/** What judging a letter of a buyer depends on, as it stands now. */
export async function readState(
  db: Kysely<Tables>,
  buyer: string,
  numbers: readonly string[],
): Promise<BuyerState> {
  // The version is read first. A change while the rest is read then makes it an old one.
  const version = await db
    .selectFrom("buyers")
    .select("version")
    .where("buyer", "=", buyer)
    .executeTakeFirst();
  if (version === undefined) return { buyer, version: 0, orders: [], arrivals: new Map() };
  const latest = await db
    .selectFrom("orders")
    .select("id")
    .where("buyer", "=", buyer)
    .orderBy("latest", "desc")
    .limit(latestOrders)
    .execute();
  const orders = await db
    .selectFrom("orders")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select([
      "orders.number",
      "orders.id as order",
      "revisions.id",
      "revisions.carried",
      "revisions.number as revision",
      "orders.released",
    ])
    .where("orders.buyer", "=", buyer)
    .where((eb) =>
      eb.or([
        eb("orders.id", "in", [-1, ...latest.map(({ id }) => id)]),
        eb("orders.key", "in", ["", ...numbers.map(orderKey)]),
      ]),
    )
    .orderBy("orders.id")
    .execute();
  const sheets = Map.groupBy(
    await sheetsIn(
      db,
      orders.map(({ id }) => id),
    ),
    ({ revision }) => revision,
  );
  const questions = await readQuestions(
    db,
    orders.map(({ order }) => order),
  );
  const denied = [...questions.values()].flat().flatMap(({ denied: no = [] }) => no);
  const withdrawn = await readWithdrawn(
    db,
    orders.map(({ order }) => order),
  );
  return {
    buyer,
    version: version.version,
    orders: orders.map(({ id, order, number, carried, revision, released }) => ({
      number,
      sheets: (sheets.get(id) ?? []).map(({ sheet }) => sheet),
      carried: JSON.parse(carried) as Carried[],
      withdrawn: withdrawn.get(order) ?? [],
      questions: questions.get(order) ?? [],
      revision,
      ...(released === null ? {} : { released: JSON.parse(released) as Released }),
    })),
    arrivals: await readArrivals(db, [
      ...[...sheets.values()].flat().map(({ sheet }) => letterOf(sheet.id)),
      ...[...withdrawn.values()].flat().map(({ letter }) => `${letter}`),
      ...denied.map(({ letter }) => `${letter}`),
    ]),
  };
}

/** The sheets that letters have withdrawn from some orders, or notes have put elsewhere, in the order in which that happened. */
async function readWithdrawn(
  db: Kysely<Tables>,
  orders: readonly number[],
): Promise<Map<number, GoneBefore[]>> {
  const rows =
    orders.length === 0
      ? []
      : await db
          .selectFrom("revisions")
          .innerJoin("letters", "letters.id", "revisions.letter")
          .select(["revisions.order_id", "letters.id as letter", "letters.kind", "revisions.withdrawn"])
          .where("revisions.order_id", "in", orders)
          .where("revisions.withdrawn", "!=", "[]")
          .orderBy("revisions.id")
          .execute();
  const gone = rows.flatMap(({ order_id, letter, kind, withdrawn }) =>
    (JSON.parse(withdrawn) as FileId[]).map((id) => ({ order_id, letter, kind, id })),
  );
  const sheets = new Map(
    (
      await readSheets(
        db,
        gone.map(({ id }) => id),
      )
    ).map((sheet) => [sheet.id, sheet]),
  );
  const found = Map.groupBy(gone, ({ order_id }) => order_id);
  return new Map(
    [...found].map(([order, some]) => [
      order,
      some.flatMap(({ letter, kind, id }): GoneBefore[] => {
        const sheet = sheets.get(id);
        if (sheet === undefined) return [];
        return [{ sheet, letter, ...(kind === "note" ? { isMoved: true } : {}) }];
      }),
    ]),
  );
}

/**
 * All questions of some orders, by the order. A question that was asked again stands as it stood last. A settled one
 * stays settled unless it was asked anew.
 */
async function readQuestions(
  db: Kysely<Tables>,
  orders: readonly number[],
): Promise<Map<number, KnownQuestion[]>> {
  const rows =
    orders.length === 0
      ? []
      : await db
          .selectFrom("questions")
          .innerJoin("revisions", "revisions.id", "questions.opened_by")
          .leftJoin("revisions as closing", "closing.id", "questions.closed_by")
          .selectAll("questions")
          .select(["revisions.letter", "closing.withdrawn"])
          .where("questions.order_id", "in", orders)
          .orderBy("questions.id")
          .execute();
  const denials = await readDenials(db, orders);
  const byOrder = new Map<number, Map<string, KnownQuestion>>();
  for (const { order_id, key, number, shape, letter, ...row } of rows) {
    const those = byOrder.get(order_id) ?? new Map<string, KnownQuestion>();
    const before = those.get(key);
    const problem = problemFrom(JSON.parse(row.problem), shape);
    const state = stateOf(row, problem);
    const isSettled = before?.state === "settled" || before?.state === "decided";
    const asked = letter ?? 0;
    const denied = (denials.get(order_id) ?? [])
      .filter(({ numbers, letter: later }) => later > asked && numbers.includes(String(number)))
      .map(({ letter: no, by }) => ({ letter: no, ...(by === undefined ? {} : { by }) }));
    if (!isSettled || state === "open")
      those.set(key, {
        key,
        number,
        problem,
        letter: before?.letter ?? asked,
        ...(denied.length === 0 ? {} : { denied }),
        state,
      });
    byOrder.set(order_id, those);
  }
  return new Map([...byOrder].map(([order, those]) => [order, [...those.values()]]));
}

/** Letters and notes about some orders that answered questions with NO, and the numbers of those, by the order. */
async function readDenials(
  db: Kysely<Tables>,
  orders: readonly number[],
): Promise<
  Map<number, { readonly letter: number; readonly by?: string; readonly numbers: readonly string[] }[]>
> {
  const rows =
    orders.length === 0
      ? []
      : await db
          .selectFrom("order_letters")
          .innerJoin("problems", "problems.letter", "order_letters.letter")
          .innerJoin("letters", "letters.id", "order_letters.letter")
          .select(["order_letters.order_id", "letters.id", "letters.kind", "letters.sender"])
          .select(["letters.subject", "problems.facts"])
          .where("order_letters.order_id", "in", orders)
          .where("problems.check", "=", questionAnswered.id)
          .where("problems.wording", "in", ["no", "mended"])
          .orderBy("letters.id")
          .execute();
  const denials = rows.map(({ order_id, id, kind, sender, subject, facts }) => {
    // The subject of a note is who wrote it, and why.
    const by = kind === "note" ? subject?.split(": ", 1)[0] : sender;
    return {
      order_id,
      letter: id,
      ...(by == null ? {} : { by }),
      numbers: (JSON.parse(facts) as { readonly numbers?: readonly string[] }).numbers ?? [],
    };
  });
  return Map.groupBy(denials, ({ order_id }) => order_id);
}

function stateOf(
  row: Pick<Selectable<Tables["questions"]>, "settled_at" | "decided_by" | "closed_at"> & {
    readonly withdrawn: string | null;
  },
  { spots }: Problem,
): KnownQuestion["state"] {
  if (row.settled_at !== null) return row.decided_by === null ? "settled" : "decided";
  if (row.closed_at === null) return "open";
  const gone = withdrawnIn(row);
  return spots.length > 0 && spots.every(({ file }) => gone.has(file)) ? "withdrawn" : "gone";
}

async function readArrivals(db: Kysely<Tables>, letters: readonly string[]): Promise<Map<string, Came>> {
  const rows =
    letters.length === 0
      ? []
      : await db
          .selectFrom("letters")
          .select(["id", "received_at", "dated_at"])
          .where("id", "in", [...new Set(letters)].map(Number))
          .execute();
  return new Map(
    rows.map(({ id, received_at, dated_at }) => [
      String(id),
      {
        receivedAt: new Date(received_at),
        ...(dated_at === null ? {} : { dated: new Date(dated_at) }),
      },
    ]),
  );
}
