import { numberPart } from "../orders/keys.ts";
import { tokensOf } from "../reading/reply/word-bag.ts";
import type { OrderState } from "./state.ts";

/** The numbers of the buyer's orders that a text names. Spacing does not matter: "kf 1001" names KF-1001. */
export function ordersNamedIn(
  text: string,
  { orders }: { readonly orders: readonly Pick<OrderState, "number">[] },
): string[] {
  const said = ` ${tokensOf(text).join(" ")} `;
  return orders
    .map(({ number }) => number)
    .filter((number) => isNumber(number) && said.includes(` ${tokensOf(numberPart(number)).join(" ")} `));
}

/** A number has so many words at most, and so many numbers are looked for. */
const mostWords = 4;
const mostNumbers = 500;

/** What in a text may be an order number, such as "kf 1001". Orders of long ago are looked for by it. */
export function numbersPerhapsIn(text: string): string[] {
  const tokens = tokensOf(text);
  const found = new Set<string>();
  for (let i = 0; i < tokens.length && found.size < mostNumbers; i++)
    for (let words = 1; words <= mostWords; words++) {
      const perhaps = tokens.slice(i, i + words).join(" ");
      if (isNumber(perhaps)) found.add(perhaps);
    }
  return [...found];
}

/** Whether a text may be an order number. A shorter one could stand in other words by chance. */
function isNumber(number: string): boolean {
  return number.length > 3 && /\d\d/.test(number);
}
