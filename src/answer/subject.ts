import type { Report } from "../judging/report.ts";
import { listed, oneLine } from "./one-line.ts";
import { headlineOf, numberOf, ordersInWords, wordOf } from "./phrases.ts";
import { type Tally, tallyWords } from "./tally.ts";

/** Mail programs show about so many characters of a subject; a header line holds 998 (RFC 5322 §2.1.1). */
const mostCharacters = 150;

/** "FAIL: order BW-2207, 2 to fix, 1 question". Sheets without an order number are told by their file names. */
export function subjectOf(report: Report, tally: Tally): string {
  const { orders, sheets, verdict } = report;
  const named = orders.some(({ order }) => numberOf(order) !== undefined);
  const files = sheets.map(({ sheet }) => oneLine(sheet.file, 40));
  const about =
    orders.length === 0
      ? headlineOf(report, tally).replace(/\.$/, "")
      : `${named ? ordersInWords(orders) : listed(files, 2)}, ${tallyWords(verdict, tally)}`;
  return oneLine(`${wordOf(report)}: ${about}`, mostCharacters);
}
