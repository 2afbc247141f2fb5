import type { Desk } from "../intake/desk.ts";
import type { OrderRecord } from "../trade/record.ts";
import { CannotRun } from "./command.ts";

/** The option that says whose order is meant. */
export const buyerOption = {
  buyer: { type: "string", takes: "ADDRESS", tells: "whose order, where several have this number" },
} as const;

/** The order of a number, and of a buyer if one is named. Throws CannotRun where several buyers have it. */
export async function chosenOrder(
  { store }: Pick<Desk, "store">,
  number: string,
  buyer: string | undefined,
): Promise<OrderRecord | undefined> {
  const orders = await store.orders.named(number);
  const own = orders.filter((one) => buyer === undefined || one.buyer === buyer);
  if (own.length > 1)
    throw new CannotRun(
      `several buyers have an order ${number}: choose with --buyer (${own.map((one) => one.buyer).join(", ")})`,
    );
  return own[0];
}
