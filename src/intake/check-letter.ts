import type { Claim, Outcome } from "../ports/store.ts";
import { after } from "./answer.ts";
import type { Desk } from "./desk.ts";
import { judge } from "./judgement.ts";
import { openClaimed } from "./opened-letter.ts";
import { outcomeOf } from "./outcome.ts";
import { letInAs, sentBy } from "./sent-by.ts";
import { settleOutcome } from "./settle-outcome.ts";
import { whatItSays } from "./understood.ts";

/** How long to wait where a name server could not be asked about the sender, in seconds. */
const askAgain = 600;

/**
 * Takes a letter from its bytes to the record: open it, see who sent it, see what it says, judge what it changes,
 * answer, store.
 */
export async function checkLetter(
  desk: Desk,
  claim: Claim,
  bytes: Uint8Array,
): Promise<Outcome["state"] | "received"> {
  const found = await openClaimed(claim, bytes, desk);
  const sender = claim.letInAs === undefined ? await sentBy(found, bytes, desk) : letInAs(claim.letInAs);
  const { text = found.letter.text } = sender;
  const opened = { ...found, letter: { ...found.letter, text } };
  // Asking again helps only with name servers. What our mail server found stands in the letter and never changes.
  if (sender.proof === "temporary" && desk.rules.authority === undefined && claim.opened < 3) {
    const due = after(askAgain, desk);
    await desk.store.letters.mark(
      claim,
      "received",
      "the sender could not be proved just now",
      desk.clock.now(),
      due,
    );
    return "received";
  }
  return settleOutcome(desk, claim, async () => {
    const said = await whatItSays(opened, sender, desk);
    const judgement = await judge(opened, said, desk);
    return outcomeOf(opened, sender, said, judgement, bytes, desk);
  });
}
