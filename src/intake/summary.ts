import { composeWeek } from "../audit/week.ts";
import { lastWeek } from "../calendar/weeks.ts";
import { managerOf, managerOfSheets } from "../orders/managed.ts";
import type { OrderWeek, Outcome } from "../ports/store.ts";
import { type Managing, weekdays } from "../trade/manager.ts";
import type { Act, Note } from "../trade/note.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import { noteKey } from "./note-answer.ts";
import { noteLetter } from "./note-letter.ts";
import { calendarName } from "./remind.ts";

type Summary = Extract<Act, { kind: "summary" }>;

/** What a note tells a manager of, if it does. */
export function summaryIn({ acts }: Note): Summary | undefined {
  return acts.find((act) => act.kind === "summary");
}

/** The notes that tell managers of weeks that have ended. A week in which nothing happened is passed over. */
export async function summariesDue(desk: Desk): Promise<Note[]> {
  const { store, clock, rules, timeZone } = desk;
  const notes: Note[] = [];
  for (const one of rules.managing) {
    if (one.summary === undefined) continue;
    const { weekday, hour } = one.summary;
    const week = lastWeek({ weekday: weekdays.indexOf(weekday), hour }, clock.now(), timeZone);
    const note = noteOf(one, week);
    if (await store.letters.isKnown(noteKey(note))) continue;
    const orders = await ordersOf(one, week, desk);
    if (orders.some(({ isMoved }) => isMoved)) notes.push(note);
  }
  return notes;
}

/** The same week of the same manager is the same note, so that it is told once whatever dies. */
function noteOf(one: Managing, { from, until }: { readonly from: Date; readonly until: Date }): Note {
  const of = keyOf(one);
  return {
    id: `summary of ${of} until ${until.toISOString()}`,
    buyer: "",
    order: "",
    by: calendarName,
    why: "a week has ended",
    acts: [{ kind: "summary", of, from: from.toISOString(), until: until.toISOString() }],
  };
}

function keyOf({ project, buyer, stationsAbove, manager }: Managing): string {
  return JSON.stringify([project, buyer, stationsAbove, manager.address]);
}

async function ordersOf(
  one: Managing,
  { from, until }: { readonly from: Date; readonly until: Date },
  { store, rules }: Desk,
): Promise<OrderWeek[]> {
  const all = await store.orders.week(from, until);
  return all.filter(({ order }) => managing(order, rules.managing) === one);
}

/** Who manages an order. One of which nothing is left goes by the sheets that it had. */
function managing(order: OrderRecord, all: readonly Managing[]): Managing | undefined {
  const gone = order.withdrawn.map(({ sheet }) => sheet);
  return order.sheets.length > 0 ? managerOf(order, all) : managerOfSheets(order.buyer, gone, all);
}

/** Tells a manager of a week. */
export async function summing(desk: Desk, note: Note, { of, from, until }: Summary): Promise<Outcome> {
  const { rules, timeZone, catalogue } = desk;
  const one = rules.managing.find((each) => keyOf(each) === of);
  if (one === undefined) return noteLetter(desk, note, undefined);
  const week = { from: new Date(from), until: new Date(until) };
  const words = composeWeek(one, await ordersOf(one, week, desk), { ...week, timeZone }, catalogue);
  return noteLetter(desk, note, { recipient: one.manager.address, words });
}
