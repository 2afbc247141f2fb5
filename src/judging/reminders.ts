import { businessDayAfter, businessDaysBetween, type Calendar } from "../calendar/business-days.ts";
import { dateIn } from "../calendar/dates.ts";
import type { Missing } from "../trade/order.ts";
import type { Problem, Verdict } from "../trade/problem.ts";
import type { Question } from "../trade/question.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Sheet } from "../trade/sheet.ts";
import { orderKey } from "./state.ts";

/** An order as it stands after its latest letter. */
export interface WaitingOrder {
  readonly number: string;
  readonly buyer: string;
  readonly project?: string;
  /** Absent when nothing is left of it. */
  readonly verdict?: Verdict;
  /** When its latest letter came, or whatever else happened to it last. Then its reminders begin anew. */
  readonly since: Date;
  readonly missing: readonly Missing[];
  readonly questions: readonly Question[];
  /** What stands in its way. */
  readonly problems: readonly Problem[];
  /** Its sheets, by the names that their sender knows. */
  readonly sheets: readonly Pick<Sheet, "id" | "file">[];
  /** Our last letter about it came back or was refused. Another one would not arrive either. */
  readonly isReturned?: boolean;
  /** It is withdrawn or released, so nothing is awaited any more. */
  readonly isClosed?: boolean;
}

/** What was done about an order that waits. */
export interface Reminded extends Pick<WaitingOrder, "number" | "buyer"> {
  readonly at: Date;
  readonly what: Due["what"];
}

/** When reminders go out. */
export interface Reminding extends Calendar {
  /** Business days after an order's latest letter, rising. The last of them brings the last reminder. */
  readonly remindAfter: readonly number[];
}

/** What is due for an order. It is to be kept as `Reminded`, whichever it is. */
export type Due =
  | {
      readonly order: WaitingOrder;
      readonly what: "remind";
      /** Counted from 1. */
      readonly nth: number;
      /** When the last one comes, if nothing comes before; as "2026-11-09". */
      readonly lastOn?: string;
    }
  | { readonly order: WaitingOrder; readonly what: "last"; readonly nth: number }
  /** Nothing came of the last reminder, it is too late for a first one, or none would arrive. So one of us calls. */
  | { readonly order: WaitingOrder; readonly what: "person" };

/** An order waits for its buyer. What waits for a person is not the buyer's to answer. */
const waits: readonly (Verdict | undefined)[] = ["waiting", "confirm", "fail"];

/** What is due now, at most one thing for each order. Nothing is due while the desk is closed. */
export function remindersDue(
  orders: readonly WaitingOrder[],
  sent: readonly Reminded[],
  calendar: Reminding,
  now: Date,
): Due[] {
  if (!calendar.isOpen(dateIn(now, calendar.timeZone))) return [];
  const sentFor = Map.groupBy(sent, keyOf);
  const once = new Map(orders.map((order) => [keyOf(order), order]));
  return [...once].flatMap(([key, order]) => dueFor(order, sentFor.get(key) ?? [], calendar, now) ?? []);
}

/**
 * So many business days after the last reminder was due, nobody is sent a first one: old orders of a desk that begins
 * with reminders would get theirs all at once.
 */
const grace = 5;

function dueFor(
  order: WaitingOrder,
  sent: readonly Reminded[],
  calendar: Reminding,
  now: Date,
): Due | undefined {
  if (order.isClosed === true || !waits.includes(order.verdict)) return undefined;
  const { remindAfter } = calendar;
  const since = sent.filter(({ at }) => at >= order.since);
  const done = since.length;
  if (remindAfter.length === 0 || since.some(({ what }) => what === "person")) return undefined;
  const before = new Date(Math.max(order.since.getTime(), ...since.map(({ at }) => at.getTime())));
  const tooLate = (remindAfter.at(-1) ?? 0) + grace;
  if (done === 0 && businessDaysBetween(before, now, calendar) > tooLate) return { order, what: "person" };
  // Counted from the reminder before as well, so that a desk that stood still does not send two at once.
  if (businessDaysBetween(before, now, calendar) < gapBefore(done, remindAfter)) return undefined;
  const nth = done + 1;
  if (done === remindAfter.length || order.isReturned === true) return { order, what: "person" };
  if (nth === remindAfter.length) return { order, what: "last", nth };
  const left = (remindAfter.at(-1) ?? 0) - (remindAfter[done] ?? 0);
  const lastOn = businessDayAfter(now, left, calendar);
  return { order, what: "remind", nth, ...(lastOn === undefined ? {} : { lastOn }) };
}

/** Whether the last letter that we sent about an order did not arrive. */
export function isReturned({ letters, replies }: Pick<OrderRecord, "letters" | "replies">): boolean {
  const answered = [...letters, ...replies].filter(({ answer }) => answer !== undefined);
  return answered.toSorted((a, b) => a.letter - b.letter).at(-1)?.state === "refused";
}

/** Business days between a reminder and the one before it. A person has as long as the last reminder had. */
function gapBefore(done: number, after: readonly number[]): number {
  const at = Math.min(done, after.length - 1);
  return (after[at] ?? 0) - (after[at - 1] ?? 0);
}

function keyOf({ buyer, number }: Pick<WaitingOrder, "buyer" | "number">): string {
  return `${buyer} ${orderKey(number)}`;
}
