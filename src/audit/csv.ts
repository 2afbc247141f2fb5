import type { Day } from "./day.ts";

/** A day's letters as CSV (RFC 4180), a line each. */
export function dayCsv(day: Day): string {
  const head = [
    "date",
    "time",
    "letter",
    "from",
    "subject",
    "orders",
    "sheets",
    "verdict",
    "state",
    "stops",
    "asks",
    "notes",
    "seconds_to_answer",
  ];
  const lines = day.letters.map((letter) => [
    day.date,
    letter.time,
    letter.letter,
    letter.from,
    letter.subject,
    letter.orders.join(" "),
    letter.sheets,
    letter.verdict ?? "",
    letter.state,
    letter.stops,
    letter.asks,
    letter.notes,
    letter.secondsToAnswer?.toFixed(3) ?? "",
  ]);
  return [head, ...lines].map((line) => csvLine(line.map(guarded))).join("");
}

/** A record of RFC 4180: what holds a comma, a quotation mark or a line end stands in quotation marks. */
export function csvLine(cells: readonly (string | number)[]): string {
  const quoted = cells
    .map(String)
    .map((text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text));
  return `${quoted.join(",")}\r\n`;
}

/** A spreadsheet would run text that begins like a formula, and strangers write these subjects. */
function guarded(value: string | number): string | number {
  return typeof value === "string" && /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
}
