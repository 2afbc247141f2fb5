import { type Claim, ClaimLost } from "../ports/store.ts";
import { readHeader } from "../reading/letter/letter.ts";
import { letterKey } from "../reading/letter/letter-key.ts";
import { after, lookForAnswer, sendAnswer } from "./answer.ts";
import { checkLetter, holdUnopened } from "./check.ts";
import type { Desk } from "./desk.ts";

/** Times that checking one letter may be begun. */
const mostOpened = 3;

/** How long to wait after a failure, in seconds: it may lie in the letter, or in a disk that is full. */
const tryAgain = 60;

/** What taking a letter came to. */
export interface Taken {
  readonly letter: number;
  /** It was in the record already. */
  readonly again: boolean;
}

/** Takes one letter from the mailbox to its answer. The same letter, seen again, is answered no second time. */
export async function takeLetter(desk: Desk, bytes: Uint8Array, receivedAt: Date): Promise<Taken> {
  const lane = laneOf((await readHeader(bytes)).from, desk.rules.sharedDomains);
  const { letter, again } = await desk.store.receive(letterKey(bytes), bytes, receivedAt, lane);
  const claim = await desk.store.claim(letter, desk.clock.now(), after(desk.rules.lease, desk));
  if (claim !== undefined) await takeOn(desk, claim);
  // What had to wait for this letter need not wait any longer.
  if (claim !== undefined && lane !== undefined) while (await takeDue(desk, lane));
  return { letter, again };
}

/** Letters of one company are judged one after the other; those of a shared domain, sender by sender. */
function laneOf(from: string | undefined, sharedDomains: readonly string[]): string | undefined {
  const domain = from?.split("@").at(-1);
  return domain === undefined || sharedDomains.includes(domain) ? from : domain;
}

/** Takes on the oldest letter for which something is due, of one lane if one is named; false when there is none. */
export async function takeDue(desk: Desk, lane?: string): Promise<boolean> {
  const claim = await desk.store.claimDue(desk.clock.now(), after(desk.rules.lease, desk), lane);
  if (claim === undefined) return false;
  await takeOn(desk, claim);
  return true;
}

async function takeOn(desk: Desk, claim: Claim): Promise<void> {
  const { store, clock, log, rules } = desk;
  const { letter } = claim;
  const signOfLife = setInterval(
    () => void store.renew(claim, after(rules.lease, desk)).catch(() => undefined), // shows when it is written
    (rules.lease * 1000) / 3,
  );
  try {
    await nextStep(desk, claim);
  } catch (cause) {
    if (cause instanceof ClaimLost) {
      log.warn({ letter }, "letter taken up by another worker");
      return;
    }
    // One letter that the program cannot cope with costs its own answer and nothing else.
    log.warn({ letter, cause }, "letter put aside: the program failed on it");
    const why = `the program failed on it: ${cause instanceof Error ? cause.message : ""}`;
    // It may have got further than it was when taken up.
    const { state } = await store.letter(letter);
    if (state === "received" && claim.opened < mostOpened)
      await store.mark(claim, "received", why, clock.now(), after(tryAgain, desk));
    else if (state === "received" && claim.opened === mostOpened) await holdUnopened(desk, claim, why);
    else if (state === "received") await store.mark(claim, "held", why, clock.now());
    // Whatever failed on the way out, the answer may have gone: it is looked for first.
    else await store.mark(claim, "unknown", why, clock.now(), after(rules.grace, desk));
  } finally {
    clearInterval(signOfLife);
  }
}

async function nextStep(desk: Desk, claim: Claim): Promise<void> {
  const { store, clock, rules } = desk;
  switch (claim.state) {
    case "received": {
      const why = `the program ended ${mostOpened} times while it was open`;
      // Whoever sent it is read from its header; unless that is what the program ends over.
      if (claim.opened === mostOpened + 1) return holdUnopened(desk, claim, why);
      if (claim.opened > mostOpened) return store.mark(claim, "held", why, clock.now());
      const state = await checkLetter(desk, claim, await store.bytesOf(claim.letter));
      if (state === "ready") await sendAnswer(desk, { ...claim, state });
      return;
    }
    case "ready":
    case "later":
      await sendAnswer(desk, claim);
      return;
    case "sending":
      // Whoever was sending it died over it.
      await store.mark(
        claim,
        "unknown",
        "the program ended while sending",
        clock.now(),
        after(rules.grace, desk),
      );
      return;
    case "unknown":
      await lookForAnswer(desk, claim);
      return;
    case "sent":
    case "refused":
    case "held":
    case "silent":
      throw new Error(`letter ${claim.letter} is done with: ${claim.state}`);
  }
}
