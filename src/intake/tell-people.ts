import { composeMessage } from "../answer/message.ts";
import { composeNotice } from "../audit/notice.ts";
import { peopleList, type Waiting } from "../audit/people.ts";
import type { LetterRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import { noticePrefix } from "./etiquette.ts";

/** What came of telling: nothing was due, somebody was told, or it has to be tried again. */
export type Telling = "nothing" | "told" | "failed";

/** All that waits for somebody, first things first. */
export async function readPeople(store: Desk["store"], now: Date): Promise<Waiting[]> {
  return peopleList(await store.people.waiting(now), await store.people.orders());
}

/** The same of so many letters and so many orders, the oldest; and whether more wait behind them. */
export async function readOldest(
  store: Desk["store"],
  now: Date,
  most: number,
): Promise<{ readonly waiting: readonly Waiting[]; readonly isCut: boolean }> {
  const letters = await store.people.waiting(now, most + 1);
  const orders = await store.people.orders(most + 1);
  return {
    waiting: peopleList(letters.slice(0, most), orders.slice(0, most)),
    isCut: letters.length > most || orders.length > most,
  };
}

/** Tells customer service of letters that have come to wait for a person, at most once an hour. */
export async function sendNotice(desk: Desk): Promise<Telling> {
  const { store, clock, log, rules } = desk;
  if (rules.notice === undefined) return "nothing";
  const now = clock.now();
  const letters = await store.people.takeNotice(now, rules.notice);
  if (letters.length === 0) return "nothing";
  const failure = await send(desk, rules.notice, letters, now).catch((cause: unknown) => ({ cause }));
  if (failure === undefined) return "told";
  await store.people.dropNotice(now);
  log.warn(failure, "customer service could not be told of letters that wait for a person");
  return "failed";
}

/** Sends the notice. One that may have gone is not sent again, since its letters wait all the same. */
async function send(
  { sender, from, store, timeZone }: Desk,
  to: string,
  letters: readonly LetterRecord[],
  now: Date,
): Promise<{ readonly words: string } | undefined> {
  const messageId = `<${noticePrefix}${letters[0]?.letter}.${now.getTime()}@${from.address.split("@")[1]}>`;
  const envelope = { from, to, date: now, messageId, references: [], auto: "auto-generated" } as const;
  const bytes = await composeMessage(
    envelope,
    composeNotice(await readPeople(store, now), new Set(letters.map(({ letter }) => letter)), now, timeZone),
  );
  const { kind, words } = await sender.send({ messageId, recipient: to, bytes });
  return kind === "later" || kind === "refused" ? { words } : undefined;
}
