import { composeMessage } from "../report/message.ts";
import { composeNotice } from "../report/notice.ts";
import type { Desk } from "./desk.ts";

/** Tells customer service of letters that have come to wait for a person, at most once an hour: whether it did. */
export async function sendNotice({ store, sender, clock, log, from, rules }: Desk): Promise<boolean> {
  if (rules.notice === undefined) return false;
  const now = clock.now();
  const letters = await store.takeNotice(now);
  const [first] = letters;
  if (first === undefined) return false;
  const messageId = `<burin.notice.${first.letter}.${now.getTime()}@${from.address.split("@")[1]}>`;
  const waiting = (await store.forPerson(now)).length;
  const envelope = {
    from,
    to: rules.notice,
    date: now,
    messageId,
    references: [],
    auto: "auto-generated",
  } as const;
  const bytes = await composeMessage(envelope, composeNotice(letters, waiting));
  const { kind, words } = await sender.send({ messageId, recipient: rules.notice, bytes });
  // One that may have gone is not sent again: the letters stay where they are, and the next notice counts them.
  if (kind === "later" || kind === "refused") {
    await store.dropNotice(now);
    log.warn({ words }, "customer service could not be told of letters that wait for a person");
  }
  return true;
}
