import type { Kysely } from "kysely";
import { isAsReleased } from "../orders/piece.ts";
import type { ErasePlan, EraseScope, InTheWay } from "../ports/store.ts";
import type { LetterState } from "../trade/record.ts";
import type { Released } from "../trade/released.ts";
import { among } from "./among.ts";
import { openStates } from "./claims.ts";
import { waitingAmong } from "./for-person.ts";
import { sheetsIn } from "./read.ts";
import type { Tables } from "./tables.ts";

type Db = Kysely<Tables>;

interface BoundLetter {
  readonly id: number;
  readonly received_at: string;
  readonly sender: string | null;
  readonly subject: string | null;
}

interface BoundOrder {
  readonly id: number;
  readonly buyer: string;
  readonly key: string;
  readonly number: string;
}

/** Orders and letters that are erased together, and why others are not. */
export interface Bound {
  readonly orders: readonly BoundOrder[];
  readonly letters: readonly BoundLetter[];
  readonly inTheWay: readonly InTheWay[];
  readonly elsewhere: ErasePlan["elsewhere"];
}

export function planOf({ address }: EraseScope, { orders, letters, inTheWay, elsewhere }: Bound): ErasePlan {
  return {
    orders: orders.map(({ number }) => number),
    letters: letters.map(({ id, received_at, sender, subject }) => ({
      letter: id,
      receivedAt: new Date(received_at),
      ...(sender === null ? {} : { from: sender }),
      subject: subject ?? "",
    })),
    inTheWay,
    elsewhere: address === "" ? [] : elsewhere,
  };
}

/**
 * Finds what is erased. A letter goes with all orders that it is about, and an order with all letters about it, so that
 * none of them is left by halves.
 */
export async function boundTo(db: Db, scope: EraseScope, now: Date): Promise<Bound> {
  const orders = await ordersOf(db, scope.address);
  const links = await linksOf(db, orders);
  const loose = await looseLetters(db, scope.address, orders);
  const letters = await withOriginals(db, [...new Set([...links.map(({ letter }) => letter), ...loose])]);
  const ids = idsOf(letters);
  const facts = {
    linked: new Set(links.map(({ letter }) => letter)),
    others: new Set(await aboutOthers(db, ids, orders)),
    waiting: await waitingAmong(db, ids, now),
  };
  const ofOrders = orders.map((one) => ({ ...one, why: againstOrder(one, scope) }));
  const ofLetters = letters.map((one) => ({
    ...one,
    at: one.received_at,
    why: againstLetter(one, scope, facts),
  }));
  const cutoff = scope.before?.toISOString();
  const isNew = ({ at }: { readonly at: string }): boolean => cutoff !== undefined && at >= cutoff;
  // What is not due yet is in nobody's way.
  const inTheWay = [
    ...ofOrders.map((one) => ({ ...one, what: `order ${one.number || "without a number"}` })),
    ...ofLetters.map((one) => ({ ...one, what: `letter ${one.id}` })),
  ].flatMap((one) => (one.why === undefined || isNew(one) ? [] : [{ what: one.what, why: one.why }]));
  const elsewhere = await elsewhereOf(db, scope.address, ids);
  // What is asked for goes whole or not at all.
  if (cutoff === undefined) return { orders, letters, inTheWay, elsewhere };
  const stays = (one: { readonly why: string | undefined; readonly at: string }): boolean =>
    one.why !== undefined || isNew(one);
  const staying = withAllThatHangs(links, idsOf(ofOrders.filter(stays)), idsOf(ofLetters.filter(stays)));
  return {
    orders: orders.filter(({ id }) => !staying.orders.has(id)),
    letters: letters.filter(({ id }) => !staying.letters.has(id)),
    inTheWay,
    elsewhere,
  };
}

