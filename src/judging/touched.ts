import { sheetAfterCancellation } from "../checks/order/sheet-after-cancellation.ts";
import { ageOf } from "../orders/age.ts";
import { differencesOf } from "../orders/differences.ts";
import { letterOf } from "../orders/ids.ts";
import type { Standing } from "../orders/stand.ts";
import { wallPlaceOf } from "../orders/wall-place.ts";
import type { Crossed, Order } from "../trade/order.ts";
import type { FileId } from "../trade/sheet.ts";
import { sheetsOf } from "./sheets-of.ts";
import { type BuyerState, type OrderState, orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";

/**
 * Its sheets that came behind the letter that cancels their place, and are older by the dates of the two letters. And
 * those that came again as they were, with other sheets: a set may be sent whole for the sake of another of its sheets.
 * Who sends one sheet by itself wants it, unless it was put elsewhere, where it stands already. One that was put back by
 * one of our own people has not come again.
 */
export function crossedIn(
  { sheets: all }: Order,
  before: OrderState | undefined,
  arrivals: BuyerState["arrivals"],
  wasPut: (sheet: FileId) => boolean,
): Crossed[] {
  const sheets = all.filter(({ id }) => !wasPut(id));
  const { withdrawn = [], questions = [], sheets: had = [] } = before ?? {};
  const cancelled = Map.groupBy(withdrawn, ({ sheet }) => wallPlaceOf(sheet));
  const stood = new Set(had.map(wallPlaceOf));
  const others = new Set(
    sheets.filter((sheet) => !cancelled.has(wallPlaceOf(sheet))).map(({ id }) => letterOf(id)),
  );
  const isAsked = (cancelledBy: number): boolean =>
    questions.some(
      ({ problem: { check, wording, facts } }) =>
        check === sheetAfterCancellation.id && wording === "again" && facts["cancelledBy"] === cancelledBy,
    );
  return sheets.flatMap((sheet) => {
    const place = wallPlaceOf(sheet);
    const last = place === undefined ? undefined : cancelled.get(place)?.at(-1);
    if (last === undefined) return [];
    const { letter: cancelledBy, sheet: old, isMoved = false } = last;
    if (ageOf(sheet.id, `${cancelledBy}/0`, arrivals) === "unclear") return [{ sheet, cancelledBy }];
    const comesBack = others.has(letterOf(sheet.id)) && !stood.has(place);
    return differencesOf(old, sheet).length === 0 && (comesBack || isMoved || isAsked(cancelledBy))
      ? [{ sheet, cancelledBy, again: true }]
      : [];
  });
}

/** Whether a sheet is where it is because one of our own people has put it there. */
export function puttingIn({ moves = [] }: Submission, { orders }: BuyerState): (sheet: FileId) => boolean {
  const now = new Set(moves.map((move) => move.now.id));
  const notes = new Set(
    orders.flatMap(({ withdrawn = [] }) =>
      withdrawn.flatMap(({ letter, isMoved }) => (isMoved === true ? `${letter}` : [])),
    ),
  );
  return (sheet) => now.has(sheet) || notes.has(letterOf(sheet));
}

/** Whether this submission says anything of an order: it brings or takes sheets, or is about it. */
export function isTouched(
  order: Order,
  submission: Submission,
  standing: Standing,
  state: BuyerState,
): boolean {
  const key = orderKey(order.number);
  const about = (submission.about ?? []).some((number) => orderKey(number) === key);
  const { replaced, late } = partOf(standing, order);
  const had = new Set((stateOf(order, state)?.sheets ?? []).map(({ id }) => id));
  const has = new Set(sheetsOf(order).map(({ id }) => id));
  return about || replaced.length + late.length > 0 || had.symmetricDifference(has).size > 0;
}

/** What the record knows of an order. */
export function stateOf(order: Order, state: BuyerState): OrderState | undefined {
  return state.orders.find(({ number }) => orderKey(number) === orderKey(order.number));
}

/** What has given way in one order, whether it loses the sheet or gains it. */
export function partOf({ replaced, late, untouched }: Standing, order: Order): Omit<Standing, "sheets"> {
  const ids = new Set<FileId>(sheetsOf(order).map(({ id }) => id));
  const key = orderKey(order.number);
  return {
    replaced: replaced.filter(({ old, now }) => ids.has(now.id) || orderKey(old.order ?? "") === key),
    late: late.filter(({ now }) => ids.has(now.id)),
    untouched: untouched.filter(({ beside }) => ids.has(beside.id)),
  };
}
