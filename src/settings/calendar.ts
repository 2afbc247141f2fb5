import { type Calendar, calendarOf } from "../calendar/business-days.ts";
import { closedDays, type Settings } from "./settings.ts";

/** The calendar of a desk. */
export function calendarIn(
  { country, region, closed }: NonNullable<Settings["waiting"]>,
  timeZone: string,
): Calendar {
  const place =
    country === undefined ? {} : { place: { country, ...(region === undefined ? {} : { region }) } };
  return calendarOf({ timeZone, closed: closed.map(closedDays), ...place });
}
