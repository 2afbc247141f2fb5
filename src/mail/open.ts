import { readFile, rename, writeFile } from "node:fs/promises";
import type { Clock } from "../ports/clock.ts";
import type { Health } from "../ports/health.ts";
import type { Log } from "../ports/log.ts";
import type { Mailbox } from "../ports/mailbox.ts";
import type { Sender } from "../ports/sender.ts";
import type { ImapMailboxSettings, ServerSettings, SmtpSenderSettings } from "../settings/mail.ts";
import { imapMailbox } from "./imap.ts";
import { type OAuth, tokenSource } from "./oauth.ts";
import type { Secret, Server } from "./server.ts";
import { smtpSender } from "./smtp.ts";

/** What the adapters need of the world around them. */
export interface Surroundings {
  readonly log: Log;
  readonly clock: Clock;
  readonly chance: () => number;
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** A path as written in the settings → where it is. */
  readonly beside: (path: string) => string;
  /** Told whether answers can be sent. */
  readonly health?: Health;
}

/**
 * Opens a mailbox. Throws, as all functions here, with a sentence that names the environment variable or file that is
 * missing.
 */
export async function openMailbox(written: ImapMailboxSettings, around: Surroundings): Promise<Mailbox> {
  return imapMailbox({
    name: written.name,
    server: await openServer(written.imap, around),
    folder: written.folder,
    begin: written.begin,
    shelves: written.shelves,
    poll: written.poll_seconds * 1000,
    log: around.log,
    clock: around.clock,
    chance: around.chance,
  });
}

export async function openSender(
  written: SmtpSenderSettings,
  around: Surroundings,
  /** Milliseconds that the server has after the last byte of an answer. */
  patience?: number,
): Promise<Sender & { readonly close: () => Promise<void> }> {
  const { witness, sent } = written;
  return smtpSender({
    server: await openServer(written.smtp, around),
    bounces: written.bounces,
    log: around.log,
    ...(around.health === undefined ? {} : { health: around.health }),
    ...(patience === undefined ? {} : { patience }),
    ...(witness === undefined
      ? {}
      : {
          witness: {
            address: witness.address,
            mailbox: await openServer(witness.imap, around),
            folder: witness.folder,
          },
        }),
    ...(sent === undefined
      ? {}
      : {
          sent: {
            mailbox: await openServer(sent.imap, around),
            folder: sent.folder,
            filledBy: sent.filled_by === "server" ? "server" : "us",
          },
        }),
  });
}

/** How a server is reached, with the secrets that the settings point to. */
export async function openServer(written: ServerSettings, around: Surroundings): Promise<Server> {
  const { host, port, security, user, authority_file } = written;
  return {
    host,
    port,
    security,
    user,
    secret: await secret(written, around),
    ...(authority_file === undefined
      ? {}
      : { authority: await read(around.beside(authority_file), "certificate") }),
  };
}

async function secret(written: ServerSettings, around: Surroundings): Promise<Secret> {
  const password = await kept(written.password_env, written.password_file, "password", around);
  if (password !== undefined) return { password };
  const { oauth } = written;
  if (oauth === undefined) throw new Error(`neither password nor token server for ${written.host}`);
  const clientSecret = await kept(oauth.client_secret_env, oauth.client_secret_file, "client secret", around);
  const refreshToken = await kept(oauth.refresh_token_env, oauth.refresh_token_file, "refresh token", around);
  const options: OAuth = {
    tokenUrl: oauth.token_url,
    clientId: oauth.client_id,
    ...(oauth.scope === undefined ? {} : { scope: oauth.scope }),
    ...(clientSecret === undefined ? {} : { clientSecret }),
    ...(refreshToken === undefined ? {} : { refreshToken, keepRefreshToken: keeper(oauth, around) }),
  };
  return { tokens: tokenSource(options, around.clock) };
}

/** Writes the next refresh token over the last one in its file, so that the next start has it. */
function keeper(
  { refresh_token_file: file }: NonNullable<ServerSettings["oauth"]>,
  { beside, log }: Surroundings,
): (token: string) => Promise<void> {
  return async (token) => {
    if (file === undefined) {
      log.warn({}, "the token server gave a new refresh token, and the environment cannot keep it");
      return;
    }
    const path = beside(file);
    try {
      await writeFile(`${path}.new`, `${token}\n`, { mode: 0o600 });
      await rename(`${path}.new`, path);
    } catch (error) {
      log.warn(
        { why: String(error) },
        "the token server gave a new refresh token, and its file cannot be written",
      );
    }
  };
}

async function kept(
  variable: string | undefined,
  file: string | undefined,
  what: string,
  { environment, beside }: Surroundings,
): Promise<string | undefined> {
  if (file !== undefined) return read(beside(file), what);
  if (variable === undefined) return undefined;
  const value = environment[variable];
  if (value === undefined || value === "") throw new Error(`the environment has no ${variable} (${what})`);
  return value;
}

async function read(path: string, what: string): Promise<string> {
  try {
    return (await readFile(path, "utf8")).trimEnd();
  } catch (cause) {
    throw new Error(`cannot read ${path} (${what})`, { cause });
  }
}
