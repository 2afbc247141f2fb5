import type { Calendar } from "../calendar/business-days.ts";
import { dayBounds } from "../calendar/dates.ts";
import type { Audited } from "../trade/audited.ts";
import { type Figures, figuresOf } from "./figures.ts";

/** Business days before, against which figures are held. */
export const daysBefore = 20;

/** The audit of some days, and of the business days before them. */
export interface Period {
  readonly first: string;
  readonly last: string;
  readonly timeZone: string;
  /** Midnight before the first day. */
  readonly from: Date;
  /** Days among them on which the desk is open; 1 if there is none. */
  readonly businessDays: number;
  readonly audited: Audited;
  readonly figures: Figures;
  readonly before: Figures;
}

type Read = (from: Date, to: Date) => Promise<Audited>;

/** Reads and counts from the first date to the last, both inclusive. */
export async function readPeriod(
  read: Read,
  { first, last }: { readonly first: string; readonly last: string },
  calendar: Calendar,
): Promise<Period> {
  const { timeZone } = calendar;
  const { from } = dayBounds(first, timeZone);
  const { to } = dayBounds(last, timeZone);
  const start = dayBounds(businessDaysBack(first, daysBefore, calendar), timeZone).from;
  const audited = await read(from, to);
  return {
    first,
    last,
    timeZone,
    from,
    businessDays: openDays(first, last, calendar),
    audited,
    figures: figuresOf(audited, from, to),
    before: figuresOf(await read(start, from), start, from),
  };
}

function openDays(first: string, last: string, { isOpen }: Calendar): number {
  let count = 0;
  for (let at = first; at <= last; at = dateAfter(at, 1)) if (isOpen(at)) count += 1;
  return Math.max(1, count);
}

/** The date so many business days before another. No further back than a year. */
export function businessDaysBack(date: string, days: number, { isOpen }: Calendar): string {
  let left = days;
  let at = date;
  for (let seen = 0; left > 0 && seen < 400; seen++) {
    at = dateAfter(at, -1);
    if (isOpen(at)) left -= 1;
  }
  return at;
}

/** The date so many days after another, or before it. */
export function dateAfter(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * 24 * 3_600_000).toISOString().slice(0, 10);
}
