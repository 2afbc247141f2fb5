import { randomUUID } from "node:crypto";
import { setTimeout as wait } from "node:timers/promises";
import { dateIn, timeIn } from "../calendar/dates.ts";
import { sendAlarms } from "../intake/alarm.ts";
import { managersToAsk } from "../intake/ask-manager.ts";
import { takeNote } from "../intake/check-note.ts";
import { dayLettersDue } from "../intake/day-letter.ts";
import type { Desk } from "../intake/desk.ts";
import { eraseDue, finishErasing } from "../intake/erase.ts";
import { type Put, packagesDue, releaseOrder, releasesDue, writeReleased } from "../intake/release.ts";
import { remindersOf } from "../intake/remind.ts";
import { summariesDue } from "../intake/summary.ts";
import { type Next, receiveLetter, takeNext } from "../intake/take.ts";
import { sendNotice } from "../intake/tell-people.ts";
import type { Health } from "../ports/health.ts";
import type { Load } from "../ports/load.ts";
import type { Mail, Mailbox, Shelf } from "../ports/mailbox.ts";
import { PackageThere } from "../store/package-folder.ts";
import type { LetterRecord, OrderRecord } from "../trade/record.ts";
import { alone, type Holder } from "./alone.ts";
import { type Hands, openHands } from "./hands.ts";
import { openMarks } from "./marks.ts";

/** So many letters of one mailbox are judged at once: as many as there are readers. */
const lettersAtOnce = 2;

/** So many letters of one mailbox are put into the record before they are judged, for whoever is free. */
const receivedAhead = 20;

/** So many letters that other workers may have judged are looked at in a row, to put them on their shelves. */
const shelvedAtOnce = 100;

/** How often the record is asked for letters that have become due, in milliseconds. */
const lookEvery = 5000;

/** How long to wait before a mailbox is read again from its mark, after a letter was left undone. In milliseconds. */
const againAfter = 60_000;

/** How long to wait before a notice that could not be sent is tried again, in milliseconds. */
const noticeAgain = 300_000;

/** How often it is looked whether reminders are due, in milliseconds. */
const remindEvery = 3_600_000;

/** How often it is looked whether the letter about a day is due, in milliseconds. */
const dayEvery = 60_000;

/** How often it is looked whether a released order has no package, in milliseconds. */
const packagesEvery = 300_000;
/** What is erased by itself is erased before this time of the day, when nobody waits for the record. */
const nightEnds = "05:00";

/** Free bytes that the record's disk must have before a letter is taken up. The largest letter unpacks to less. */
const leastRoom = 256_000_000;

/** How often a sender that failed is tried, in milliseconds. */
const senderAgain = 60_000;

/**
 * Within so many seconds a mailbox has to be looked at again, or give a letter. Twice the longest poll of the
 * settings.
 */
const longestLook = 1200;

/** The parts of a worker that report their health, beside its mailboxes and its sender. */
const disk = "the record's disk";
const dueLetters = "worker";

/** Where letters come from that are in the record already. */
const theRecord = "";

/** What a run came to. */
export interface Tally {
  readonly taken: number;
  readonly again: number;
  /** Letters that could not be handled now. */
  readonly left: number;
  /** Letters that a fault of the program put aside. They are tried again, or wait for a person. */
  readonly aside: number;
  /** Mailboxes that could not be read to their end. Counted with `once` alone: otherwise they are read again. */
  readonly unread: number;
}

/** A letter that lies in its mailbox, and what to call when it is done with there. */
interface Lying {
  readonly mail: Mail;
  readonly done: () => Promise<void>;
}

interface Run {
  readonly desk: Desk;
  readonly holder: Holder;
  readonly health: Pick<Health, "good" | "bad" | "troubles">;
  readonly once: boolean;
  readonly signal: AbortSignal;
  readonly tally: { -readonly [key in keyof Tally]: number };
  readonly hands: Hands;
  readonly load?: Load;
  /** Letters in the record whose place in the mailbox is not known yet. */
  readonly unshelved: Map<number, readonly Lying[]>;
  /** When customer service may be told next, in milliseconds since 1970. */
  nextNotice: number;
  /** When it is looked next whether reminders are due, in milliseconds since 1970. */
  nextReminders: number;
  /** When it is looked next whether the letter about a day is due, in milliseconds since 1970. */
  nextDay: number;
  /** When it is looked next whether a released order has no package, in milliseconds since 1970. */
  nextPackages: number;
  /** The day of the last erasing, where the desk stands. */
  erasedOn: string;
  /** When a sender that failed is tried next, in milliseconds since 1970. */
  nextTry: number;
}

