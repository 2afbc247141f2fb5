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

export function makeDay(
  date: string,
  timeZone: string,
  letters: readonly LetterRecord[],
  open: readonly OpenOrder[],
): Day {
  const clock = clockIn(timeZone);
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
    letters: letters.map((letter) => dayLetter(letter, clock)),
    byVerdict,
    byCheck: [...byCheck]
      .map(([check, count]) => ({ check, problems: count.problems, letters: count.letters.size }))
      .toSorted((a, b) => b.problems - a.problems || a.check.localeCompare(b.check)),
    open,
  };
}

function dayLetter(record: LetterRecord, clock: Intl.DateTimeFormat): DayLetter {
  const { receivedAt, problems } = record;
  const sentAt = record.answer?.sentAt;
  const count = (severity: string): number =>
    problems.filter((problem) => problem.severity === severity).length;
  return {
    letter: record.letter,
    time: clock.format(receivedAt),
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
  return clockIn(timeZone).format(moment);
}

// A formatter costs far more to make than to use, so that a day makes one.
function clockIn(timeZone: string): Intl.DateTimeFormat {
  return new Intl.DateTimeFormat("en-GB", { timeZone, timeStyle: "short" });
}