/** Orders and letters that stay, and all that hangs on them. */
function withAllThatHangs(
  links: readonly { readonly order: number; readonly letter: number }[],
  orderIds: readonly number[],
  letterIds: readonly number[],
): { readonly orders: ReadonlySet<number>; readonly letters: ReadonlySet<number> } {
  const [orders, letters] = [new Set(orderIds), new Set(letterIds)];
  for (let size = -1; size !== orders.size + letters.size; ) {
    size = orders.size + letters.size;
    for (const { order, letter } of links) {
      if (letters.has(letter)) orders.add(order);
      if (orders.has(order)) letters.add(letter);
    }
  }
  return { orders, letters };
}

type FoundOrder = Awaited<ReturnType<typeof ordersOf>>[number];

/** Why an order may not be erased. */
function againstOrder(
  { verdict, engraving }: FoundOrder,
  { givesUp, before }: EraseScope,
): string | undefined {
  if (engraving === "released")
    return "it is released to engraving and not engraved whole; once it is, say so by “burin cut”";
  if (givesUp === true || before !== undefined || verdict === null) return undefined;
  if (engraving === "closed" && verdict === "pass") return undefined;
  return `it is not done with (${verdict}): have it cancelled, or give it up`;
}

/** Why a letter may not be erased. */
function againstLetter(
  { id, state }: { readonly id: number; readonly state: LetterState },
  { givesUp }: EraseScope,
  { linked, others, waiting }: Readonly<Record<"linked" | "others" | "waiting", ReadonlySet<number>>>,
): string | undefined {
  if (openStates.some((one) => one === state)) return "it is still to be judged or answered";
  if (others.has(id)) return "it is about an order of somebody else, too";
  // Held letters are counted until somebody has dealt with them.
  const goesWithOrder = givesUp === true && state !== "held" && linked.has(id);
  return waiting.has(id) && !goesWithOrder ? "it waits for a person: settle it, or put it aside" : undefined;
}

/** The orders of a buyer, and how far engraving has come with each. */
async function ordersOf(db: Db, address: string) {
  const rows = await db
    .selectFrom("orders")
    .leftJoin("revisions", "revisions.id", "orders.latest")
    .select(["orders.id", "orders.buyer", "orders.key", "orders.number", "orders.verdict"])
    .select(["orders.latest", "orders.released"])
    .select((eb) => eb.fn.coalesce("revisions.at", "orders.opened_at").as("at"))
    .where("orders.buyer", "=", address)
    .where("orders.erased_at", "is", null)
    .orderBy("orders.id")
    .execute();
  const orders = [];
  for (const row of rows) orders.push({ ...row, engraving: await engravingOf(db, row) });
  return orders;
}

/** "released": not all that was released is engraved; "closed": it is, and nothing has changed since. */
async function engravingOf(
  db: Db,
  { released, latest }: { readonly released: string | null; readonly latest: number | null },
): Promise<"released" | "closed" | "none"> {
  if (released === null) return "none";
  const is = JSON.parse(released) as Released;
  if (is.pieces.some(({ engraved }) => !engraved)) return "released";
  const standing = latest === null ? [] : (await sheetsIn(db, [latest])).map(({ sheet }) => sheet);
  return isAsReleased(standing, is) ? "closed" : "none";
}

/** Which letters and notes are about which of some orders. */
async function linksOf(
  db: Db,
  orders: readonly { readonly id: number }[],
): Promise<{ readonly order: number; readonly letter: number }[]> {
  const of = among(idsOf(orders));
  const about = db.selectFrom("order_letters").select(["order_id", "letter"]).where("order_id", "in", of);
  const changed = db.selectFrom("revisions").select(["order_id", "letter"]).where("order_id", "in", of);
  return [...(await about.execute()), ...(await changed.execute())].flatMap(({ order_id, letter }) =>
    letter === null ? [] : { order: order_id, letter },
  );
}

/**
 * Letters of a person that are about no order; and the weeks that managers were told of since he had one, which may name
 * him.
 */
