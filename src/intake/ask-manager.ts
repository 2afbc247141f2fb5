import { managerWord } from "../checks/order/manager-word.ts";
import { orderKey } from "../judging/state.ts";
import { managerOf } from "../orders/managed.ts";
import type { Note } from "../trade/note.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import { calendarName } from "./remind.ts";

/**
 * The notes by which managers are asked apart. Where an answer was about orders of others too, its manager had no copy
 * and does not know that an order waits for his word.
 */
export async function managersToAsk(desk: Desk): Promise<Note[]> {
  if (!desk.rules.managing.some(({ waits }) => waits)) return [];
  const orders = await desk.store.people.orders();
  const notes = await Promise.all(orders.map((order) => askingAbout(order, desk)));
  return notes.flatMap((note) => note ?? []);
}

async function askingAbout(order: OrderRecord, { store, rules }: Desk): Promise<Note | undefined> {
  const { number, buyer, questions, letters, changedAt } = order;
  const manager = managerOf(order, rules.managing)?.manager;
  if (manager === undefined || !questions.some(({ problem }) => problem.check === managerWord.id))
    return undefined;
  const last = Math.max(0, ...letters.map(({ letter }) => letter));
  const answer = await store.answers.of(last);
  if (
    answer === undefined ||
    answer.copies?.includes(manager.address) ||
    answer.recipient === manager.address
  )
    return undefined;
  return {
    id: `asking ${manager.address} about ${buyer} ${orderKey(number)} since ${changedAt.toISOString()}`,
    buyer,
    order: number,
    by: calendarName,
    why: "its manager is asked",
    acts: [
      {
        kind: "write",
        words: `Our last letter was about other orders too. This one is about order ${number} alone, for ${manager.name} to agree.`,
      },
    ],
  };
}
