import { type Claim, ClaimLost, opensInTurn } from "../ports/store.ts";
import { readHeader } from "../reading/letter/letter.ts";
import { letterKey } from "../reading/letter/letter-key.ts";
import type { LetterState } from "../trade/record.ts";
import { after, lookForAnswer, sendAnswer } from "./answer.ts";
import { checkLetter } from "./check-letter.ts";
import { checkNote } from "./check-note.ts";
import type { Desk } from "./desk.ts";
import { tooMany } from "./too-many.ts";
import { leaveUnopened } from "./unopened.ts";

/**
 * A letter that ends the program is opened so many times, one after the other. Then it rests, which counts as one
 * opening more. Then it is opened a last time, since its deaths may have been chance.
 */
const rested = opensInTurn + 1;
const lastOpened = rested + 1;

/** How long it rests, in seconds. */
const rest = 900;

/** How long to wait after a failure, in seconds. The cause may be the letter, or a disk that is full. */
const tryAgain = 60;

/** A letter that is in the record. */
export interface Taken {
  readonly letter: number;
  /** It was in the record already. */
  readonly again: boolean;
}

/** What to do next: one letter, what waits in a lane, or whatever is due. */
export type Next = { readonly letter: number } | { readonly lane: string } | "due";

/** Called for each letter that a fault of the program put aside. */
export type Aside = (letter: number) => void;

/** Takes one letter from the mailbox to its answer. A letter seen before is not answered again. */
export async function takeLetter(
  desk: Desk,
  bytes: Uint8Array,
  receivedAt: Date,
  aside?: Aside,
): Promise<Taken> {
  const { lane, ...taken } = await receiveLetter(desk, bytes, receivedAt);
  const isMine = (await takeNext(desk, taken, aside)) !== undefined;
  // Letters that waited for this one need not wait any longer.
  if (isMine && lane !== undefined) while ((await takeNext(desk, { lane }, aside)) !== undefined);
  return taken;
}

/** Puts a letter into the record, unless it is there. Letters of one mailbox come one after the other, oldest first. */
export async function receiveLetter(
  desk: Desk,
  bytes: Uint8Array,
  receivedAt: Date,
): Promise<Taken & { readonly lane?: string }> {
  const lane = laneOf((await readHeader(bytes)).from, desk.rules.sharedDomains);
  const { letter, again } = await desk.store.letters.receive(letterKey(bytes), bytes, receivedAt, lane);
  return { letter, again, ...(lane === undefined ? {} : { lane }) };
}

/** Letters of one company are judged one after the other; those of a shared domain, sender by sender. */
export function laneOf(from: string | undefined, sharedDomains: readonly string[]): string | undefined {
  const domain = from?.split("@").at(-1);
  return domain === undefined || sharedDomains.includes(domain) ? from : domain;
}

/** Takes up the oldest letter that is due. False when there is none. */
export async function takeDue(desk: Desk, aside?: Aside): Promise<boolean> {
  return (await takeNext(desk, "due", aside)) !== undefined;
}

/** Takes up what comes next, as far as it goes now: its number, or undefined when there is nothing to take up. */
export async function takeNext(desk: Desk, next: Next, aside?: Aside): Promise<number | undefined> {
  const { store, clock, rules } = desk;
  const [now, until] = [clock.now(), after(rules.lease, desk)];
  const claim =
    next !== "due" && "letter" in next
      ? await store.letters.claim(next.letter, now, until)
      : await store.letters.claimDue(now, until, next === "due" ? undefined : next.lane);
  if (claim !== undefined) await takeOn(desk, claim, aside);
  return claim?.letter;
}

async function takeOn(desk: Desk, taken: Claim, aside: Aside = () => undefined): Promise<void> {
  const { store, clock, log, rules } = desk;
  const { letter } = taken;
  const hand = { claim: taken };
  const signOfLife = setInterval(
    () => void store.letters.renew(taken, after(rules.lease, desk)).catch(() => undefined), // shows when it is written
    (rules.lease * 1000) / 3,
  );
  try {
    await nextStep(desk, hand);
  } catch (cause) {
    if (cause instanceof ClaimLost) {
      log.warn({ letter }, "letter taken up by another worker");
      return;
    }
    // One letter that the program cannot cope with costs its own answer and nothing else.
    log.warn({ letter, cause }, "letter put aside: the program failed on it");
    aside(letter);
    const { claim } = hand;
    const why = `the program failed on it: ${cause instanceof Error ? cause.message : ""}`;
    // The letter may have got further since it was taken up.
    const { state } = await store.letters.read(letter);
    if (state === "received" && claim.opened <= opensInTurn)
      await store.letters.mark(claim, "received", why, clock.now(), after(tryAgain, desk));
    else if (state === "received" && claim.opened === lastOpened) {
      const left = await leaveUnopened(desk, claim, why);
      if (left === "ready") await sendAnswer(desk, { ...claim, state: left });
    } else if (state === "received") await store.letters.mark(claim, "held", why, clock.now());
    // The answer may have gone whatever failed, so it is looked for first.
    else await store.letters.mark(claim, "unknown", why, clock.now(), after(rules.grace, desk));
  } finally {
    clearInterval(signOfLife);
  }
}

async function nextStep(desk: Desk, hand: { claim: Claim }): Promise<void> {
  const { store, clock, rules } = desk;
  const { claim } = hand;
  switch (claim.state) {
    case "received": {
      const bytes = await store.letters.bytesOf(claim.letter);
      const opened = await store.letters.opening(claim);
      hand.claim = opened;
      const why = `the program ended ${opensInTurn + 1} times while it was open`;
      if (opened.opened === rested)
        return store.letters.mark(opened, "received", "it rests", clock.now(), after(rest, desk));
      if (opened.opened > lastOpened + 1) return store.letters.mark(opened, "held", why, clock.now());
      // Its header tells who sent it. If reading that ends the program too, a person looks.
      const state =
        opened.opened > lastOpened
          ? await leaveUnopened(desk, opened, why)
          : await checkInTurn(desk, opened, bytes);
      if (state === "ready") await sendAnswer(desk, { ...opened, state });
      return;
    }
    case "ready":
    case "later":
      await sendAnswer(desk, claim);
      return;
    case "sending":
      // The worker that was sending it has died.
      await store.letters.mark(
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

/** Checks a letter, unless its sender has had enough answers for now. */
async function checkInTurn(desk: Desk, claim: Claim, bytes: Uint8Array): Promise<LetterState> {
  const { store, clock, log } = desk;
  if (claim.kind === "note") return checkNote(desk, claim, bytes);
  if (claim.letInAs !== undefined) return checkLetter(desk, claim, bytes);
  const many = await tooMany(desk, bytes, claim.waitsSince);
  if (many === undefined) return checkLetter(desk, claim, bytes);
  const { sender, why, until } = many;
  log.info({ letter: claim.letter, why }, "letter waits for its turn");
  if (until === undefined) return leaveUnopened(desk, claim, why, false);
  await store.letters.letWait(claim, { sender, why, until }, clock.now());
  return "received";
}
