import { type Claim, type Outcome, StateMoved } from "../ports/store.ts";
import type { Desk } from "./desk.ts";

/** How often a letter is judged while its buyer's state moves each time. Then it is left for later. */
const mostRaces = 5;

/** Stores what `judge` comes to. If the buyer's state has moved meanwhile, it is judged again. */
export async function settleOutcome(
  { store, clock, log }: Desk,
  claim: Claim,
  judge: () => Promise<Outcome>,
): Promise<Outcome["state"]> {
  for (let race = 1; ; race++) {
    const outcome = await judge();
    try {
      await store.letters.settle(claim, outcome, clock.now());
      return outcome.state;
    } catch (cause) {
      if (!(cause instanceof StateMoved) || race === mostRaces) throw cause;
      log.info({ letter: claim.letter, race }, "judged again: the buyer's orders have moved meanwhile");
    }
  }
}
