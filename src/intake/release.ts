import { dateIn } from "../calendar/dates.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { cutOf } from "../checks/fitted.ts";
import { wordsOf } from "../checks/run.ts";
import { makeReport, type OrderReport } from "../judging/report.ts";
import { orderKey } from "../judging/state.ts";
import { withKept } from "../lettering/with-kept.ts";
import { contentKey } from "../orders/keys.ts";
import { isAsReleased, pieceKey } from "../orders/piece.ts";
import type { Clock } from "../ports/clock.ts";
import type { Store } from "../ports/store.ts";
import {
  type PackageFile,
  type Packed,
  packageOf,
  type Release,
  sheetsWithOriginals,
} from "../release/release.ts";
import type { Managing } from "../trade/manager.ts";
import type { Order } from "../trade/order.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Released } from "../trade/released.ts";
import { takeNote } from "./check-note.ts";
import type { Desk as IntakeDesk } from "./desk.ts";
import { heldBack } from "./held-back.ts";

/** Who releases an order, when, and what of it was released before. */
interface Releasing {
  /** Whose order it is, where several buyers have its number. */
  readonly buyer?: string | undefined;
  readonly by: string;
  readonly at?: Date;
  /** The day where the desk stands. */
  readonly on?: string;
  readonly before?: Released["before"] | undefined;
  /** The revision that is released, if it is not the last. */
  readonly revision?: number;
}

type Ordered = Pick<OrderRecord, "buyer" | "number">;

/** What a release needs of a desk. */
interface Desk {
  readonly store: Pick<Store, "orders" | "buyers">;
  readonly catalogue: Catalogue;
  readonly clock: Clock;
  readonly rules: { readonly managing: readonly Managing[] };
}

/**
 * The package of an order of the record, or why it may not be cut. The record must say that it has passed; judged once
 * more it must still pass, and be cut as its buyer was shown. Nothing is written.
 */
export async function prepareRelease(
  number: string,
  { buyer, by, at, on, before, revision }: Releasing,
  { store, catalogue, clock, rules }: Desk,
): Promise<Packed> {
  const record = await recordOf(store, number, buyer);
  if ("ok" in record) return record;
  if (record.verdict !== "pass") return refused(...notPassed(record));
  const { order, why } = await judgedAgain(record, { store, catalogue, rules });
  if (order === undefined || why.length > 0) return refused(...why);
  return packageOf({
    order,
    catalogue,
    revision: revision ?? record.revision,
    ...(await voidedBy(record, before, store)),
    confirmations: await store.orders.confirmed(record.buyer, record.number),
    originals: await store.orders.originals(sheetsWithOriginals(order).map(({ id }) => id)),
    by,
    at: at ?? clock.now(),
    ...(on === undefined ? {} : { on }),
  });
}

/** What an earlier release handed over and this one does not. */
async function voidedBy(
  { sheets }: OrderRecord,
  before: Releasing["before"],
  store: Desk["store"],
): Promise<Pick<Release, "voids">> {
  if (before === undefined) return {};
  const is = new Set(sheets.map(pieceKey));
  const gone = before.pieces.filter(({ key }) => !is.has(key));
  const had = new Set(before.pieces.map(({ key }) => key));
  const old = new Map(
    (await store.orders.sheets(gone.map(({ sheet }) => sheet))).map((one) => [one.id, one]),
  );
  return {
    voids: {
      revision: before.revision,
      on: before.on,
      pieces: gone.flatMap(({ sheet: id, engraved }) => {
        const sheet = old.get(id);
        return sheet === undefined ? [] : [{ sheet, engraved }];
      }),
      anew: sheets.filter((sheet) => !had.has(pieceKey(sheet))),
    },
  };
}

/** Where a package lies, or why the order is not released. */
export type ReleasedOrder = { readonly ok: true; readonly path: string } | Refusal;

/**
 * Releases an order: its package is tried, the record has it, then it is written by `put`, which gives the place. What
 * was released and not written, since the program ended in between, is written now. What `put` throws is thrown on.
 */
export async function releaseOrder(
  desk: IntakeDesk,
  number: string,
  name: string,
  put: Put,
  whose?: string,
): Promise<ReleasedOrder> {
  const order = await recordOf(desk.store, number, whose);
  if ("ok" in order) return order;
  const { buyer, released: last } = order;
  const isReleased = last !== undefined && isAsReleased(order.sheets, last);
  if (isReleased) return writeReleased(desk, order, put);
  const packed = await prepareRelease(number, { buyer, by: name, before: last }, desk);
  if (!packed.ok) return packed;
  const against = await heldBack(order, desk);
  if (against.length > 0) return refused(...against);
  // Its buyer is told at once. Nothing is told of a package that nobody can write.
  await put.try?.(packed.files);
  const taken = await takeNote(desk, {
    id: `release ${buyer} ${orderKey(number)} ${order.changedAt.toISOString()}`,
    buyer,
    order: order.number,
    by: name,
    why: "released",
    acts: [{ kind: "release", on: dateIn(desk.clock.now(), desk.timeZone) }],
  });
  if (taken.kind === "wrong") return refused(taken.why);
  const letter = await desk.store.letters.read(taken.letter);
  if (taken.kind === "waits" || letter.state === "held")
    return refused(letter.why ?? "letters about it are being judged; try again in a moment");
  const now = await recordOf(desk.store, number, buyer);
  const released = "ok" in now ? undefined : now.released;
  const at = new Date(released?.at ?? desk.clock.now());
  const on = released?.on ?? dateIn(at, desk.timeZone);
  const made = await prepareRelease(number, { buyer, by: name, at, on, before: last }, desk);
  return written(desk, order, made, put);
}

