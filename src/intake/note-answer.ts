import { composeAnswer, filesIn } from "../answer/answer.ts";
import { composeMessage, type Enclosure, type Words } from "../answer/message.ts";
import { missingSheets } from "../answer/missing-sheets.ts";
import { composeReminder } from "../answer/reminder.ts";
import type { Report } from "../judging/report.ts";
import type { Outcome } from "../ports/store.ts";
import { tellApart } from "../reading/file-name.ts";
import type { Act, Note } from "../trade/note.ts";
import { messageIdOf } from "./compose.ts";
import { copiedTo } from "./copies.ts";
import type { Desk } from "./desk.ts";
import { enclose } from "./enclose.ts";
import { waysTo } from "./link.ts";
import { calendarName, waitingOf } from "./remind.ts";

/** The key of a note among letters. */
export function noteKey({ id }: Note): string {
  return `note ${id}`;
}

/** Reminds the buyer of an order, or says that somebody has to call. */
export async function reminding(
  desk: Desk,
  note: Note,
  { what, since, lastOn }: Extract<Act, { kind: "remind" }>,
  outcome: Omit<Outcome, "state">,
): Promise<Outcome> {
  const { catalogue, editions, store } = desk;
  const [order] = (await store.orders.named(note.order)).filter(({ buyer }) => buyer === note.buyer);
  if (order?.changedAt.toISOString() !== since)
    return { ...outcome, state: "silent", why: "it has moved on meanwhile" };
  const reminded = { ...outcome, reminded: { order: note.order, what } };
  if (what === "person") return { ...reminded, state: "silent", why: "somebody has to call" };
  const due = { order: waitingOf(order), nth: 1, what, ...(lastOn === undefined ? {} : { lastOn }) };
  const missing = await missingSheets(outcome.report, catalogue, editions);
  const enclosed = { ...missing, sheets: tellApart(missing.sheets) };
  const words = composeReminder(due, catalogue, enclosed);
  const answer = await messageOf(desk, note, words, { enclosures: enclosed.sheets });
  return answer === undefined
    ? { ...reminded, state: "silent", why: "nobody is to be answered" }
    : { ...reminded, state: "ready", answer };
}

/** The answer to whoever wrote last about the order. */
export async function answerTo(desk: Desk, note: Note, report: Report): Promise<Outcome["answer"]> {
  const { store, catalogue } = desk;
  const numbers = report.orders.map(({ order }) => order.number);
  const latest = await store.orders.revisionsOf(note.buyer, numbers);
  const revisions = new Map([...latest].map(([order, revision]) => [order, revision + 1]));
  const enclosed = await enclose(report, [], { ...desk, revisions });
  const last = await store.orders.lastWriter(note.buyer, note.order);
  const copied = copiedTo(report, last?.recipient ?? "");
  const ways = waysTo(Number(report.letter), desk, copied);
  const words = composeAnswer(report, catalogue, enclosed, { ways, copied });
  const copies = copied.map(({ address }) => address);
  return messageOf(desk, note, words, { enclosures: filesIn(enclosed), copies });
}

/** What is sent on account of a note; undefined if nobody has written about its order. */
async function messageOf(
  { store, from, clock, secret }: Desk,
  note: Note,
  words: Words,
  {
    enclosures = [],
    copies = [],
  }: { readonly enclosures?: readonly Enclosure[]; readonly copies?: readonly string[] },
): Promise<Outcome["answer"]> {
  const last = await store.orders.lastWriter(note.buyer, note.order);
  if (last === undefined) return undefined;
  const messageId = messageIdOf(noteKey(note), from.address, secret);
  const envelope = {
    from,
    to: last.recipient,
    copies,
    date: clock.now(),
    messageId,
    ...(last.messageId === undefined ? {} : { inReplyTo: last.messageId }),
    references: [],
    ...(note.by === calendarName ? { auto: "auto-generated" as const } : {}),
  };
  const message = await composeMessage(envelope, words, enclosures);
  return { messageId, recipient: last.recipient, copies, subject: words.subject, bytes: message };
}