/**
 * Reads the mailboxes and answers every letter once. Stops at the signal, after the letters in hand. With `once` it
 * ends when no letter is left that could be handled now.
 */
export async function runWorker(
  desk: Desk,
  mailboxes: readonly Mailbox[],
  options: {
    readonly once: boolean;
    readonly signal: AbortSignal;
    readonly health?: Run["health"];
    readonly load?: Load;
  },
): Promise<Tally> {
  const run: Run = {
    desk,
    holder: { leases: desk.store.leases, clock: desk.clock, name: randomUUID() },
    health: { good: () => undefined, bad: () => undefined, troubles: () => [] },
    ...options,
    tally: { taken: 0, again: 0, left: 0, aside: 0, unread: 0 },
    // One hand more, for a mailbox that is alone among floods.
    hands: openHands(lettersAtOnce + 1, lettersAtOnce),
    unshelved: new Map(),
    nextNotice: 0,
    nextReminders: 0,
    nextDay: 0,
    nextPackages: 0,
    erasedOn: "",
    nextTry: 0,
  };
  const read = run.once ? readOnce : keepReading;
  await Promise.all([
    Promise.all(mailboxes.map((mailbox) => read(run, mailbox))),
    run.once ? takeAllDue(run) : keepTakingDue(run),
  ]);
  if (run.once) {
    await shelveRest(run);
    await remindBuyers(run);
    await writePackages(run);
    await tellOfDay(run);
    await takeAllDue(run);
    await tellPeople(run);
  }
  return run.tally;
}

/** One mailbox that cannot be read keeps nobody from reading the others. */
async function readOnce(run: Run, mailbox: Mailbox): Promise<void> {
  await readMailbox(run, mailbox).catch((cause: unknown) => {
    run.tally.unread++;
    run.desk.log.warn({ mailbox: mailbox.name, cause }, "the mailbox could not be read to its end");
  });
}

/**
 * Reads again from the mark whenever a letter was left. The mark stops before the first letter that could not be
 * taken. A mailbox that another worker watches is left to it.
 */
async function keepReading(run: Run, mailbox: Mailbox): Promise<void> {
  const { desk, health, holder, signal } = run;
  const part = partOf(mailbox);
  const read = (until: AbortSignal): Promise<void> => readMailbox({ ...run, signal: until }, mailbox);
  while (!signal.aborted) {
    try {
      const isOurs =
        mailbox.isShared === undefined
          ? await read(signal).then(() => true)
          : await alone(holder, part, signal, read);
      if (!isOurs) health.good(part, longestLook);
    } catch (cause) {
      health.bad(part, "it, or the record, failed; the log says why");
      desk.log.warn({ mailbox: mailbox.name, cause }, "the mailbox or the record failed; beginning again");
    }
    await pause(lookEvery, signal);
  }
}

/** With `once` no lease is asked for: reading a mailbox twice does no harm, since the record knows its letters. */
async function readMailbox(run: Run, mailbox: Mailbox): Promise<void> {
  const { store } = run.desk;
  const since = await store.mailboxes.markOf(mailbox.name);
  const pass = new AbortController();
  let timer: NodeJS.Timeout | undefined;
  const part = partOf(mailbox);
  const options = {
    once: run.once,
    signal: AbortSignal.any([run.signal, pass.signal]),
    looked: () => run.health.good(part, longestLook),
    failed: (why: string) => run.health.bad(part, `it cannot be read: ${why}`),
  };
  const { begin, oldest } = openMarks((mark) => store.mailboxes.setMark(mailbox.name, mark));
  run.load?.lies(mailbox.name, oldest);
  const inHand = new Set<Promise<void>>();
  try {
    for await (const mail of mailbox.letters({ ...options, ...(since === undefined ? {} : { since }) })) {
      // The mark stays before a letter that could not be taken, so that the letter is read again.
      const done = begin(mail);
      while (inHand.size >= receivedAhead) await Promise.race(inHand);
      if (run.signal.aborted) return;
      const received = await receiveMail(run, mailbox, mail);
      if (received === undefined) timer ??= setTimeout(() => pass.abort(), againAfter);
      // A letter that could be taken shows that the mailbox works.
      else run.health.good(part, longestLook);
      if (received === "gone") await done();
      else if (received !== undefined) {
        const { letter } = received;
        run.unshelved.set(letter, [...(run.unshelved.get(letter) ?? []), { mail, done }]);
        const working = answerMail(run, mailbox, received);
        inHand.add(working);
        void working.finally(() => inHand.delete(working));
      }
      if (run.signal.aborted) return;
    }
  } finally {
    clearTimeout(timer);
    await Promise.all(inHand);
  }
}

