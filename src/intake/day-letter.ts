import { composeDay } from "../audit/day-letter.ts";
import { businessDaysBack, dateAfter, readPeriod } from "../audit/period.ts";
import { dateIn, timeOf } from "../calendar/dates.ts";
import type { Outcome } from "../ports/store.ts";
import type { Act, Note } from "../trade/note.ts";
import type { Desk } from "./desk.ts";
import { noteKey } from "./note-answer.ts";
import { noteLetter } from "./note-letter.ts";
import { calendarName } from "./remind.ts";

type DayAct = Extract<Act, { kind: "day" }>;

/** What days a note tells of, if it does. */
export function dayIn({ acts }: Note): DayAct | undefined {
  return acts.find((act) => act.kind === "day");
}

/**
 * The notes that tell of the last business day, and of the closed days since. They are due from their hour on until the
 * business day ends, so a desk that was off at that hour sends them when it is back.
 */
export async function dayLettersDue({ store, clock, rules, timeZone }: Desk): Promise<Note[]> {
  if (rules.dayLetter === undefined) return [];
  const { at, to, calendar } = rules.dayLetter;
  const now = clock.now();
  const today = dateIn(now, timeZone);
  if (!calendar.isOpen(today) || now < timeOf(today, at, timeZone)) return [];
  const days = { first: businessDaysBack(today, 1, calendar), last: dateAfter(today, -1) };
  const notes: Note[] = [];
  for (const { address } of to) {
    // The same day and the same person are the same note, so that it is told once whatever dies.
    const note: Note = {
      id: `day letter of ${today} to ${address}`,
      buyer: "",
      order: "",
      by: calendarName,
      why: "a business day has ended",
      acts: [{ kind: "day", to: address, ...days }],
    };
    if (!(await store.letters.isKnown(noteKey(note)))) notes.push(note);
  }
  return notes;
}

/** Tells somebody of some days. */
export async function tellingOfDays(
  desk: Desk,
  note: Note,
  { to: recipient, first, last }: DayAct,
): Promise<Outcome> {
  const { store, rules, catalogue } = desk;
  const person = rules.dayLetter?.to.find(({ address }) => address === recipient);
  if (rules.dayLetter === undefined || person === undefined) return noteLetter(desk, note, undefined);
  const period = await readPeriod(store.audited, { first, last }, rules.dayLetter.calendar);
  return noteLetter(desk, note, { recipient, words: composeDay(person.name, period, catalogue) });
}
