import { dateIn } from "./dates.ts";
import { type Place, publicHolidays } from "./holidays.ts";

const day = 24 * 3_600_000;

/** Days from the first to the last, both closed, as "2026-12-24". */
export interface Closed {
  readonly from: string;
  readonly to: string;
}

/** When a desk works. */
export interface Calendar {
  readonly timeZone: string;
  /** Whether somebody works on a date, "2026-11-09": no weekend, no public holiday, no closing day of the maker's own. */
  readonly isOpen: (date: string) => boolean;
}

/** Without a place there are no public holidays. */
export function calendarOf(given: {
  readonly timeZone: string;
  readonly place?: Place;
  readonly closed?: readonly Closed[];
}): Calendar {
  const { timeZone, place, closed = [] } = given;
  const years = new Map<string, ReadonlySet<string>>();
  const holidaysOf = (year: string): ReadonlySet<string> => {
    const known = years.get(year) ?? new Set(place === undefined ? [] : publicHolidays(place, Number(year)));
    years.set(year, known);
    return known;
  };
  return {
    timeZone,
    isOpen: (date) =>
      !isWeekend(date) &&
      !holidaysOf(date.slice(0, 4)).has(date) &&
      !closed.some(({ from, to }) => from <= date && date <= to),
  };
}

/**
 * How many business days lie behind a moment: the dates after its own on which the desk is open, up to that of the
 * other moment. Looks at no more than `most` dates.
 */
export function businessDaysBetween(from: Date, to: Date, calendar: Calendar, most = 400): number {
  const last = dateIn(to, calendar.timeZone);
  let count = 0;
  let date = dateIn(from, calendar.timeZone);
  for (let seen = 0; date < last && seen < most; seen++) {
    date = nextDate(date);
    if (calendar.isOpen(date)) count += 1;
  }
  return count;
}

/** The date so many business days after a moment. Undefined if the desk is closed for longer than a year. */
export function businessDayAfter(from: Date, days: number, calendar: Calendar): string | undefined {
  let left = days;
  let date = dateIn(from, calendar.timeZone);
  for (let seen = 0; seen < 400; seen++) {
    date = nextDate(date);
    if (calendar.isOpen(date)) left -= 1;
    if (left <= 0) return date;
  }
  return undefined;
}

function nextDate(date: string): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + day).toISOString().slice(0, 10);
}

function isWeekend(date: string): boolean {
  const weekday = new Date(`${date}T00:00:00Z`).getUTCDay();
  return weekday === 0 || weekday === 6;
}
