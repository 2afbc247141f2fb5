import { randomUUID } from "node:crypto";
import { orderKey } from "../judging/state.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { By } from "../ports/store.ts";
import type { Act, Note } from "../trade/note.ts";
import type { Verdict } from "../trade/problem.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { FileId } from "../trade/sheet.ts";
import { takeNote } from "./check-note.ts";
import type { Desk } from "./desk.ts";
import { letIn as letHeldIn } from "./let-in.ts";
import { noteKey } from "./note-answer.ts";

/** What came of an act of one of our own people, in a sentence for him. */
export interface Said {
  readonly done: boolean;
  readonly words: string;
}

type Ordered = Pick<OrderRecord, "buyer" | "number">;

/**
 * Acts on points of an order. The order is judged again at once, and the worker sends the answer. What is done under a
 * name, `once`, is not done again under it.
 */
export async function settleOrder(
  desk: Desk,
  { buyer, number }: Ordered,
  acts: readonly Act[],
  by: By,
  once: string = randomUUID(),
): Promise<Said> {
  const note = { id: once, buyer, order: number, by: by.name, why: by.why, acts };
  if (await desk.store.letters.isKnown(noteKey(note)))
    return { done: true, words: `That is done already. ${await standing(desk, note)}` };
  return noted(desk, note);
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
  const target = await orderOf(desk, buyer, where.order);
  return {
    done: true,
    words: `${said.words}\nOrder ${target?.number ?? where.order}: ${target?.verdict ?? ""}.`,
  };
}

/** Lets in a letter that was held. */
export async function letIn(desk: Desk, letter: number, by: By, as?: string): Promise<Said> {
  const record = await letterOf(desk, letter);
  return record === undefined ? noLetter : letHeldIn(desk, record, by, as);
}

/** Says that all that a letter said is dealt with. A held one is never answered then. */
export async function putAside(desk: Desk, letter: number, by: By): Promise<Said> {
  const { store, clock } = desk;
  const record = await letterOf(desk, letter);
  if (record === undefined) return noLetter;
  // Nobody knows yet what it says.
  if (record.state === "received")
    return { done: false, words: `Letter ${letter} is not judged yet. Wait until it is.` };
  // An order that still carries what the letter said is judged again without it.
  const open = await store.orders.carrying(letter);
  const said: Said[] = [];
  for (const order of open) said.push(await settleOrder(desk, order, [{ kind: "read", letter }], by));
  if (open.length > 0)
    return { done: said.every(({ done }) => done), words: said.map(({ words }) => words).join("\n") };
  await store.letters.putAside(letter, by, clock.now());
  return { done: true, words: `Letter ${letter} is dealt with.` };
}

/** Records what of a released order is engraved; all of it, if no station is named. */
export function recordCut(
  desk: Desk,
  { buyer, number }: Ordered,
  stations: readonly string[],
  name: string,
): Promise<Said> {
  const acts = [{ kind: "cut", stations }] as const;
  return cutNoted(desk, { id: randomUUID(), buyer, order: number, by: name, why: "engraved", acts });
}

/** Keeps a note of what is engraved, and tells how far its order has come. */
export async function cutNoted(desk: Desk, note: Note): Promise<Said> {
  const order = { buyer: note.buyer, number: note.order };
  const taken = await takeNote(desk, note);
  if (taken.kind === "wrong") return { done: false, words: `Nothing is recorded: ${taken.why}.` };
  const { state, why = "" } = await desk.store.letters.read(taken.letter);
  if (state === "received")
    return {
      done: true,
      words: `Kept as letter ${taken.letter}. It is recorded once the letters before it are judged.`,
    };
  if (state === "held") return { done: false, words: `Nothing is recorded: ${why}.` };
  const now = await orderOf(desk, order.buyer, order.number);
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
  return { done: true, words: `${await standing(desk, note, verdict)} ${answered}` };
}

/** How the order of a note stands, in a sentence. What has no number has no record of its own. */
async function standing(
  desk: Desk,
  { buyer, order: number }: Pick<Note, "buyer" | "order">,
  verdict?: Verdict,
): Promise<string> {
  const order = await orderOf(desk, buyer, number);
  const stands = order === undefined ? (verdict ?? "") : (order.verdict ?? "nothing is left of it");
  return `${number === "" ? "What came without a number" : `Order ${number}`}: ${stands}.`;
}

async function orderOf({ store }: Desk, buyer: string, number: string): Promise<OrderRecord | undefined> {
  return (await store.orders.named(number)).find((one) => one.buyer === buyer);
}

const noLetter: Said = { done: false, words: "No such letter is in the record." };

function letterOf({ store }: Desk, letter: number) {
  return Number.isSafeInteger(letter) ? store.letters.read(letter).catch(() => undefined) : undefined;
}
