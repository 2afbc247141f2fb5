import type { Report } from "../judging/report.ts";
import type { Manager } from "../trade/manager.ts";

/**
 * Who gets a copy of an answer: the managers who have all of its orders. A manager is not told of an order that
 * another has, or nobody. The sender of a held letter learns of no manager.
 */
export function copiedTo(
  { orders, withdrawn, held }: Pick<Report, "orders" | "withdrawn" | "held">,
  recipient: string,
): Manager[] {
  if (held) return [];
  // The answer tells of an order of which nothing is left, too.
  const told = [...orders, ...withdrawn.filter(({ leaves }) => leaves === "nothing")];
  const [first, ...others] = told.map(({ managing }) => managing?.manager);
  if (first === undefined || first.address === recipient) return [];
  return others.every((one) => one?.address === first.address) ? [first] : [];
}
