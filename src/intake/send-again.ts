import type { By } from "../ports/store.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import type { Said } from "./settle.ts";

/** Has the answer to a letter sent once more, if it still says how its orders stand. */
export async function sendAgain({ store, clock }: Desk, letter: number, by: By): Promise<Said> {
  const record = await store.letters.read(letter).catch(() => undefined);
  for (const number of record?.orders ?? [])
    for (const order of await store.orders.named(number)) {
      const since = changedSince(order, letter);
      if (since !== undefined)
        return {
          done: false,
          words: `It is not sent again: order ${order.number} has changed since, by letter ${since}. Send the answer to that one again, or write on the order's page.`,
        };
    }
  return (await store.letters.sendAgain(letter, by, clock.now()))
    ? { done: true, words: "The worker sends the answer once more." }
    : { done: false, words: "It has no answer that could be sent again." };
}

/** The letter or note that has changed an order last, if that was after a letter about it was answered. */
function changedSince({ letters, replies, revisions }: OrderRecord, letter: number): number | undefined {
  const last = revisions.at(-1)?.letter;
  if (last === undefined || ![...letters, ...replies].some((one) => one.letter === letter)) return undefined;
  // One that has waited may have changed the order after letters that came behind it.
  const own = revisions.some((one) => one.letter === letter);
  return (own ? last !== letter : last > letter) ? last : undefined;
}
