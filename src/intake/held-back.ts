import { mayBelongTo } from "../judging/may-belong.ts";
import type { Store, Unread } from "../ports/store.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import { laneOf } from "./take.ts";

/**
 * Why an order that has passed is not to be released yet: something that may concern it waits, is held, is unread or
 * unanswered. Who releases by hand knows what letters about other orders or of strangers say; nobody does where it
 * goes `byItself`.
 */
export async function heldBack(
  { buyer, number }: Pick<OrderRecord, "buyer" | "number">,
  {
    store,
    rules,
  }: {
    readonly store: Pick<Store, "orders" | "buyers">;
    readonly rules: Pick<Desk["rules"], "sharedDomains">;
  },
  byItself = false,
): Promise<string[]> {
  const unread = await store.orders.unreadBeside({ buyer, number }, laneOf(buyer, rules.sharedDomains));
  const letters = unread.filter(({ isOfOthers }) => byItself || !isOfOthers);
  return [...letters.map(saysOf), ...mayBelongTo(number, await store.buyers.stateOf(buyer, [number]))];
}

function saysOf({ letter, from, how }: Unread): string {
  const of = `letter ${letter}${from === undefined ? "" : ` of ${from}`}`;
  const says: Readonly<Record<Unread["how"], string>> = {
    waits: `${of} waits to be judged, and may concern it`,
    held: `${of} is held for a person, and may concern it`,
    unread: `${of} is for a person to read, and may concern it`,
  };
  const done = `burin settle --letter ${letter} --aside`;
  return how === "waits" ? says[how] : `${says[how]} (once it is dealt with: ${done})`;
}
