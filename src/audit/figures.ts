import { letterStillOpen } from "../checks/order/letter-still-open.ts";
import { managerWord } from "../checks/order/manager-word.ts";
import { isForPerson } from "../judging/for-person.ts";
import type { Audited, AuditedLetter, AuditedOrder, AuditedSlip, Ending } from "../trade/audited.ts";
import type { Verdict } from "../trade/problem.ts";

/** The middle and the ninth tenth of some values; absent of none. */
export interface Spread {
  readonly count: number;
  readonly median?: number;
  readonly p90?: number;
}

/** How often something slipped. */
export interface Tally {
  readonly name: string;
  readonly slips: number;
  readonly orders: number;
}

/** How the questions of one check have ended. */
export interface CheckTally extends Readonly<Record<Ending, number>> {
  readonly check: string;
  readonly asked: number;
}

/** The figures of some days, counted from the record alone. */
export interface Figures {
  readonly letters: number;
  readonly sheets: number;
  /** Letters by what their answers say. */
  readonly byVerdict: Readonly<Record<Verdict, number>>;
  /** Letters of these days that were held for a person, and that were filed in silence. */
  readonly held: number;
  readonly silent: number;
  /**
   * Orders whose first letter came in these days, and those of them in which nothing was to be mended or asked until
   * they passed or the days ended.
   */
  readonly opened: number;
  readonly rightAtFirst: number;
  /** Orders that passed for the first time. */
  readonly passed: number;
  /** Letters that they took until then, and hours from the first. */
  readonly rounds: Spread;
  readonly hoursToPass: Spread;
  readonly secondsToAnswer: Spread;
  readonly slips: number;
  readonly byCheck: readonly Tally[];
  readonly byBuyer: readonly Tally[];
  /** "row of device-26c": the field, and the edition of its sheet. */
  readonly byField: readonly Tally[];
  /** Checks that ask, the most frequent first. */
  readonly questions: readonly CheckTally[];
  /** What waited for a person when the days ended, the longest first. */
  readonly forPerson: readonly { readonly name: string; readonly hours: number }[];
}

const hour = 3_600_000;

/** Words of an earlier letter, and a manager's word, are waited for and are no slip. */
export const noSlips: ReadonlySet<string> = new Set([letterStillOpen.id, managerWord.id]);

/** Counts the time from `from` on and before `to`. */
export function figuresOf(audited: Audited, from: Date, to: Date): Figures {
  const { letters, orders, held, unread } = audited;
  const slips = audited.slips.filter((slip) => isCounted(slip, from));
  const opened = orders.filter(({ revisions: [first] }) => first !== undefined && first.at >= from);
  const passed = orders.flatMap((order) => passOf(order, from) ?? []);
  const count = (what: AuditedLetter["became"]): number =>
    letters.filter(({ became }) => became === what).length;
  const byVerdict = { pass: 0, fail: 0, confirm: 0, waiting: 0, person: 0 };
  for (const { verdict } of letters) if (verdict !== undefined) byVerdict[verdict]++;
  return {
    letters: letters.length,
    sheets: letters.reduce((sum, { sheets }) => sum + sheets, 0),
    byVerdict,
    held: count("held"),
    silent: count("silent"),
    opened: opened.length,
    rightAtFirst: opened.filter(isRightAtFirst).length,
    passed: passed.length,
    rounds: spreadOf(passed.map(({ rounds }) => rounds)),
    hoursToPass: spreadOf(passed.map(({ hours }) => hours)),
    secondsToAnswer: spreadOf(
      letters.flatMap(({ receivedAt, answeredAt }) =>
        answeredAt === undefined ? [] : [(answeredAt.getTime() - receivedAt.getTime()) / 1000],
      ),
    ),
    slips: slips.length,
    byCheck: tallied(slips, ({ problem }) => problem.check),
    byBuyer: tallied(slips, ({ buyer }) => buyer),
    byField: tallied(slips, fieldOf),
    questions: questionsOf(slips),
    forPerson: [
      ...audited.slips
        .filter(
          ({ ending, problem, isErased }) =>
            ending === "open" &&
            isErased === undefined &&
            isForPerson(problem) &&
            // Words stand among the unread ones.
            problem.check !== letterStillOpen.id,
        )
        .map(({ number, problem, openedAt }) => ({
          name: `${orderNamed(number)}: ${problem.check}`,
          since: openedAt,
        })),
      ...unread.map(({ letter, number, since }) => ({
        name: number === undefined ? `letter ${letter}` : `${orderNamed(number)}: words of letter ${letter}`,
        since,
      })),
      ...held.map(({ letter, since }) => ({ name: `letter ${letter}: held`, since })),
    ]
      .map(({ name, since }) => ({ name, hours: (to.getTime() - since.getTime()) / hour }))
      .toSorted((a, b) => b.hours - a.hours),
  };
}

