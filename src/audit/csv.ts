import { asText, type Cell, csvText } from "./cells.ts";
import { isCounted, isRight } from "./figures.ts";
import type { Period } from "./period.ts";

const slipHead = [
  "order",
  "buyer",
  "check",
  "wording",
  "weight",
  "place",
  "edition",
  "first_said",
  "ended",
  "order_id",
  "counted",
];

/**
 * The files of a period by their names, from which its figures can be recounted. What strangers typed stays text.
 * Moments are those of the desk's clocks; seconds are reckoned without regard to them.
 */
export function csvFiles(period: Period): ReadonlyMap<string, string> {
  const slips = slipRows(period);
  return new Map([
    [
      "letters.csv",
      csvText(
        [
          "letter",
          "received",
          "from",
          "subject",
          "sheets",
          "became",
          "verdict",
          "answered",
          "seconds_to_answer",
        ],
        letterRows(period),
      ),
    ],
    [
      "letters-orders.csv",
      csvText(["letter", "order", "buyer", "order_id", "revision", "verdict"], pairRows(period)),
    ],
    [
      "orders.csv",
      csvText(
        [
          "order",
          "buyer",
          "order_id",
          "revision",
          "at",
          "seconds_from_first",
          "by_letter",
          "verdict",
          "right",
          "in_these_days",
        ],
        orderRows(period),
      ),
    ],
    ["problems.csv", csvText(slipHead, slips)],
    [
      "questions.csv",
      csvText(
        slipHead,
        slips.filter(([, , , , weight]) => weight === "asks"),
      ),
    ],
  ]);
}

/** "2026-11-09 08:02:00" on the clocks of a zone. */
function clockOf({ timeZone }: Period): (moment: Date) => string {
  const format = new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short", timeStyle: "medium" });
  return (moment) => format.format(moment);
}

function seconds(from: Date, to: Date): string {
  return ((to.getTime() - from.getTime()) / 1000).toFixed(3);
}

function letterRows(period: Period): Cell[][] {
  const clock = clockOf(period);
  return period.audited.letters.map(
    ({ letter, receivedAt, from, subject, sheets, became = "", verdict = "", answeredAt }) => [
      letter,
      clock(receivedAt),
      asText(from),
      asText(subject),
      sheets,
      became,
      verdict,
      answeredAt === undefined ? "" : clock(answeredAt),
      answeredAt === undefined ? "" : seconds(receivedAt, answeredAt),
    ],
  );
}

function pairRows({ audited }: Period): Cell[][] {
  return audited.pairs.map(({ letter, order, number, buyer, revision = "", verdict = "" }) => [
    letter,
    asText(number),
    asText(buyer),
    order,
    revision,
    verdict,
  ]);
}

function orderRows(period: Period): Cell[][] {
  const clock = clockOf(period);
  const { audited, from } = period;
  return audited.orders.flatMap(({ order, number, buyer, revisions }) =>
    revisions.map((revision, i) => [
      asText(number),
      asText(buyer),
      order,
      i + 1,
      clock(revision.at),
      seconds(revisions[0]?.at ?? revision.at, revision.at),
      yesNo(revision.isLetter),
      revision.verdict ?? "",
      yesNo(isRight(revision)),
      yesNo(revision.at >= from),
    ]),
  );
}

function slipRows(period: Period): Cell[][] {
  const clock = clockOf(period);
  return period.audited.slips.map((slip) => [
    asText(slip.number),
    asText(slip.buyer),
    slip.problem.check,
    slip.problem.wording,
    slip.problem.severity,
    slip.problem.spots[0]?.place ?? "",
    slip.edition ?? "",
    clock(slip.openedAt),
    slip.ending,
    slip.order,
    yesNo(isCounted(slip, period.from)),
  ]);
}

function yesNo(is: boolean): string {
  return is ? "yes" : "no";
}
