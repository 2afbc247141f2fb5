import { readFileSync } from "node:fs";
import { ImapFlow } from "imapflow";
import type { ImapMailbox } from "../../../src/mail/imap.ts";
import { type OAuth, tokenSource } from "../../../src/mail/oauth.ts";
import type { Server } from "../../../src/mail/server.ts";
import type { SmtpSender } from "../../../src/mail/smtp.ts";
import type { Log } from "../../../src/ports/log.ts";
import type { Mail, Mailbox, Mark } from "../../../src/ports/mailbox.ts";
import type { Outgoing } from "../../../src/ports/sender.ts";
import { messageIdOf, plainLetter, subjectOf } from "./letter.ts";
import { oauthClient } from "./oauth.ts";
import { alice, desk, passwordOf, type Rig } from "./rig.ts";

export const silent: Log = { info() {}, warn() {} };

const clock = { now: () => new Date() };

/** One of the rig's servers with TLS from the first byte and a password, or as `over` says. */
export function serverOf(rig: Rig, port: "imaps" | "smtps", over: Partial<Server> = {}): Server {
  const user = over.user ?? desk;
  return {
    host: rig.host,
    port: rig.ports[port],
    security: "tls",
    user,
    secret: { password: passwordOf(user) },
    authority: readFileSync(rig.authority, "utf8"),
    ...over,
  };
}

/** Tokens from the rig's own server, as `over` says. */
export function tokensOf(rig: Rig, over: Partial<OAuth> = {}): Server["secret"] {
  const { id: clientId, secret: clientSecret } = oauthClient;
  return { tokens: tokenSource({ tokenUrl: rig.oauth.tokenUrl, clientId, clientSecret, ...over }, clock) };
}

/** The desk's inbox, read from the beginning. */
export function inboxOf(rig: Rig, over: Partial<ImapMailbox> = {}): ImapMailbox {
  return {
    name: "orders",
    server: serverOf(rig, "imaps"),
    folder: "INBOX",
    begin: new Date(0),
    shelves: {},
    log: silent,
    clock,
    // the shortest of waits
    chance: () => 1,
    ...over,
  };
}

/** A sender through the rig's submission server. */
export function senderOf(rig: Rig, over: Partial<SmtpSender> = {}): SmtpSender {
  return {
    server: serverOf(rig, "smtps"),
    bounces: "bounces@quillgate.example",
    log: silent,
    ...over,
  };
}

/** Lets a letter come from `alice`, and returns once it lies in the inbox. */
export async function arrive(rig: Rig, to: string, subject: string, more = ""): Promise<void> {
  await rig.deliver(alice, to, plainLetter(subject, more));
  await comes(rig, to, subject);
}

/** Returns once a letter of this subject lies in the inbox. */
export function comes(rig: Rig, to: string, subject: string): Promise<void> {
  return until(async () => (await rig.lettersOf(to)).some((letter) => subjectOf(letter) === subject));
}

/** Whether a letter of this subject has come by the time one sent after it has. */
export async function hasCome(rig: Rig, to: string, subject: string): Promise<boolean> {
  await arrive(rig, to, `after ${subject}`);
  return (await rig.lettersOf(to)).some((letter) => subjectOf(letter) === subject);
}

/** An answer to be sent, with lines that a careless sender would cut the letter at. */
export function answerOf(subject: string, recipient = alice): Outgoing {
  return {
    messageId: messageIdOf(subject),
    recipient,
    bytes: Buffer.from(plainLetter(subject, ".\r\n..two dots\r\n.")),
  };
}

/** A mailbox of ours that gets every answer, as the sender knows it. */
export function witnessOf(rig: Rig, over: Partial<Server> = {}): NonNullable<SmtpSender["witness"]> {
  const address = "witness@quillgate.example";
  return { address, mailbox: serverOf(rig, "imaps", { user: address, ...over }), folder: "INBOX" };
}

/** Somebody at the same mailbox with a mail program. */
export async function asPerson<T>(
  rig: Rig,
  user: string,
  does: (client: ImapFlow) => Promise<T>,
): Promise<T> {
  const client = new ImapFlow({
    host: "127.0.0.1",
    port: rig.ports.imap,
    auth: { user, pass: passwordOf(user) },
    doSTARTTLS: false,
    logger: false,
  });
  await client.connect();
  try {
    return await does(client);
  } finally {
    await client.logout();
  }
}

/** The subjects of letters, with `undefined` for one that is gone. */
export async function subjects(mails: readonly Mail[]): Promise<readonly (string | undefined)[]> {
  const read = [];
  for (const mail of mails) {
    const bytes = await mail.bytes();
    read.push(bytes === undefined ? undefined : subjectOf(bytes));
  }
  return read;
}

/** Everything that lies in a mailbox now, behind `since`. */
export async function readOnce(mailbox: Mailbox, since?: Mark): Promise<readonly Mail[]> {
  const mails: Mail[] = [];
  const options = { once: true, signal: new AbortController().signal };
  for await (const mail of mailbox.letters(since === undefined ? options : { ...options, since }))
    mails.push(mail);
  return mails;
}

/** Reads on until stopped. */
export function readOn(mailbox: Mailbox): {
  /** Subjects of the letters read so far, and when each was there. */
  readonly read: string[];
  readonly at: Map<string, number>;
  readonly stop: () => Promise<void>;
} {
  const stopping = new AbortController();
  const read: string[] = [];
  const at = new Map<string, number>();
  const reading = (async () => {
    for await (const mail of mailbox.letters({ once: false, signal: stopping.signal })) {
      const [subject = "gone"] = await subjects([mail]);
      read.push(subject);
      at.set(subject, performance.now());
    }
  })();
  return {
    read,
    at,
    async stop() {
      stopping.abort();
      await reading;
      await mailbox.close();
    },
  };
}

/** Waits until something holds; fails after `ms`. */
export async function until(holds: () => boolean | Promise<boolean>, ms = 60_000): Promise<void> {
  const end = Date.now() + ms;
  while (!(await holds())) {
    if (Date.now() > end) throw new Error(`did not come true within ${ms} ms: ${String(holds)}`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
