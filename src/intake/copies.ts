import type { Report } from "../judging/report.ts";
import type { Manager } from "../trade/manager.ts";

/**
 * Who gets a copy of an answer: the managers who have all of its orders. A manager is not told of an order that
 * another has, or nobody. The sender of a held letter learns of no manager.
 */
export function copiedTo({ orders, held }: Pick<Report, "orders" | "held">, recipient: string): Manager[] {
  if (held) return [];
  const [first, ...others] = orders.map(({ managing }) => managing?.manager);
  if (first === undefined || first.address === recipient) return [];
  return others.every((one) => one?.address === first.address) ? [first] : [];
}
