import type { Period } from "./period.ts";

type Cell = string | number;

/** The files of a period by their names, from which its figures can be recounted. A pair of things is a line. */
export function csvFiles({ audited, timeZone }: Period): ReadonlyMap<string, string> {
  const moment = new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short", timeStyle: "medium" });
  const slips = audited.slips.map(({ number, buyer, problem, edition, openedAt, ending }) => [
    numberCell(number),
    buyer,
    problem.check,
    problem.wording,
    problem.severity,
    problem.spots[0]?.place ?? "",
    edition ?? "",
    moment.format(openedAt),
    ending,
  ]);
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
  ];
  return new Map([
    [
      "letters.csv",
      csv(
        ["letter", "received", "from", "subject", "sheets", "verdict", "answered", "seconds_to_answer"],
        audited.letters.map((letter) => [
          letter.letter,
          moment.format(letter.receivedAt),
          letter.from,
          letter.subject,
          letter.sheets,
          letter.verdict ?? "",
          letter.answeredAt === undefined ? "" : moment.format(letter.answeredAt),
          letter.answeredAt === undefined
            ? ""
            : ((letter.answeredAt.getTime() - letter.receivedAt.getTime()) / 1000).toFixed(3),
        ]),
      ),
    ],
    [
      "orders.csv",
      csv(
        ["order", "buyer", "revision", "at", "by_letter", "verdict"],
        audited.orders.flatMap(({ number, buyer, revisions }) =>
          revisions.map(({ at, isLetter, verdict }, i) => [
            numberCell(number),
            buyer,
            i + 1,
            moment.format(at),
            isLetter ? "yes" : "no",
            verdict ?? "",
          ]),
        ),
      ),
    ],
    ["problems.csv", csv(slipHead, slips)],
    [
      "questions.csv",
      csv(
        slipHead,
        slips.filter((_, i) => audited.slips[i]?.problem.severity === "asks"),
      ),
    ],
  ]);
}

/** With a byte order mark, by which spreadsheets on Windows know UTF-8. */
function csv(head: readonly string[], lines: readonly (readonly Cell[])[]): string {
  return `\u{feff}${[head, ...lines].map((line) => csvLine(line.map(guarded))).join("")}`;
}

/** A record of RFC 4180: what holds a comma, a quotation mark or a line end stands in quotation marks. */
export function csvLine(cells: readonly Cell[]): string {
  const quoted = cells
    .map(String)
    .map((text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text));
  return `${quoted.join(",")}\r\n`;
}

/** A spreadsheet would run text that begins like a formula, also with wide signs or behind blanks. Strangers write these. */
function guarded(value: Cell): Cell {
  return typeof value === "string" && /^\s*[=+\-@\t\r\n＝＋－＠]/u.test(value) ? `'${value}` : value;
}

/** An order's number stays text: a spreadsheet would take 0012, 1E5 or MAR-1 for a number or a date. */
function numberCell(number: string): string {
  const isTaken =
    /^[\d\s.,]/.test(number) || /^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)/i.test(number);
  return isTaken ? `'${number}` : number;
}
