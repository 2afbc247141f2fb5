import { gatherOrders } from "../orders/gather.ts";
import { managedBy } from "../orders/managed.ts";
import type { Answered } from "../ports/store.ts";
import type { Managed } from "../trade/managed.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Desk } from "./desk.ts";

/** Whether an address is one of those of our own people who manage orders. */
export function isManager(address: string | undefined, { catalogue }: Pick<Desk, "catalogue">): boolean {
  return (catalogue.managed ?? []).some(({ manager }) => manager.address === address);
}

/**
 * The buyer whose orders a manager writes about in a reply to answers of ours; undefined if he does not manage all of
 * them, or if it is not proved that he wrote it.
 */
export async function managedBuyer(
  {
    from,
    proof,
    answered,
  }: {
    readonly from: string | undefined;
    readonly proof: SenderProof | "not asked";
    readonly answered: readonly Answered[];
  },
  desk: Desk,
): Promise<{ readonly buyer: string; readonly manager: Managed["manager"] } | undefined> {
  if (!isManager(from, desk) || (proof !== "pass" && proof !== "not asked")) return undefined;
  const [buyer, ...others] = new Set(answered.map((one) => one.buyer));
  if (buyer === undefined || others.length > 0) return undefined;
  const numbers = [...new Set(answered.flatMap(({ orders }) => orders))];
  const named = (await Promise.all(numbers.map((number) => desk.store.orders.named(number)))).flat();
  const own = named.filter((order) => order.buyer === buyer);
  const managers = own.flatMap(({ sheets }) =>
    gatherOrders(sheets).map((order) => managedBy(order, buyer, desk.catalogue.managed ?? [])?.manager),
  );
  const [manager] = managers;
  const isHis = managers.length > 0 && managers.every((one) => one?.address === from);
  return isHis && manager !== undefined ? { buyer, manager } : undefined;
}
