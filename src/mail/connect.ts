import { randomUUID } from "node:crypto";
import { setTimeout as after } from "node:timers/promises";
import type { ImapFlow } from "imapflow";
import MailComposer from "nodemailer/lib/mail-composer";
import type { Sender } from "../ports/sender.ts";
import { openNames } from "../sandbox/names.ts";
import type { ImapMailboxSettings, ServerSettings, SmtpSenderSettings } from "../settings/mail.ts";
import { adviceOn } from "./advice.ts";
import { openImap } from "./imap-connection.ts";
import { openSender, openServer, type Surroundings } from "./open.ts";
import { errorWords } from "./server.ts";
import { openSmtp } from "./smtp-connection.ts";

/** What came of trying one thing, in words for whoever sets the desk up. */
export interface Trial {
  readonly ok: boolean;
  readonly says: string;
}

const silenceMs = 20_000;

/** How long the copy of the test message has to arrive at most. */
const copyMs = 60_000;

/** Signs in, opens the folder and sees what the server can do there. Changes nothing. */
export function tryMailbox(written: ImapMailboxSettings, around: Surroundings): Promise<Trial[]> {
  const { name, imap, folder, shelves } = written;
  return tryFolder(name, imap, folder, around, async (client) => {
    const permanent = client.mailbox === false ? undefined : client.mailbox.permanentFlags;
    const can = (...names: readonly string[]) => names.some((one) => client.capabilities.has(one));
    const there = new Set((await client.list()).map(({ path }) => path));
    const missing = Object.values(shelves).filter((path) => path !== undefined && !there.has(path));
    return [
      can("IDLE")
        ? "new letters are told of at once (IDLE)"
        : `no IDLE: looked at every ${written.poll_seconds} s`,
      permanent?.has("\\*") === true ? "keywords are kept" : "no keywords of our own are kept",
      can("MOVE", "UIDPLUS", "IMAP4rev2")
        ? "letters can be moved"
        : "letters cannot be moved: shelves have no effect",
      ...(missing.length === 0 ? [] : [`made when first needed: ${missing.join(", ")}`]),
    ];
  });
}

/** Signs in wherever answers go, and sends a test message to `to`. That has to be an address of the desk's own. */
export async function trySender(
  written: SmtpSenderSettings,
  to: string,
  around: Surroundings,
  /** Seconds after which a lost answer is looked for. A copy that comes later is of no use. */
  grace: number,
): Promise<Trial[]> {
  const { witness, sent } = written;
  const places = [
    ...(witness === undefined ? [] : await tryFolder("witness", witness.imap, witness.folder, around)),
    ...(sent === undefined ? [] : await tryFolder("answers sent", sent.imap, sent.folder, around)),
  ];
  const signedIn = await attempt("sender", written.smtp, around, async (server) => {
    (await openSmtp(server, silenceMs)).quit();
    return `signed in at ${server.host}:${server.port} as ${server.user}`;
  });
  if (!signedIn.ok || places.some(({ ok }) => !ok)) return [...places, signedIn];
  const sender = await openSender(written, around);
  const message = await testMessage(to);
  const { kind, words } = await sender.send(message);
  const copy =
    kind === "sent"
      ? await lookForCopy(sender, message.messageId, written, Math.min(copyMs, grace * 1000))
      : [];
  await sender.close();
  const ok = kind === "sent";
  const says = ok
    ? `test message taken (${words})`
    : `the server does not take a test message to ${to}: ${words}`;
  return [...places, signedIn, { ok, says: `sender: ${says}` }, ...copy];
}

