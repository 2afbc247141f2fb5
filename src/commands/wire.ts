import { readFile } from "node:fs/promises";
import type { Provider } from "../desk/provider.ts";
import type { Desk, Rules } from "../intake/desk.ts";
import { folderMailbox, folderSender } from "../mail/folder.ts";
import { openMailbox, openSender, type Surroundings } from "../mail/open.ts";
import type { Clock } from "../ports/clock.ts";
import type { Health } from "../ports/health.ts";
import type { Log } from "../ports/log.ts";
import type { Mailbox } from "../ports/mailbox.ts";
import { openPool } from "../sandbox/pool.ts";
import { calendarIn } from "../settings/calendar.ts";
import { managingIn } from "../settings/managing.ts";
import { type Settings, usualPage } from "../settings/settings.ts";
import { sharedDomains } from "../settings/shared-domains.ts";
import { packagesIn, removePackage } from "../store/package-folder.ts";
import { openLog } from "../telemetry/log.ts";
import { CannotRun, reasonOf } from "./command.ts";
import { beside, type Configuration } from "./configuration.ts";
import { clockOf, openRecord, openRecordThere } from "./record.ts";
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

/** Where browsers find the page. */
function addressOf({ address, host, port }: NonNullable<Settings["desk"]>): string {
  return address ?? `http://${host.includes(":") ? `[${host}]` : host}:${port}`;
}

/** Whose orders are released by themselves, and where packages go. */
function releasingOf({ file, settings: { release } }: Configuration): Pick<Rules, "releasing" | "packages"> {
  if (release === undefined) return {};
  const packages = packagesIn(beside(file, release.folder));
  if (release.by_itself === undefined) return { packages };
  const { after_hours: afterHours, buyers } = release.by_itself;
  return { packages, releasing: { afterHours, buyers, put: packages } };
}

/** When letters are erased by themselves, and where packages lie that go with them. */
export function erasingOf({
  file,
  settings: { release, erase_after_days: afterDays },
}: Configuration): Pick<Rules, "erasing"> {
  return {
    erasing: {
      ...(afterDays === undefined ? {} : { afterDays }),
      ...(release === undefined
        ? {}
        : { remove: (name: string) => removePackage(beside(file, release.folder), name) }),
    },
  };
}

function rulesOf(settings: Settings): Rules {
  const { from, also, most_per_hour, most_per_day } = settings.answers;
  const { grace_seconds, lease_seconds, patience_seconds } = settings.answers;
  const { authority, received_lines, known, staff } = settings.trust;
  const nameServers = nameServersOf(settings);
  return {
    ours: [from.address, ...also],
    returnPathWritten: settings.mailboxes.length > 0,
    ...(authority === undefined ? {} : { authority }),
    ...(nameServers === undefined ? {} : { nameServers }),
    receivedLines: received_lines,
    ...(settings.notice === undefined ? {} : { notice: settings.notice.to }),
    ...(settings.day === undefined
      ? {}
      : {
          dayLetter: {
            at: settings.day.letter_at,
            to: settings.day.to,
            calendar: calendarIn(settings.waiting, settings.time_zone),
          },
        }),
    ...(settings.desk?.link_days === undefined
      ? {}
      : { links: { address: addressOf(settings.desk), days: settings.desk.link_days } }),
    ...(settings.release?.room === undefined ? {} : { room: settings.release.room }),
    ...(settings.waiting === undefined
      ? {}
      : {
          reminding: {
            ...calendarIn(settings.waiting, settings.time_zone),
            remindAfter: settings.waiting.remind_after,
          },
        }),
    sharedDomains: sharedDomains(settings.trust),
    known,
    staff,
    managing: managingIn(settings),
    mostAnswers: {
      toOne: most_per_hour.to_one,
      toAll: most_per_hour.to_all,
      toOneADay: most_per_day.to_one,
      inThreadADay: most_per_day.in_thread,
    },
    lease: lease_seconds,
    patience: patience_seconds,
    grace: grace_seconds,
  };
}

/**
 * The name servers to ask about senders. An empty list means those of the system. Undefined if none is to be asked.
 */
export function nameServersOf({
  trust: { authority, name_servers },
}: Settings): readonly string[] | undefined {
  if (authority !== undefined || name_servers === undefined || name_servers === "none") return undefined;
  return name_servers === "system" ? [] : name_servers;
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
