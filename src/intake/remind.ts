import { type Due, isReturned, remindersDue, type WaitingOrder } from "../judging/reminders.ts";
import { orderKey } from "../judging/state.ts";
import type { Act, Note } from "../trade/note.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";

/** Under this name the calendar writes its notes. */
export const calendarName = "burin";

/** An order as far as it waits for its buyer. What stops it stands among its problems. */
export function waitingOf(order: OrderRecord): WaitingOrder {
  return {
    ...order,
    since: order.changedAt,
    // What waits for a person too is not the buyer's to answer.
    questions: order.questions.filter(({ problem }) => problem.verdict === "confirm"),
    isReturned: isReturned(order),
    isClosed: order.released !== undefined,
  };
}

/** The notes that the calendar writes now: reminders that are due, and orders of which somebody has to call. */
export async function remindersOf({ store, clock, rules }: Desk): Promise<Note[]> {
  if (rules.reminding === undefined || isNight(clock.now(), rules.reminding.timeZone)) return [];
  const orders = await store.orders.waiting();
  const sent = orders.flatMap(({ number, buyer, reminders }) =>
    reminders.map(({ at, what }) => ({ number, buyer, at, what })),
  );
  const due = remindersDue(orders.map(waitingOf), sent, rules.reminding, clock.now());
  return due.map(noteOf);
}

/** From so many o'clock on buyers are reminded, and until so many. */
const [morning, evening] = [8, 18];

/** Whether nobody is at work where the desk is, by the hour. */
function isNight(now: Date, timeZone: string): boolean {
  const hour = Number(
    new Intl.DateTimeFormat("en-US", { timeZone, hour: "2-digit", hourCycle: "h23" }).format(now),
  );
  return hour < morning || hour >= evening;
}

/** The same reminder is the same note, so that it is sent once whatever dies. */
function noteOf(due: Due): Note {
  const { number, buyer, since, isReturned: comesBack } = due.order;
  const silence = comesBack === true ? "our letters come back" : "nobody answers";
  const which = due.what === "person" ? "person" : `${due.nth}`;
  const act: Act = {
    kind: "remind",
    what: due.what,
    since: since.toISOString(),
    ...(due.what === "remind" && due.lastOn !== undefined ? { lastOn: due.lastOn } : {}),
  };
  return {
    id: `reminder ${which} of ${buyer} ${orderKey(number)} since ${since.toISOString()}`,
    buyer,
    order: number,
    by: calendarName,
    why: due.what === "person" ? silence : "a reminder",
    acts: [act],
  };
}
