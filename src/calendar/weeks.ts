import { dateIn, hourOf } from "./dates.ts";

const day = 24 * 3_600_000;

/** The last week that has ended. `weekday` counts from Sunday, 0; the week ends at that full hour in the time zone. */
export function lastWeek(
  { weekday, hour }: { readonly weekday: number; readonly hour: number },
  now: Date,
  timeZone: string,
): { readonly from: Date; readonly until: Date } {
  const today = Date.parse(`${dateIn(now, timeZone)}T00:00:00Z`);
  const back = (new Date(today).getUTCDay() - weekday + 7) % 7;
  const end = (days: number): Date =>
    hourOf(new Date(today - days * day).toISOString().slice(0, 10), hour, timeZone);
  const days = end(back) <= now ? back : back + 7;
  return { from: end(days + 7), until: end(days) };
}