type Received = Awaited<ReturnType<typeof receiveLetter>>;

/** Puts a letter of a mailbox into the record. Undefined where that cannot be done now; "gone" where it is no more. */
async function receiveMail(run: Run, mailbox: Mailbox, mail: Mail): Promise<Received | "gone" | undefined> {
  const { desk, tally } = run;
  const fields = { mailbox: mailbox.name, mail: mail.name };
  try {
    if (!(await thereIsRoom(run))) {
      tally.left++;
      return undefined;
    }
    const bytes = await mail.bytes();
    if (bytes === undefined) {
      desk.log.info(fields, "letter gone before it could be read");
      return "gone";
    }
    const received = await receiveLetter(desk, bytes, mail.receivedAt);
    if (received.again) tally.again++;
    else tally.taken++;
    return received;
  } catch (cause) {
    tally.left++;
    desk.log.warn({ ...fields, cause }, "letter left where it is, to be taken again");
    return undefined;
  }
}

/** Takes a letter in the record to its answer, then those of its lane that have waited for it, and lets go. */
async function answerMail(run: Run, { name }: Mailbox, { letter, lane }: Received): Promise<void> {
  const { desk, tally, hands, signal } = run;
  let next: Next | undefined = { letter };
  while (next !== undefined) {
    const letGo = await hands.take(name);
    try {
      const isTaken: boolean = !signal.aborted && (await takeInHand(run, next));
      next = isTaken && lane !== undefined ? { lane } : undefined;
    } catch (cause) {
      tally.left++;
      desk.log.warn({ letter, cause }, "letter left in the record, to be taken up again");
      next = undefined;
    } finally {
      letGo();
    }
  }
  await shelve(run, letter);
}

/** Takes up what comes next and puts it on its shelf. False when there is nothing to take up. */
async function takeInHand(run: Run, next: Next): Promise<boolean> {
  const letter = await takeNext(run.desk, next, asideOf(run));
  if (letter === undefined) return false;
  await shelve(run, letter, true);
  return true;
}

/**
 * Puts a letter on its shelf, if it lies in a mailbox still. The mailbox is only a view of the record: losing this step
 * loses nothing. One that only waits for another of its lane is not done with, so that a next run finds it again.
 */
async function shelve(
  { desk: { store, log }, unshelved }: Run,
  letter: number,
  isTried = false,
): Promise<void> {
  const lying = unshelved.get(letter);
  if (lying === undefined) return;
  try {
    const record = await store.letters.read(letter);
    const shelf = shelfOf(record);
    // Those that nobody knows of yet stand last.
    unshelved.delete(letter);
    if (shelf === undefined) unshelved.set(letter, lying);
    for (const { mail, done } of lying) {
      if (shelf !== undefined)
        await mail
          .shelve(shelf)
          .catch((cause: unknown) => log.warn({ letter, cause }, "letter not put on its shelf"));
      if (isTried || record.state !== "received") await done();
    }
  } catch (cause) {
    log.warn({ letter, cause }, "letter not put on its shelf");
  }
}

async function shelveRest(run: Run): Promise<void> {
  const letters = [...run.unshelved.keys()];
  for (const letter of run.once ? letters : letters.slice(0, shelvedAtOnce)) await shelve(run, letter);
}