function orderNamed(number: string): string {
  return `order ${number === "" ? "without a number" : number}`;
}

/** Whether something was found in the time from `from` on and is a slip. */
export function isCounted({ openedAt, problem }: AuditedSlip, from: Date): boolean {
  return openedAt >= from && !noSlips.has(problem.check);
}

/**
 * Whether all letters up to the first pass were right. Sheets still to come and a manager's word are no fault of
 * theirs.
 */
export function isRightAtFirst({ revisions }: AuditedOrder): boolean {
  const passed = revisions.findIndex(({ verdict }) => verdict === "pass");
  return revisions
    .slice(0, passed === -1 ? undefined : passed + 1)
    .filter(({ isLetter }) => isLetter)
    .every(isRight);
}

/** Whether a revision leaves nothing to mend and nothing to ask. */
export function isRight({ verdict, checks }: AuditedOrder["revisions"][number]): boolean {
  if (verdict === "person") return checks.length > 0 && checks.every((check) => check === managerWord.id);
  return verdict !== "fail" && verdict !== "confirm";
}

/** What it took until an order passed for the first time; undefined if it did not, or passed before `from`. */
function passOf({ revisions }: AuditedOrder, from: Date): { rounds: number; hours: number } | undefined {
  const at = revisions.findIndex(({ verdict }) => verdict === "pass");
  const [first, pass] = [revisions[0], revisions[at]];
  if (first === undefined || pass === undefined || pass.at < from) return undefined;
  return {
    rounds: revisions.slice(0, at + 1).filter(({ isLetter }) => isLetter).length,
    hours: (pass.at.getTime() - first.at.getTime()) / hour,
  };
}

/** By the nearest rank: the least value that so many of a hundred do not exceed. */
export function spreadOf(values: readonly number[]): Spread {
  const sorted = values.toSorted((a, b) => a - b);
  const rank = (share: number): number | undefined => sorted[Math.ceil(sorted.length * share) - 1];
  const [median, p90] = [rank(0.5), rank(0.9)];
  return {
    count: sorted.length,
    ...(median === undefined ? {} : { median }),
    ...(p90 === undefined ? {} : { p90 }),
  };
}

export function fieldOf({ problem: { spots }, edition }: AuditedSlip): string | undefined {
  const place = spots[0]?.place;
  if (place === undefined) return undefined;
  // Rows of all faces are one field.
  const field = place.replace(/^(row|plain)\..*$/, "$1");
  return edition === undefined ? field : `${field} of ${edition}`;
}

function tallied(slips: readonly AuditedSlip[], nameOf: (slip: AuditedSlip) => string | undefined): Tally[] {
  return [...Map.groupBy(slips, nameOf)]
    .flatMap(([name, some]) =>
      name === undefined
        ? []
        : [{ name, slips: some.length, orders: new Set(some.map(({ order }) => order)).size }],
    )
    .toSorted((a, b) => b.slips - a.slips || a.name.localeCompare(b.name));
}

function questionsOf(slips: readonly AuditedSlip[]): CheckTally[] {
  const asks = slips.filter(({ problem }) => problem.severity === "asks");
  return [...Map.groupBy(asks, ({ problem }) => problem.check)]
    .map(([check, some]) => {
      const count = (ending: Ending): number => some.filter((one) => one.ending === ending).length;
      return {
        check,
        asked: some.length,
        yes: count("yes"),
        decided: count("decided"),
        corrected: count("corrected"),
        withdrawn: count("withdrawn"),
        open: count("open"),
      };
    })
    .toSorted((a, b) => b.asked - a.asked || a.check.localeCompare(b.check));
}