/** The order that is meant, or why none is. In older records several buyers can have one number. */
async function recordOf(
  { orders }: Desk["store"],
  number: string,
  whose: string | undefined,
): Promise<OrderRecord | Refusal> {
  const own = (await orders.named(number)).filter(({ buyer }) => whose === undefined || buyer === whose);
  const [order, ...others] = own;
  if (order === undefined) return refused("no such order is known");
  if (others.length === 0) return order;
  return refused(`several buyers have it: say whose is meant, ${own.map(({ buyer }) => buyer).join(" or ")}`);
}

/** Writes a package of this name, and gives the place. */
export interface Put {
  (name: string, files: readonly PackageFile[]): Promise<string>;
  /** Writes a package, and leaves nothing of it. */
  readonly try?: (files: readonly PackageFile[]) => Promise<void>;
}

async function written(
  { store }: IntakeDesk,
  { buyer, number }: Ordered,
  packed: Packed,
  put: Put,
): Promise<ReleasedOrder> {
  if (!packed.ok) return packed;
  const path = await put(packed.name, packed.files);
  await store.orders.packed(buyer, number);
  return { ok: true, path };
}

/** Whoever releases an order writes its package at once. After so many milliseconds he has not. */
const longestWriting = 60_000;

/** Released orders whose packages nobody has written, and that have not changed since. */
export async function packagesDue({ store, clock }: IntakeDesk): Promise<readonly OrderRecord[]> {
  const due: OrderRecord[] = [];
  for (const { buyer, number } of await store.orders.toPack(
    new Date(clock.now().getTime() - longestWriting),
  )) {
    const order = await recordOf(store, number, buyer);
    if ("ok" in order || order.released === undefined || order.verdict !== "pass") continue;
    if (isAsReleased(order.sheets, order.released)) due.push(order);
  }
  return due;
}

/** Writes the package of an order as it was released. What `put` throws is thrown on. */
export async function writeReleased(
  desk: IntakeDesk,
  { buyer, number, released }: OrderRecord,
  put: Put,
): Promise<ReleasedOrder> {
  if (released === undefined) return refused("it was not released");
  const packed = await prepareRelease(number, { ...released, buyer, at: new Date(released.at) }, desk);
  return written(desk, { buyer, number }, packed, put);
}

/**
 * Orders that have passed and that nobody has objected to for long enough, to be released by themselves. What nobody
 * has read yet may be an objection.
 */
export async function releasesDue(desk: IntakeDesk): Promise<readonly Ordered[]> {
  const { store, clock, log } = desk;
  const { releasing } = desk.rules;
  if (releasing === undefined) return [];
  const until = new Date(clock.now().getTime() - releasing.afterHours * 3_600_000);
  const orders = await store.orders.passed(until);
  const due: Ordered[] = [];
  for (const order of orders) {
    const { buyer } = order;
    if (!releasing.buyers.some((one) => one === buyer || buyer.endsWith(`@${one}`))) continue;
    const why = await heldBack(order, desk, true);
    if (why.length === 0) due.push(order);
    else log.info({ why }, "an order is not released by itself yet");
  }
  return due;
}

interface Refusal {
  readonly ok: false;
  readonly why: readonly string[];
}

function refused(...why: readonly string[]): Refusal {
  return { ok: false, why };
}

function notPassed({ verdict, problems, number }: OrderRecord): string[] {
  if (verdict === undefined) return ["nothing is left of it"];
  return [
    `it has not passed: ${verdict}`,
    ...new Set(problems.map((problem) => `${problem.verdict}: ${wordsOf(problem).says}`)),
    `“burin order ${number}” shows what stands in its way`,
  ];
}

/** An order as it is judged now, and what speaks against cutting it. */
async function judgedAgain(
  { buyer, number, cut, sheets }: OrderRecord,
  { store, catalogue, rules }: Pick<Desk, "store" | "catalogue" | "rules">,
): Promise<{ readonly order?: Order; readonly why: readonly string[] }> {
  const known = withKept(catalogue, await store.buyers.keptWords(buyer));
  const state = await store.buyers.stateOf(buyer, [number]);
  const report = makeReport(
    { files: [], sheets: [], about: [number], managing: rules.managing },
    known,
    state,
  );
  const judged = report.orders.find(({ order }) => orderKey(order.number) === orderKey(number));
  if (judged === undefined) return { why: ["nothing is left of it"] };
  // What an older record has not kept cannot be compared.
  const changed = sheets.filter((sheet) => {
    const { [sheet.id]: shown = [] } = cut;
    return shown.length > 0 && contentKey(shown) !== contentKey(cutOf(sheet, catalogue));
  });
  return {
    order: judged.order,
    why: [
      ...againstPass(judged),
      ...changed.map(
        ({ file }) => `${file} would be cut otherwise than when it was checked: the catalogue has changed`,
      ),
    ],
  };
}

function againstPass({ verdict, problems }: OrderReport): string[] {
  if (verdict === "pass") return [];
  const told = problems
    .filter((problem) => problem.verdict !== "pass")
    .map((problem) => wordsOf(problem).says);
  return [`judged once more it does not pass: ${verdict}`, ...new Set(told)];
}