/** Whether the copy by which a lost answer would be found arrives where it is looked for. */
async function lookForCopy(
  sender: Sender,
  messageId: string,
  { witness, sent }: SmtpSenderSettings,
  ms: number,
): Promise<Trial[]> {
  const place = witness ?? (sent?.filled_by === "server" ? sent : undefined);
  if (place === undefined) return [];
  const name = witness === undefined ? "answers sent" : "witness";
  const where = `folder ${place.folder} of ${place.imap.user}`;
  const begun = Date.now();
  for (;;) {
    const found = await sender.find(messageId).catch((error: unknown) => errorWords(error));
    const seconds = Math.round((Date.now() - begun) / 1000);
    if (found === true)
      return [
        { ok: true, says: `${name}: the copy of the test message came into ${where} after ${seconds} s` },
      ];
    if (Date.now() - begun >= ms) {
      const why = typeof found === "string" ? ` (${found})` : "";
      const change =
        witness === undefined
          ? "sent.folder, and whether the server keeps what it sends"
          : "witness.address, witness.imap and witness.folder";
      const says = `${name}: the copy of the test message is not in ${where} after ${seconds} s${why}; answers that are lost sight of would be sent again; check ${change}`;
      return [{ ok: false, says }];
    }
    await after(1000);
  }
}

/** Asks the name servers for a record of the desk's own domain. "No such record" is an answer too. */
export async function tryNameServers(servers: readonly string[], address: string): Promise<Trial> {
  const named = servers.length === 0 ? "those of the system" : servers.join(", ");
  try {
    await openNames(servers).resolveTxt(address.split("@")[1] ?? "");
  } catch (error) {
    const { code = "" } = error as { readonly code?: string };
    if (!["ENOTFOUND", "ENODATA"].includes(code))
      return {
        ok: false,
        says: `name servers: ${named} give no answer (${code || errorWords(error)}); name others in trust.name_servers`,
      };
  }
  return { ok: true, says: `name servers: ${named} answer` };
}

async function tryFolder(
  name: string,
  written: ServerSettings,
  folder: string,
  around: Surroundings,
  look: (client: ImapFlow) => Promise<readonly string[]> = () => Promise.resolve([]),
): Promise<Trial[]> {
  const trial = await attempt(name, written, around, async (server) => {
    const client = await openImap(server, silenceMs);
    try {
      const opened = await client.mailboxOpen(folder).catch(async (error: unknown) => {
        const there = (await client.list()).map(({ path }) => path);
        throw new FolderFault(
          there.includes(folder)
            ? `folder ${folder} cannot be opened (${errorWords(error)}); check what ${server.user} may do there`
            : `there is no folder ${folder}; those there are: ${there.join(", ")}`,
        );
      });
      const seen = await look(client);
      return [`signed in as ${server.user}, ${opened.exists} letters in ${folder}`, ...seen].join("; ");
    } finally {
      client.close();
    }
  });
  return [trial];
}

/** A fault of the folder and not of the connection. Its message says what to change. */
class FolderFault extends Error {}

async function attempt(
  name: string,
  written: ServerSettings,
  around: Surroundings,
  work: (server: Awaited<ReturnType<typeof openServer>>) => Promise<string>,
): Promise<Trial> {
  const failed = (says: string): Trial => ({ ok: false, says: `${name}: ${says}` });
  let server: Awaited<ReturnType<typeof openServer>>;
  try {
    server = await openServer(written, around);
  } catch (error) {
    return failed(errorWords(error));
  }
  try {
    return { ok: true, says: `${name}: ${await work(server)}` };
  } catch (error) {
    return failed(error instanceof FolderFault ? error.message : adviceOn(error, server));
  }
}

async function testMessage(to: string) {
  const messageId = `<burin.test.${randomUUID()}@${to.split("@")[1]}>`;
  const bytes = await new MailComposer({
    from: to,
    to,
    messageId,
    subject: "Test message of the order desk",
    text: "Sent by “burin settings --connect”. Nothing is to be done.",
    // RFC 3834 §5: made by a machine, and no answer to anything
    headers: { "Auto-Submitted": "auto-generated", "X-Auto-Response-Suppress": "All" },
  })
    .compile()
    .build();
  return { messageId, recipient: to, bytes };
}
