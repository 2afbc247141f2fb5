import type { Order, Replacement } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import { ordersNamedIn } from "./named.ts";
import { stationsIn } from "./named-stations.ts";
import { sheetsOf } from "./sheets-of.ts";
import { orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";

/**
 * Whether a reply says that a station of this order, which it answers, is mended, and brings sheets of other orders
 * alone. Unless one of these takes the place of an earlier sheet of that station, or the words name its order, the sheet
 * may bear another order's number.
 */
export function isMendedElsewhere(
  order: Order,
  { announced, repliesTo = [] }: Pick<Submission, "announced" | "repliesTo">,
  { sheets, replaced }: { readonly sheets: readonly Sheet[]; readonly replaced: readonly Replacement[] },
): boolean {
  const key = orderKey(order.number);
  const others = sheets.map(({ order: number = "" }) => number);
  if (announced?.tells !== "mended" || others.length === 0) return false;
  if (!repliesTo.some((number) => orderKey(number) === key)) return false;
  // Without a number it stops by itself.
  if (others.some((number) => orderKey(number) === "" || orderKey(number) === key)) return false;
  const { words } = announced;
  const stations = stationsIn(words, sheetsOf(order));
  return (
    stations.length > 0 &&
    // A new station may be one of a new order.
    !/\bnew\b/i.test(words) &&
    ordersNamedIn(words, { orders: others.map((number) => ({ number })) }).length === 0 &&
    !replaced.some(({ now }) => now.mark !== undefined && stations.includes(now.mark))
  );
}
