import { createHmac } from "node:crypto";
import { composeAnswer, filesIn } from "../answer/answer.ts";
import { composeMessage } from "../answer/message.ts";
import type { Report } from "../judging/report.ts";
import type { Outcome } from "../ports/store.ts";
import { letterKey } from "../reading/letter/letter-key.ts";
import type { Letter } from "../trade/letter.ts";
import { copiedTo } from "./copies.ts";
import type { Desk } from "./desk.ts";
import { enclose } from "./enclose.ts";
import { answerAddress } from "./etiquette.ts";
import { waysTo } from "./link.ts";
import type { Pictures } from "./open.ts";
import type { Party } from "./party.ts";

/** A letter that is to be answered, and what it came to. */
interface Answerable {
  /** Its number in the record. */
  readonly number: number;
  readonly bytes: Uint8Array;
  readonly letter: Letter & { readonly from: string };
  readonly party: Party;
  readonly report: Report;
  /** What was seen on the pages of its files. */
  readonly pictures: Pictures;
  /** It was held before, and perhaps answered that a person looks. */
  readonly letIn?: boolean;
  /** Whom it is answered to, if not to whoever sent it. */
  readonly to?: string;
  /** Which manager wrote or forwarded it, and what the answer says of that. */
  readonly by?: string;
}

/** The finished answer: words, enclosures, the bytes to be sent. */
export async function answerTo(
  { number, bytes, letter, party, report, pictures, letIn = false, to, by }: Answerable,
  desk: Desk,
): Promise<NonNullable<Outcome["answer"]>> {
  const numbers = report.orders.map(({ order }) => order.number);
  const latest = await desk.store.orders.revisionsOf(party.buyer, numbers);
  const revisions = new Map([...latest].map(([order, revision]) => [order, revision + 1]));
  const enclosed = await enclose(report, letter.attachments, { ...desk, revisions, pictures });
  const recipient = to ?? answerAddress(letter, party.domain, desk.rules.ours);
  const copied = copiedTo(report, recipient);
  const words = composeAnswer(report, desk.catalogue, enclosed, {
    ways: waysTo(number, desk, copied),
    copied,
    ...(by === undefined ? {} : { by }),
  });
  const key = `${letIn ? "let in " : ""}${letterKey(bytes)}`;
  const messageId = messageIdOf(key, desk.from.address, desk.secret);
  const message = await composeMessage(
    {
      from: desk.from,
      to: recipient,
      copies: copied.map(({ address }) => address),
      date: desk.clock.now(),
      messageId,
      ...(letter.messageId === undefined ? {} : { inReplyTo: letter.messageId }),
      references: letter.references,
    },
    words,
    filesIn(enclosed),
  );
  return {
    messageId,
    recipient,
    copies: copied.map(({ address }) => address),
    subject: words.subject,
    bytes: message,
  };
}

/**
 * The Message-ID of the answer to a letter. It follows from the letter, so that a lost answer can be looked for. It
 * follows from a secret too, so that nobody can reply to an answer that he never got.
 */
export function answerId(bytes: Uint8Array, from: string, secret: string): string {
  return messageIdOf(letterKey(bytes), from, secret);
}

/** The Message-ID of what is sent on account of something that has this key. */
export function messageIdOf(key: string, from: string, secret: string): string {
  const code = createHmac("sha256", secret).update(key).digest("hex");
  return `<burin.${code.slice(0, 32)}@${from.split("@")[1]}>`;
}
