import type { Desk } from "./desk.ts";

/**
 * Sends the finished answer of a letter. `sending` is in the record before the sender speaks, so that a
 * death in between is seen as what it is: unknown, to be looked for and not simply sent again.
 */
export async function sendAnswer({ store, sender, clock, log }: Desk, letter: number): Promise<void> {
  const answer = await store.answer(letter);
  if (answer === undefined) return; // held: no answer is due
  await store.mark(letter, "sending", "", clock.now());
  const { kind, words } = await sender.send(answer);
  await store.mark(letter, kind, words, clock.now());
  log.info({ letter, kind }, "answer handed over");
}