/** Where a letter belongs in the mailbox; undefined while nobody knows yet. */
function shelfOf({ state, verdict }: LetterRecord): Shelf | undefined {
  if (state === "silent") return "silent";
  if (state === "held" || state === "refused") return "person";
  if (verdict === undefined) return undefined;
  return (
    { pass: "passed", fail: "to-correct", confirm: "waiting", waiting: "waiting", person: "person" } as const
  )[verdict];
}

/** Whether the record has room for another letter. Waits until it has; with `once` it looks a single time. */
async function thereIsRoom({ desk: { store, log }, health, once, signal }: Run): Promise<boolean> {
  for (let looks = 1; !signal.aborted; looks++) {
    const room = await store.room();
    if (room >= leastRoom) {
      health.good(disk);
      return true;
    }
    health.bad(disk, "nearly full: no letter is taken up");
    if (looks === 1) log.warn({ room, leastRoom }, "the record's disk is nearly full: no letter is taken up");
    if (once) break;
    await pause(lookEvery, signal);
  }
  return false;
}

async function takeAllDue(run: Run): Promise<void> {
  await Promise.all(Array.from({ length: lettersAtOnce }, () => takeDueInTurn(run)));
}

async function takeDueInTurn(run: Run): Promise<void> {
  for (let isMore = true; isMore; ) {
    if (run.signal.aborted || !(await thereIsRoom(run))) break;
    const letGo = await run.hands.take(theRecord);
    try {
      isMore = !run.signal.aborted && (await takeInHand(run, "due"));
    } finally {
      letGo();
    }
    run.health.good(dueLetters, longestStep(run));
  }
  run.health.good(dueLetters, longestStep(run));
}

function asideOf({ tally }: Run): () => void {
  return () => {
    tally.aside++;
  };
}

function partOf({ name }: Mailbox): string {
  return `mailbox ${name}`;
}

/**
 * The longest that one letter may take, in seconds: the server's patience with an answer, and time to read and check.
 */
function longestStep({ desk }: Run): number {
  return desk.rules.patience + 600;
}

async function keepTakingDue(run: Run): Promise<void> {
  run.health.good(dueLetters, longestStep(run));
  await run.desk.sender.tryOut?.().catch(() => undefined); // shows in its health
  // Waits first. A letter over which a worker has died must not be opened at each start before all others.
  await pause(lookEvery, run.signal);
  while (!run.signal.aborted) {
    await takeAllDue(run).catch((cause: unknown) => {
      run.health.bad(dueLetters, "the record failed; the log says why");
      run.desk.log.warn({ cause }, "the record failed; looking for due letters later");
    });
    await trySender(run);
    await shelveRest(run);
    await remindBuyers(run);
    await writePackages(run);
    await tellOfDay(run);
    await tellPeople(run);
    await run.desk.store.letters.arrival(lookEvery, run.signal);
  }
}

/** Tries a sender that failed. It is known to work again even while no answer is due. */
async function trySender(run: Run): Promise<void> {
  const { desk, health } = run;
  const now = desk.clock.now().getTime();
  if (now < run.nextTry || !health.troubles().some(({ part }) => part === "sender")) return;
  run.nextTry = now + senderAgain;
  await desk.sender.tryOut?.().catch(() => undefined); // shows in its health
}

/**
 * Reminds buyers whose orders wait for them, and tells managers of their weeks; one worker at a time does. The worker
 * sends the reminders as it sends answers.
 */
async function remindBuyers(run: Run): Promise<void> {
  const { desk, holder, signal } = run;
  const now = desk.clock.now().getTime();
  if (signal.aborted || now < run.nextReminders) return;
  run.nextReminders = now + remindEvery;
  try {
    await alone(holder, "what is due by the hour", signal, async () => {
      for (const note of await remindersOf(desk)) {
        const taken = await takeNote(desk, note);
        if (taken.kind === "wrong") desk.log.warn({ why: taken.why }, "a buyer could not be reminded");
      }
      for (const note of [...(await managersToAsk(desk)), ...(await summariesDue(desk))])
        await takeNote(desk, note);
      await releaseDue(run);
      await eraseOld(run);
    });
  } catch (cause) {
    desk.log.warn({ cause }, "the record, or a disk, failed; reminding, releasing and erasing later");
  }
}

