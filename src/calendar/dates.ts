/** The first moments of a day and of the next, in a time zone. `date` is "YYYY-MM-DD". */
export function dayBounds(date: string, timeZone: string): { from: Date; to: Date } {
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const next = midnight + 24 * 3_600_000;
  return { from: localTime(midnight, timeZone), to: localTime(next, timeZone) };
}

/** The moment of a full hour of a day in a time zone. An hour that the clocks leave out is the next. */
export function hourOf(date: string, hour: number, timeZone: string): Date {
  return localTime(Date.parse(`${date}T00:00:00Z`) + hour * 3_600_000, timeZone);
}

/** The moment at which the clocks of a zone show a time, "07:30", of a day. One that they leave out is an hour later. */
export function timeOf(date: string, time: string, timeZone: string): Date {
  return localTime(Date.parse(`${date}T${time}:00Z`), timeZone);
}

/** The date in a time zone, as "YYYY-MM-DD". */
export function dateIn(moment: Date, timeZone: string): string {
  return new Intl.DateTimeFormat("en-CA", { timeZone, dateStyle: "short" }).format(moment);
}

/** What the clocks of a zone show at a moment: "08:02". */
export function timeIn(moment: Date, timeZone: string): string {
  return new Intl.DateTimeFormat("en-GB", { timeZone, timeStyle: "short" }).format(moment);
}

/** The moment at which the clocks of a zone show the time that `utc` shows in UTC. */
function localTime(utc: number, timeZone: string): Date {
  let moment = utc;
  // Corrected twice, since the first correction may cross a change of the clocks.
  for (let round = 0; round < 2; round++) moment = utc - offsetAt(moment, timeZone);
  return new Date(moment);
}

/** How far a zone's clocks are ahead of UTC, in milliseconds. */
function offsetAt(moment: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat("en-US", {
    timeZone,
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  }).formatToParts(moment);
  const part = (type: Intl.DateTimeFormatPartTypes): number =>
    Number(parts.find((p) => p.type === type)?.value);
  return (
    Date.UTC(part("year"), part("month") - 1, part("day"), part("hour"), part("minute"), part("second")) -
    moment
  );
}
