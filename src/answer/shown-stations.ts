import type { OrderReport, Report } from "../judging/report.ts";
import { plainText } from "../orders/keys.ts";
import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";

/** An order of no more stations is shown whole with every answer. Of a larger one nobody reads all again. */
const mostWhole = 20;

/** Those stations of an order that an answer shows as they would be cut. */
export interface Shown {
  /** The order with no other station. */
  readonly order: Order;
  /** How many stations have not changed and are not shown. */
  readonly left: number;
}

/**
 * Of a large order an answer shows the stations to which sheets came or from which some are gone, and those with
 * something to mend or to answer. If there is no such station, the order is shown whole.
 */
export function shownOf({ order }: Pick<OrderReport, "order">, report: Report): Shown {
  const whole = { order, left: 0 };
  const all = order.stations.length + order.loose.length;
  if (all <= mostWhole) return whole;
  const gone = [
    ...report.withdrawn.flatMap(({ sheets }) => sheets),
    ...[...report.replaced, ...report.late].map(({ old }) => old),
  ];
  const marks = new Set(gone.flatMap(({ mark }) => (mark === undefined ? [] : [plainText(mark)])));
  const open = [
    ...report.sheets.flatMap(({ problems }) => problems),
    ...report.orders.flatMap(({ problems }) => problems),
  ].filter(({ verdict }) => verdict !== "pass" && verdict !== "waiting");
  const ids = new Set([
    ...report.sheets.map(({ sheet }) => sheet.id),
    ...(report.moved?.sheets ?? []).map(({ sheet }) => sheet.id),
    ...open.flatMap(({ spots }) => spots.map(({ file }) => file)),
  ]);
  const isShown = ({ id }: Sheet): boolean => ids.has(id);
  const stations = order.stations.filter(
    ({ mark, plates, devices }) => marks.has(plainText(mark)) || [...plates, ...devices].some(isShown),
  );
  const loose = order.loose.filter(isShown);
  const left = all - stations.length - loose.length;
  return left === all ? whole : { order: { ...order, stations, loose }, left };
}

/** "97 more stations of this order have not changed. They are not shown again." */
export function leftWords(left: number): string {
  return left === 1
    ? "One more station of this order has not changed. It is not shown again."
    : `${left} more stations of this order have not changed. They are not shown again.`;
}
