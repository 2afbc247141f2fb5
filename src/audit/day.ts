import type { Verdict } from "../trade/problem.ts";
import type { LetterRecord, LetterState, OpenOrder } from "../trade/record.ts";

/** One letter in a day's audit. */
export interface DayLetter {
  readonly letter: number;
  /** Local time of arrival, "14:03". */
  readonly time: string;
  readonly from: string;
  readonly subject: string;
  readonly orders: readonly string[];
  readonly sheets: number;
  readonly verdict: Verdict | null;
  readonly state: LetterState;
  /** Problems that stop, ask, note. */
  readonly stops: number;
  readonly asks: number;
  readonly notes: number;
  /** From arrival to answer, in seconds; null while unanswered. */
  readonly secondsToAnswer: number | null;
}

/** The audit of one day, counted from the record alone. */
export interface Day {
  /** "2026-11-09", in `timeZone`. */
  readonly date: string;
  readonly timeZone: string;
  readonly letters: readonly DayLetter[];
  readonly byVerdict: Readonly<Record<Verdict, number>>;
  /** Most frequent first. */
  readonly byCheck: readonly {
    readonly check: string;
    readonly problems: number;
    readonly letters: number;
  }[];
  /** Orders that had not passed when the day ended. */
  readonly open: readonly OpenOrder[];
}

/** The first moments of a day and of the next, in a time zone. `date` is "YYYY-MM-DD". */
export function dayBounds(date: string, timeZone: string): { from: Date; to: Date } {
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const next = midnight + 24 * 3_600_000;
  return { from: localMidnight(midnight, timeZone), to: localMidnight(next, timeZone) };
}

/** The date in a time zone, as "YYYY-MM-DD". */
export function dateIn(moment: Date, timeZone: string): string {
  return new Intl.DateTimeFormat("en-CA", { timeZone, dateStyle: "short" }).format(moment);
}

export function makeDay(
  date: string,
  timeZone: string,
  letters: readonly LetterRecord[],
  open: readonly OpenOrder[],
): Day {
  const byVerdict = { pass: 0, fail: 0, confirm: 0, waiting: 0, person: 0 };
  const byCheck = new Map<string, { problems: number; letters: Set<number> }>();
  for (const { letter, verdict, problems } of letters) {
    if (verdict !== undefined) byVerdict[verdict]++;
    for (const { check } of problems) {
      const count = byCheck.get(check) ?? { problems: 0, letters: new Set() };
      count.problems++;
      count.letters.add(letter);
      byCheck.set(check, count);
    }
  }
  return {
    date,
    timeZone,
    letters: letters.map((letter) => dayLetter(letter, timeZone)),
    byVerdict,
    byCheck: [...byCheck]
      .map(([check, count]) => ({ check, problems: count.problems, letters: count.letters.size }))
      .toSorted((a, b) => b.problems - a.problems || a.check.localeCompare(b.check)),
    open,
  };
}

function dayLetter(record: LetterRecord, timeZone: string): DayLetter {
  const { receivedAt, problems } = record;
  const sentAt = record.answer?.sentAt;
  const count = (severity: string): number =>
    problems.filter((problem) => problem.severity === severity).length;
  return {
    letter: record.letter,
    time: timeIn(receivedAt, timeZone),
    from: record.from ?? "",
    subject: record.subject,
    orders: record.orders,
    sheets: record.sheets,
    verdict: record.verdict ?? null,
    state: record.state,
    stops: count("stops"),
    asks: count("asks"),
    notes: count("notes"),
    secondsToAnswer: sentAt === undefined ? null : (sentAt.getTime() - receivedAt.getTime()) / 1000,
  };
}

/** What the clocks of a zone show at a moment: "08:02". */
export function timeIn(moment: Date, timeZone: string): string {
  return new Intl.DateTimeFormat("en-GB", { timeZone, timeStyle: "short" }).format(moment);
}

/** The moment at which the clocks of a zone show the midnight that `utcMidnight` shows in UTC. */
function localMidnight(utcMidnight: number, timeZone: string): Date {
  let moment = utcMidnight;
  // Corrected twice, since the first correction may cross a change of the clocks.
  for (let round = 0; round < 2; round++) moment = utcMidnight - offsetAt(moment, timeZone);
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
