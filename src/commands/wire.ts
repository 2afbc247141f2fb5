import { readFile } from "node:fs/promises";
import type { Provider } from "../desk/provider.ts";
import type { Desk } from "../intake/desk.ts";
import { folderMailbox, folderSender } from "../mail/folder.ts";
import { openMailbox, openSender, type Surroundings } from "../mail/open.ts";
import type { Clock } from "../ports/clock.ts";
import type { Health } from "../ports/health.ts";
import type { Log } from "../ports/log.ts";
import type { Mailbox } from "../ports/mailbox.ts";
import { openPool } from "../sandbox/pool.ts";
import { type Settings, usualPage } from "../settings/settings.ts";
import { packagesIn } from "../store/package-folder.ts";
import { openLog } from "../telemetry/log.ts";
import { CannotRun, reasonOf } from "./command.ts";
import { beside, type Configuration } from "./configuration.ts";
import { clockOf, openRecord, openRecordThere } from "./record.ts";
import { addressOf, erasingOf, releasingOf, rulesOf } from "./rules.ts";
import { systemClock } from "./system-clock.ts";

type SignIn = NonNullable<NonNullable<Settings["desk"]>["sign_in"]>;

/** A desk at work, with its mailboxes; `close` lets go of everything. */
export interface OpenDesk {
  readonly desk: Desk;
  readonly mailboxes: readonly Mailbox[];
  readonly close: () => Promise<void>;
}

/** A desk without mailboxes, for one of our own people beside the worker. What it makes the worker sends. */
export async function openBackOffice(
  configuration: Configuration,
): Promise<Pick<OpenDesk, "desk" | "close">> {
  const { file, settings, catalogue, editions, forms } = configuration;
  const log = openLog();
  const store = await openRecordThere(configuration, systemClock);
  const clock = await clockOf(store, systemClock);
  const desk: Desk = {
    store,
    reader: openPool({ log, forms }),
    sender: folderSender(beside(file, settings.answers.folder ?? ".")),
    clock,
    log,
    chance: Math.random,
    catalogue,
    editions,
    timeZone: settings.time_zone,
    from: settings.answers.from,
    secret: await store.answers.secret(),
    rules: { ...rulesOf(settings), ...erasingOf(configuration) },
  };
  return {
    desk,
    async close() {
      clock.stop();
      await desk.reader.close();
      await store.close();
    },
  };
}

export async function openDesk(
  configuration: Configuration,
  { clock, log, health, secret }: { clock: Clock; log: Log; health?: Health; secret?: string },
): Promise<OpenDesk> {
  const { file, settings, catalogue, editions, forms } = configuration;
  const around = {
    ...aroundMail(configuration, { clock, log }),
    ...(health === undefined ? {} : { health }),
  };
  const { from, folder, send, patience_seconds } = settings.answers;
  const [mailboxes, sending] = await Promise.all([
    Promise.all(settings.mailboxes.map((written) => openMailbox(written, around))),
    send === undefined ? undefined : openSender(send, around, patience_seconds * 1000),
  ]).catch((cause: unknown) => {
    throw new CannotRun(cause instanceof Error ? cause.message : String(cause), { cause });
  });
  const all = [...settings.folders.map((path) => folderMailbox(beside(file, path))), ...mailboxes];
  const store = await openRecord(configuration, clock);
  const recordClock = await clockOf(store, clock);
  const desk: Desk = {
    store,
    reader: openPool({ log, forms }),
    sender: sending ?? folderSender(beside(file, folder ?? ".")),
    clock: recordClock,
    log,
    chance: Math.random,
    catalogue,
    editions,
    timeZone: settings.time_zone,
    from,
    secret: secret ?? (await store.answers.secret()),
    rules: { ...rulesOf(settings), ...releasingOf(configuration), ...erasingOf(configuration) },
  };
  return {
    desk,
    mailboxes: all,
    async close() {
      recordClock.stop();
      await Promise.all(all.map((mailbox) => mailbox.close()));
      await sending?.close();
      await desk.reader.close();
      await desk.store.close();
    },
  };
}

/** Serves the page of a desk as its settings say, or on another port. Throws CannotRun when that cannot be had. */
export async function servePage(
  { file, settings: { desk: written, release } }: Configuration,
  desk: Desk,
  over: { readonly port?: number } = {},
): Promise<{ readonly address: string; readonly close: () => Promise<void> }> {
  const page = { ...usualPage, ...written, ...over };
  const { port, host, hours, try_open: isTryOpen } = page;
  const here = addressOf(page);
  const put = packagesIn(beside(file, release?.folder ?? ""));
  const { serveDesk } = await import("../desk/serve.ts");
  const provider = page.sign_in === undefined ? undefined : await providerOf(page.sign_in, file);
  const front = {
    desk,
    address: here,
    hours,
    isTryOpen,
    ...(provider === undefined ? {} : { provider }),
    ...(release === undefined ? {} : { put }),
  };
  const { close } = await serveDesk(front, { host, port }).catch((cause: unknown) => {
    throw new CannotRun(`the page cannot be served on ${host}:${port}: ${reasonOf(cause)}`, { cause });
  });
  return { address: here, close };
}

/** Whoever vouches for people who come to the page. Throws CannotRun where the secret is missing. */
async function providerOf(
  { issuer, client_id: clientId, client_secret_env, client_secret_file, only }: SignIn,
  file: string,
): Promise<Provider> {
  const clientSecret =
    client_secret_file === undefined
      ? process.env[client_secret_env ?? ""]
      : await readFile(beside(file, client_secret_file), "utf8").catch((cause: unknown) => {
          throw new CannotRun(`cannot read ${client_secret_file}: ${reasonOf(cause)}`, { cause });
        });
  if (clientSecret === undefined) throw new CannotRun(`the environment has no ${client_secret_env}`);
  const { openProvider } = await import("../desk/provider.ts");
  return openProvider({ issuer, clientId, clientSecret: clientSecret.trim() }, only);
}

/** What the mail adapters need of the world around them. */
export function aroundMail(
  { file }: Configuration,
  { clock, log }: { clock: Clock; log: Log },
): Surroundings {
  return {
    log,
    clock,
    chance: Math.random,
    environment: process.env,
    beside: (path) => beside(file, path),
  };
}
