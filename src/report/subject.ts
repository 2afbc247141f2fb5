import { oneLine } from "./one-line.ts";
import { headlineOf, ordersInWords, type Tally, tallyWords, words } from "./phrases.ts";
import type { Report } from "./report.ts";

/** Mail programs show about this much of a subject; a header line holds 998 (RFC 5322 §2.1.1). */
const mostCharacters = 150;

/** "FAIL: order BW-2207, 3 things to fix". One line whatever the order number holds. */
export function subjectOf(report: Report, tally: Tally): string {
  const { orders, verdict } = report;
  const about =
    orders.length === 0
      ? headlineOf(report, tally).replace(/\.$/, "")
      : `${ordersInWords(orders)}, ${tallyWords(verdict, tally)}`;
  return oneLine(`${words[verdict]}: ${about}`, mostCharacters);
}
