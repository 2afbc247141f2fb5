import { randomUUID } from "node:crypto";
import { orderKey } from "../judging/state.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { By } from "../ports/store.ts";
import type { Act, Note } from "../trade/note.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { FileId } from "../trade/sheet.ts";
import { takeNote } from "./check-note.ts";
import type { Desk } from "./desk.ts";
import { laneOf } from "./take.ts";

/** What came of an act of one of our own people, in a sentence for him. */
export interface Said {
  readonly done: boolean;
  readonly words: string;
}

type Ordered = Pick<OrderRecord, "buyer" | "number">;

/** Acts on points of an order. The order is judged again at once, and the worker sends the answer. */
export function settleOrder(
  desk: Desk,
  { buyer, number }: Ordered,
  acts: readonly Act[],
  by: By,
): Promise<Said> {
  return noted(desk, { id: randomUUID(), buyer, order: number, by: by.name, why: by.why, acts });
}

/** Where a sheet belongs. */
export interface Belongs {
  readonly mark?: string;
  readonly position?: number;
  readonly order?: string;
}

/** Puts a sheet that stands at a station, at a position, or into another order of its buyer. */
export async function settleSheet(desk: Desk, sheet: FileId, where: Belongs, by: By): Promise<Said> {
  const holding = await desk.store.orders.holding(sheet);
  if (holding === undefined)
    return { done: false, words: `No sheet ${sheet} stands in any order: see burin order NUMBER.` };
  const { buyer, number } = holding;
  const said = await settleOrder(desk, { buyer, number }, [{ kind: "place", sheet, ...where }], by);
  if (!said.done || where.order === undefined || orderKey(where.order) === orderKey(number)) return said;
  const target = (await desk.store.orders.named(where.order)).find((one) => one.buyer === buyer);
  return {
    done: true,
    words: `${said.words}\nOrder ${target?.number ?? where.order}: ${target?.verdict ?? ""}.`,
  };
}

/** Lets in a letter that was held: a copy of it is judged as a letter of this sender, and answered. */
export async function letIn(desk: Desk, letter: number, by: By, as?: string): Promise<Said> {
  const { store, clock, rules } = desk;
  const record = await letterOf(desk, letter);
  if (record === undefined) return noLetter;
  if (record.isErased === true) return { done: false, words: `Letter ${letter} is erased.` };
  const sender = as ?? record.from;
  if (record.why === undefined && record.state !== "held")
    return { done: false, words: `Letter ${letter} was taken; there is nothing to let in.` };
  if (sender === undefined)
    return { done: false, words: "The letter has no single sender: say whose it is, with an address." };
  const lane = laneOf(sender, rules.sharedDomains);
  const copy = await store.letters.letIn(
    letter,
    { sender, ...(lane === undefined ? {} : { lane }) },
    by,
    clock.now(),
  );
  return copy === undefined
    ? { done: false, words: `Letter ${letter} was let in before.` }
    : { done: true, words: `Let in as letter ${copy} of ${sender}. The worker judges and answers it.` };
}

/** Says that all that a letter said is dealt with. A held one is never answered then. */
export async function putAside(desk: Desk, letter: number, by: By): Promise<Said> {
  const { store, clock } = desk;
  const record = await letterOf(desk, letter);
  if (record === undefined) return noLetter;
  // An order that still carries what the letter said is judged again without it.
  const orders = (await Promise.all(record.orders.map((number) => store.orders.named(number)))).flat();
  const open = orders.filter(({ carried }) => carried.some((one) => one.letter === String(letter)));
  const said: Said[] = [];
  for (const order of open) said.push(await settleOrder(desk, order, [{ kind: "read", letter }], by));
  if (open.length > 0)
    return { done: said.every(({ done }) => done), words: said.map(({ words }) => words).join("\n") };
  await store.letters.putAside(letter, by, clock.now());
  return { done: true, words: `Letter ${letter} is dealt with.` };
}

/** Records what of a released order is engraved; all of it, if no station is named. */
export async function recordCut(
  desk: Desk,
  order: Ordered,
  stations: readonly string[],
  name: string,
): Promise<Said> {
  const note = { id: randomUUID(), buyer: order.buyer, order: order.number, by: name, why: "engraved" };
  const taken = await takeNote(desk, { ...note, acts: [{ kind: "cut", stations }] });
  if (taken.kind === "wrong") return { done: false, words: `Nothing is recorded: ${taken.why}.` };
  if (taken.kind === "waits")
    return {
      done: true,
      words: `Kept as letter ${taken.letter}. It is recorded once the letters before it are judged.`,
    };
  const { state, why = "" } = await desk.store.letters.read(taken.letter);
  if (state === "held") return { done: false, words: `Nothing is recorded: ${why}.` };
  const [now] = (await desk.store.orders.named(order.number)).filter((one) => one.buyer === order.buyer);
  const { released, sheets = [] } = now ?? {};
  const pieces = released?.pieces ?? [];
  const engraved = pieces.filter((one) => one.engraved);
  const words =
    engraved.length === pieces.length
      ? `Order ${order.number} is engraved: ${pieces.length} of ${pieces.length} pieces.`
      : `Order ${order.number}: ${engraved.length} of ${pieces.length} pieces are engraved.`;
  const isStale = released !== undefined && !isAsReleased(sheets, released);
  return {
    done: true,
    words: isStale ? `${words} It has changed since it was released: some of them may be void.` : words,
  };
}

/** Keeps a note, and tells how its order stands then. */
async function noted(desk: Desk, note: Note): Promise<Said> {
  const taken = await takeNote(desk, note);
  if (taken.kind === "wrong") return { done: false, words: `Nothing is settled: ${taken.why}.` };
  if (taken.kind === "waits")
    return {
      done: true,
      words: `Kept as letter ${taken.letter}. It is judged once the letters before it are.`,
    };
  const { verdict, why, state } = await desk.store.letters.read(taken.letter);
  if (state === "held") return { done: false, words: `Nothing is settled: ${why ?? ""}.` };
  const answered = state === "ready" ? "The worker sends the answer." : "Nobody is answered.";
  return { done: true, words: `Order ${note.order}: ${verdict ?? ""}. ${answered}` };
}

const noLetter: Said = { done: false, words: "No such letter is in the record." };

function letterOf({ store }: Desk, letter: number) {
  return Number.isSafeInteger(letter) ? store.letters.read(letter).catch(() => undefined) : undefined;
}
