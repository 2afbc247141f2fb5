import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";

/** The sheets of an order that are checked. A sheet kept aside is only asked about. */
export function membersOf(order: Order): readonly Sheet[] {
  return [...order.sheets, ...order.twice.map(({ again }) => again)];
}

/** All sheets that an order got and that no other has replaced. */
export function sheetsOf(order: Order): readonly Sheet[] {
  return [...membersOf(order), ...order.aside.map(({ sheet }) => sheet)];
}
