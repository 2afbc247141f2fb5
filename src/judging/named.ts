import { numberPart } from "../orders/keys.ts";
import { tokensOf } from "../reading/reply/word-bag.ts";
import type { BuyerState } from "./state.ts";

/** The numbers of the buyer's orders that a text names, however they are spaced: "kf 1001" names KF-1001. */
export function ordersNamedIn(text: string, { orders }: BuyerState): string[] {
  const said = ` ${tokensOf(text).join(" ")} `;
  return orders
    .map(({ number }) => number)
    .filter((number) => isNumber(number) && said.includes(` ${tokensOf(numberPart(number)).join(" ")} `));
}

/** A number that other words may hold by chance names no order. */
function isNumber(number: string): boolean {
  return number.length > 3 && /\d\d/.test(number);
}
