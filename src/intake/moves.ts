import { type BuyerState, type OrderState, orderKey } from "../judging/state.ts";
import { plainText } from "../orders/keys.ts";
import { isReleasedPiece } from "../orders/piece.ts";
import { isMarked, placed } from "../orders/placed.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import type { Act, Note } from "../trade/note.ts";
import type { Move } from "../trade/order.ts";
import { type Sheet, saidAt } from "../trade/sheet.ts";

type PlaceAct = Extract<Act, { readonly kind: "place" }>;

/** The numbers of orders that a note is about. */
export function ordersIn({ order, acts }: Note): string[] {
  return [order, ...acts.flatMap((act) => (act.kind === "place" ? (act.order ?? []) : []))];
}

/**
 * The sheets that a note puts elsewhere, each with its copy. Copies count as files of the note, which is letter
 * `letter`. A text says why it cannot be.
 */
export function movesIn(note: Note, state: BuyerState, letter: string): readonly Move[] | string {
  const moves: Move[] = [];
  for (const act of note.acts) {
    if (act.kind !== "place") continue;
    const move = moveOf(act, note, state, { moves, id: `${letter}/${moves.length + 1}` });
    if (typeof move === "string") return move;
    moves.push(move);
  }
  return moves;
}

function moveOf(
  act: PlaceAct,
  note: Note,
  state: BuyerState,
  { moves, id }: { readonly moves: readonly Move[]; readonly id: string },
): Move | string {
  const [from, to] = [note.order, act.order ?? note.order].map((number) => orderOf(number, state));
  const gone = new Set(moves.map(({ old }) => old.id));
  const old = from?.sheets.find((sheet) => sheet.id === act.sheet && !gone.has(sheet.id));
  if (old === undefined) return `sheet ${act.sheet} does not stand in order ${note.order}`;
  if (to === undefined) return `no order ${act.order} of ${note.buyer} is known`;
  // Else it would be cut for both orders.
  if (from !== to && from?.released !== undefined && isReleasedPiece(old, from.released))
    return `sheet ${act.sheet} is released to engraving in order ${note.order}`;
  // Else nothing would stand there to be asked about what is released.
  const isLast = from?.sheets.every((sheet) => sheet.id === old.id || gone.has(sheet.id));
  if (from !== to && from?.released !== undefined && isLast)
    return `order ${note.order} is released to engraving, and nothing would be left of it`;
  if (act.mark !== undefined && !isMarked({ ...old, mark: act.mark }))
    return `“${act.mark}” is no station mark`;
  const { position } = act;
  if (position !== undefined && (old.kind === "plate" || !goesIntoPlate({ ...old, position })))
    return `sheet ${act.sheet} is of ${old.kind === "plate" ? "a plate" : "a device that stands alone"}, and has no position in a plate`;
  const there = to.sheets.filter((sheet) => !gone.has(sheet.id) && sheet.id !== old.id);
  const here = [...there, ...moves.flatMap(({ now }) => (isIn(now, to) ? now : []))];
  const now = { ...copyOf(old, act, to, here), id };
  if ((["order", "mark", "position"] as const).every((place) => saidAt(now, place) === saidAt(old, place)))
    return `sheet ${act.sheet} is there already`;
  const marks = [...here, now].flatMap(({ mark }) => mark ?? []);
  const numbers = [...here, now].flatMap(({ order }) => order ?? []);
  const taken = here.find((other) => isSamePlace(placed(other, marks, numbers), now));
  if (taken === undefined) return { old, now };
  return `its place in order ${to.number} is taken by sheet ${taken.id} (${taken.file})`;
}

function orderOf(number: string, { orders }: BuyerState): OrderState | undefined {
  return orders.find((order) => orderKey(order.number) === orderKey(number));
}

function isIn({ order = "" }: Sheet, { number }: OrderState): boolean {
  return orderKey(order) === orderKey(number);
}

/** A sheet with its new place. What its fields left in doubt about the place is settled by it. */
function copyOf(old: Sheet, { mark, position }: PlaceAct, to: OrderState, there: readonly Sheet[]): Sheet {
  // A mark is written as its station has it.
  const known = there.find((sheet) => plainText(sheet.mark ?? "") === plainText(mark ?? ""))?.mark;
  const order = orderKey(old.order ?? "") === orderKey(to.number) ? old.order : to.number;
  const set: ReadonlySet<string> = new Set([
    ...(mark === undefined ? [] : ["mark"]),
    ...(position === undefined ? [] : ["position"]),
    ...(order === old.order ? [] : ["order"]),
  ]);
  return {
    ...old,
    unread: old.unread.filter(({ place }) => !set.has(place)),
    unsure: old.unsure.filter(({ place }) => !set.has(place)),
    ...(order === undefined ? {} : { order }),
    ...(mark === undefined ? {} : { mark: known ?? mark }),
    ...(position === undefined ? {} : { position }),
  };
}

/** Whether two sheets of one order are for the same place of the same station. */
function isSamePlace(one: Sheet, other: Sheet): boolean {
  if (plainText(one.mark ?? "") !== plainText(other.mark ?? "") || !isMarked(one)) return false;
  if (one.kind === "plate" || other.kind === "plate") return one.kind === other.kind;
  if (!goesIntoPlate(one) || !goesIntoPlate(other)) return goesIntoPlate(one) === goesIntoPlate(other);
  return one.position !== undefined && one.position === other.position;
}