async function looseLetters(
  db: Db,
  address: string,
  orders: readonly { readonly at: string; readonly id: number }[],
): Promise<number[]> {
  const nobody = db
    .selectFrom("letters")
    .select("id")
    .where((eb) => eb.or([eb("buyer", "is", null), eb("buyer", "=", "")]));
  if (address === "")
    return idsOf(await nobody.where("sender", "is", null).where("bytes_sha", "!=", "").execute());
  const own = await db.selectFrom("letters").select("id").where("buyer", "=", address).execute();
  const sent = await nobody.where("sender", "=", address).execute();
  const first = await db
    .selectFrom("orders")
    .select((eb) => eb.fn.min("opened_at").as("at"))
    .where("id", "in", among(idsOf(orders)))
    .executeTakeFirst();
  const weeks =
    first?.at === undefined || first.at === null
      ? []
      : await db
          .selectFrom("letters")
          .select("id")
          .where("kind", "=", "note")
          .where("buyer", "=", "")
          .where("received_at", ">=", first.at)
          .where("bytes_sha", "!=", "")
          .execute();
  return [...idsOf(own), ...idsOf(sent), ...idsOf(weeks)];
}

function idsOf(rows: readonly { readonly id: number }[]): number[] {
  return rows.map(({ id }) => id);
}

/** Letters by their ids, and the held ones of which some are copies that were let in. */
async function withOriginals(db: Db, ids: readonly number[]) {
  const read = (some: readonly number[]) =>
    db
      .selectFrom("letters")
      .select(["id", "key", "received_at", "state", "sender", "subject"])
      .where("id", "in", among(some))
      .where("bytes_sha", "!=", "")
      .orderBy("id")
      .execute();
  const letters = await read(ids);
  const known = new Set(ids);
  const originals = letters
    .flatMap(({ key }) => /^let in (\d+)$/.exec(key)?.[1] ?? [])
    .map(Number)
    .filter((id) => !known.has(id));
  const all = [...letters, ...(await read(originals))];
  return all.map((one) => ({ ...one, state: one.state as LetterState })).toSorted((a, b) => a.id - b.id);
}

/** Which of some letters are about orders other than these. */
async function aboutOthers(
  db: Db,
  letters: readonly number[],
  orders: readonly { readonly id: number }[],
): Promise<number[]> {
  const rows = await db
    .selectFrom("order_letters")
    .select(["letter", "order_id"])
    .where("letter", "in", among(letters))
    .execute();
  const own = new Set(idsOf(orders));
  return rows.flatMap(({ letter, order_id }) => (own.has(order_id) ? [] : letter));
}

/** Letters that a person wrote about orders of others. */
async function elsewhereOf(db: Db, address: string, own: readonly number[]): Promise<ErasePlan["elsewhere"]> {
  const rows = await db
    .selectFrom("letters")
    .select(["id", "buyer"])
    .where("sender", "=", address)
    .where("bytes_sha", "!=", "")
    .orderBy("id")
    .execute();
  const owned = new Set(own);
  return rows.flatMap(({ id, buyer }) => (owned.has(id) ? [] : { letter: id, buyer: buyer ?? "" }));
}

/** Whoever has something that is older than a moment; "" for letters of nobody who is known. */
export async function peopleBefore(db: Db, before: Date): Promise<string[]> {
  const moment = before.toISOString();
  const orders = await db
    .selectFrom("orders")
    .innerJoin("revisions", "revisions.id", "orders.latest")
    .select("orders.buyer")
    .distinct()
    .where("revisions.at", "<", moment)
    .execute();
  const letters = await db
    .selectFrom("letters")
    .select(["buyer", "sender"])
    .distinct()
    .where("received_at", "<", moment)
    .where("bytes_sha", "!=", "")
    .execute();
  return [
    ...new Set([
      ...orders.map(({ buyer }) => buyer),
      ...letters.map(({ buyer, sender }) => buyer || sender || ""),
    ]),
  ].toSorted();
}