/** Has the letter about a day made. The worker sends it as it sends answers. */
async function tellOfDay(run: Run): Promise<void> {
  const { desk } = run;
  const now = desk.clock.now().getTime();
  if (run.signal.aborted || now < run.nextDay) return;
  run.nextDay = now + dayEvery;
  try {
    await alone(run.holder, "the letter about a day", run.signal, async () => {
      for (const note of await dayLettersDue(desk)) await takeNote(desk, note);
    });
  } catch (cause) {
    desk.log.warn({ cause }, "the record failed; telling of the day later");
  }
}

/** Writes packages of released orders of which a death has kept their writer. */
async function writePackages(run: Run): Promise<void> {
  const { desk, holder, signal } = run;
  const { packages } = desk.rules;
  const now = desk.clock.now().getTime();
  if (packages === undefined || signal.aborted || now < run.nextPackages) return;
  run.nextPackages = now + packagesEvery;
  try {
    await alone(holder, "packages", signal, async () => {
      for (const order of await packagesDue(desk)) await writePackage(desk, order, packages);
    });
  } catch (cause) {
    desk.log.warn({ cause }, "the record failed; packages are written later");
  }
}

/** One package that cannot be written keeps no other back. One that is there was written before the death. */
async function writePackage(desk: Desk, order: OrderRecord, put: Put): Promise<void> {
  const { buyer, number } = order;
  try {
    const written = await writeReleased(desk, order, put);
    if (written.ok) desk.log.info({ path: written.path }, "the package of a released order was written");
    else desk.log.warn({ why: written.why }, "the package of a released order cannot be made");
  } catch (cause) {
    if (cause instanceof PackageThere) await desk.store.orders.packed(buyer, number);
    else desk.log.warn({ cause }, "the package of an order could not be written");
  }
}

/** Releases orders that the settings let go by themselves. */
async function releaseDue({ desk, signal }: Run): Promise<void> {
  const { releasing } = desk.rules;
  if (releasing === undefined || signal.aborted) return;
  for (const { buyer, number } of await releasesDue(desk)) {
    // One package that cannot be written keeps no other back.
    const { put } = releasing;
    const released = await releaseOrder(desk, number, "Burin", put, buyer).catch((cause: unknown) => {
      desk.log.warn({ cause }, "the package of an order could not be written");
    });
    if (released === undefined) continue;
    if (released.ok) desk.log.info({ path: released.path }, "an order was released by itself");
    else desk.log.warn({ why: released.why }, "an order could not be released by itself");
  }
}

/** Erases at night what is older than the settings say, and does what an earlier erasing has left undone. */
async function eraseOld(run: Run): Promise<void> {
  const { desk, once, signal } = run;
  if (signal.aborted) return;
  await finishErasing(desk);
  const now = desk.clock.now();
  const today = dateIn(now, desk.timeZone);
  const isNight = timeIn(now, desk.timeZone) < nightEnds;
  if (run.erasedOn === today || !(isNight || once)) return;
  run.erasedOn = today;
  const { people, inTheWay, deleted } = await eraseDue(desk);
  if (people === 0 && inTheWay.length === 0) return;
  const { packages, notFound, isFree } = deleted;
  desk.log.info(
    { people, inTheWay, packages, notFound, isFree },
    "what the settings keep no longer was erased",
  );
}

async function tellPeople(run: Run): Promise<void> {
  const { desk } = run;
  const now = desk.clock.now().getTime();
  if (run.signal.aborted || now < run.nextNotice) return;
  await sendAlarms(desk).catch((cause: unknown) =>
    desk.log.warn({ cause }, "the record failed; telling the engraving room later"),
  );
  const telling = await sendNotice(desk).catch((cause: unknown) => {
    desk.log.warn({ cause }, "the record failed; telling people of what waits later");
    return "failed" as const;
  });
  // The record makes sure that people are told once an hour at most.
  if (telling === "failed") run.nextNotice = now + noticeAgain;
}

async function pause(ms: number, signal: AbortSignal): Promise<void> {
  await wait(ms, undefined, { signal }).catch(() => undefined);
}
