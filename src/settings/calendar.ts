import { type Calendar, calendarOf } from "../calendar/business-days.ts";
import { closedDays, type Settings } from "./settings.ts";

/** The calendar of a desk. Where the settings say nothing of it, all days but weekends are business days. */
export function calendarIn(waiting: Settings["waiting"], timeZone: string): Calendar {
  if (waiting === undefined) return calendarOf({ timeZone });
  const { country, region, closed } = waiting;
  const place =
    country === undefined ? {} : { place: { country, ...(region === undefined ? {} : { region }) } };
  return calendarOf({ timeZone, closed: closed.map(closedDays), ...place });
}
