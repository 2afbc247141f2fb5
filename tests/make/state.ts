import { type BuyerState, type OrderState, orderKey } from "../../src/judging/state.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import type { Sheet } from "../../src/trade/sheet.ts";

/** The state of a buyer whose earlier letters brought these sheets. */
export function stateWith(sheets: readonly Sheet[], changes: Partial<BuyerState> = {}): BuyerState {
  const byOrder = Map.groupBy(gatherOrders(sheets), ({ number }) => orderKey(number));
  const orders = [...byOrder.values()].map((some): OrderState => {
    const ids = new Set(some.flatMap((order) => [...order.sheets, ...order.twice.map(({ again }) => again)]));
    return {
      number: some[0]?.number ?? "",
      sheets: sheets.filter((sheet) => ids.has(sheet)),
      carried: [],
      questions: [],
    };
  });
  return { buyer: "ines@brightwire.example", version: 1, orders, arrivals: new Map(), ...changes };
}
