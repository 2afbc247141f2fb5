import type { Claim, StoredAnswer } from "../ports/store.ts";
import type { Desk } from "./desk.ts";

// RFC 5321 §4.5.4.1: retries are spread out, and a sender gives up after 4 to 5 days.
const firstWait = 60;
const longestWait = 4 * 3600;
const mostTries = 36;

/** How often an answer may be sent whose fate stays unknown. */
const mostUnsure = 3;

/** A claim outlasts the patience with the server by so many seconds at most. */
const margin = 60;

/**
 * Sends the finished answer of a letter. The record says `sending` before the sender speaks. After a death in between
 * the answer is unknown: it is looked for, and not simply sent again.
 */
export async function sendAnswer(desk: Desk, claim: Claim): Promise<void> {
  const { store, sender, clock, log } = desk;
  const answer = await store.answers.of(claim.letter);
  if (answer === undefined) throw new Error(`letter ${claim.letter} has no answer to send`);
  const { lease, patience } = desk.rules;
  // Nobody else may look for the answer while the server may still say that it has it.
  await store.letters.renew(claim, after(Math.max(lease, patience + Math.min(margin, patience)), desk));
  await store.letters.mark(claim, "sending", "", clock.now());
  const sending = await sender.send(answer);
  const { kind, words } = sending;
  const tries = claim.tries + 1;
  if (kind === "later" && tries >= mostTries)
    await store.letters.mark(claim, "refused", `given up after ${tries} tries: ${words}`, clock.now());
  else if (kind === "later") await store.letters.mark(claim, kind, words, clock.now(), waitFor(tries, desk));
  else if (kind === "unknown")
    await store.letters.mark(claim, kind, words, clock.now(), after(desk.rules.grace, desk));
  else if (sending.kind === "sent") await store.letters.sent(claim, words, sending.unreached, clock.now());
  else await store.letters.mark(claim, "refused", words, clock.now());
  log.info({ letter: claim.letter, kind, tries }, "answer handed over");
}

/** Looks for an answer whose fate is unknown. If it is found it was sent; if not, it is sent again. */
export async function lookForAnswer(desk: Desk, claim: Claim): Promise<void> {
  const { store, sender, clock, log } = desk;
  const answer = await store.answers.of(claim.letter);
  const found =
    answer === undefined
      ? undefined
      : await sender.find(answer.messageId).catch((cause: unknown) => {
          log.warn({ letter: claim.letter, cause }, "cannot look just now whether an answer went out");
          return "later" as const;
        });
  if (found === "later")
    await store.letters.mark(
      claim,
      "unknown",
      "could not be looked for just now",
      clock.now(),
      after(desk.rules.grace, desk),
    );
  else if (found === undefined)
    await store.letters.mark(claim, "held", "nobody can see whether the answer went out", clock.now());
  else if (found)
    await store.letters.sent(claim, "found among the answers sent", copiesUnsure(answer), clock.now());
  else if ((claim.unsure ?? 0) >= mostUnsure)
    await store.letters.mark(
      claim,
      "held",
      `its answer was sent ${claim.unsure} times and never found among the answers sent; it may have arrived`,
      clock.now(),
    );
  else await sendAnswer(desk, claim);
}

/** What the server said of copies is lost with the program that asked it. The recipient had to be taken, they not. */
function copiesUnsure(answer: StoredAnswer | undefined): string | undefined {
  const { copies = [] } = answer ?? {};
  return copies.length === 0 ? undefined : `nobody knows whether its copy reached ${copies.join(", ")}`;
}

/** The moment some seconds from now. */
export function after(seconds: number, { clock }: Pick<Desk, "clock">): Date {
  return new Date(clock.now().getTime() + seconds * 1000);
}

function waitFor(tries: number, desk: Desk): Date {
  const wait = Math.min(longestWait, firstWait * 2 ** (tries - 1));
  return after(wait * (0.75 + desk.chance() / 2), desk);
}
