import { mkdir, readdir, readFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { type Catalogue, readCatalogue } from "../catalogue/catalogue.ts";
import type { Desk } from "../intake/desk.ts";
import type { Hunspell } from "../lettering/dictionary.ts";
import { readGlossary } from "../lettering/glossary.ts";
import type { Language } from "../lettering/languages.ts";
import { makeWords } from "../lettering/words.ts";
import { folderMailbox, folderSender } from "../mail/folder.ts";
import { openMailbox, openSender, type Surroundings } from "../mail/open.ts";
import type { Clock } from "../ports/clock.ts";
import type { Log } from "../ports/log.ts";
import type { Mailbox } from "../ports/mailbox.ts";
import type { Store } from "../ports/store.ts";
import { type Edition, readEdition } from "../reading/edition.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { openPool } from "../sandbox/pool.ts";
import { readSettings, type Settings } from "../settings/settings.ts";
import { openBlobs } from "../store/blobs.ts";
import { openSqlite } from "../store/sqlite.ts";
import { openStore } from "../store/store.ts";
import { type Fault, faultLine, type Written } from "../yaml/yaml.ts";
import { CannotRun, reasonOf } from "./command.ts";
import { knownForms } from "./forms.ts";

/** The option that every command with settings has. */
export const settingsOption = {
  settings: { type: "string", takes: "FILE", tells: "the settings (default config/burin.yaml)" },
} as const;

/** Dictionaries come as packages, and only those of the languages that are named are read. */
const dictionaries = {
  "en-US": () => import("dictionary-en"),
  "en-GB": () => import("dictionary-en-gb"),
  "en-CA": () => import("dictionary-en-ca"),
  fr: () => import("dictionary-fr"),
  es: () => import("dictionary-es"),
} satisfies Record<Language, () => Promise<{ default: Record<"aff" | "dic", Uint8Array> }>>;

async function dictionariesOf(languages: readonly Language[]): Promise<Partial<Record<Language, Hunspell>>> {
  const read = languages.map(async (language) => {
    const { aff, dic } = (await dictionaries[language]()).default;
    return [language, { aff: new TextDecoder().decode(aff), dic: new TextDecoder().decode(dic) }] as const;
  });
  return Object.fromEntries(await Promise.all(read));
}

const projectFolder = join(import.meta.dirname, "../..");

/** A file that comes with the project. */
export function projectFile(...parts: readonly string[]): string {
  return join(projectFolder, ...parts);
}

export interface Configuration {
  readonly file: string;
  readonly settings: Settings;
  readonly catalogue: Catalogue;
  readonly editions: readonly Edition[];
  /** What the pages of sheets are compared with. */
  readonly forms: KnownForms;
}

/** Reads settings, catalogue and editions. Throws CannotRun with every fault in all of them. */
export async function configure(file = projectFile("config", "burin.yaml")): Promise<Configuration> {
  const faults: Fault[] = [];
  const take = <T>(written: Written<T>): T | undefined => {
    if (written.ok) return written.value;
    faults.push(...written.faults);
    return undefined;
  };
  const settings = take(readSettings(await readText(file), file));
  if (settings === undefined) throw faulty(faults);

  const catalogueFile = beside(file, settings.catalogue);
  const makes = take(readCatalogue(await readText(catalogueFile), catalogueFile));
  const glossaryFile =
    settings.glossary === undefined ? projectFile("config", "glossary.txt") : beside(file, settings.glossary);
  const glossary = take(readGlossary(await readText(glossaryFile), glossaryFile));
  if (makes === undefined || glossary === undefined) throw faulty(faults);
  const catalogue = {
    ...makes,
    words: makeWords(glossary, await dictionariesOf(settings.languages)),
  };

  const folder = beside(file, settings.editions);
  const names = await readdir(folder).catch((cause: unknown) => {
    throw new CannotRun(`cannot read the folder of editions ${folder}: ${reasonOf(cause)}`, { cause });
  });
  const editions: Edition[] = [];
  for (const name of names.filter((n) => n.endsWith(".yaml")).toSorted()) {
    const edition = take(readEdition(await readText(join(folder, name)), join(folder, name), catalogue));
    if (edition !== undefined) editions.push(edition);
  }
  if (faults.length > 0) throw faulty(faults);
  return { file, settings, catalogue, editions, forms: await knownForms(editions, catalogue, folder) };
}

/** A path of the settings, which are written as seen from the settings file. */
export function beside(file: string, path: string): string {
  return resolve(dirname(file), path);
}

/** Where the record lies. */
export function recordFolder({ file, settings }: Configuration): string {
  return beside(file, settings.record);
}

/** Opens the record that the settings name, making it if need be. */
export async function openRecord(configuration: Configuration): Promise<Store> {
  const folder = recordFolder(configuration);
  try {
    await mkdir(folder, { recursive: true });
    return await openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
  } catch (cause) {
    throw new CannotRun(`cannot open the record in ${folder}: ${reasonOf(cause)}`, { cause });
  }
}

/** A desk at work, with its mailboxes; `close` lets go of everything. */
export interface OpenDesk {
  readonly desk: Desk;
  readonly mailboxes: readonly Mailbox[];
  readonly close: () => Promise<void>;
}

export async function openDesk(
  configuration: Configuration,
  { clock, log }: { clock: Clock; log: Log },
): Promise<OpenDesk> {
  const { file, settings, catalogue, editions, forms } = configuration;
  const around = aroundMail(configuration, { clock, log });
  const { from, also, folder, send, most_per_hour, grace_seconds, lease_seconds } = settings.answers;
  const { authority, received_lines, shared_domains } = settings.trust;
  const nameServers = nameServersOf(settings);
  const [mailboxes, sending] = await Promise.all([
    Promise.all(settings.mailboxes.map((written) => openMailbox(written, around))),
    send === undefined ? undefined : openSender(send, around),
  ]).catch((cause: unknown) => {
    throw new CannotRun(cause instanceof Error ? cause.message : String(cause), { cause });
  });
  const all = [...settings.folders.map((path) => folderMailbox(beside(file, path))), ...mailboxes];
  const desk: Desk = {
    store: await openRecord(configuration),
    reader: openPool({ log, forms }),
    sender: sending ?? folderSender(beside(file, folder ?? ".")),
    clock,
    log,
    chance: Math.random,
    catalogue,
    editions,
    from,
    rules: {
      ours: [from.address, ...also],
      returnPathWritten: settings.mailboxes.length > 0,
      ...(authority === undefined ? {} : { authority }),
      ...(nameServers === undefined ? {} : { nameServers }),
      receivedLines: received_lines,
      ...(settings.notice === undefined ? {} : { notice: settings.notice.to }),
      sharedDomains: shared_domains,
      mostAnswers: { toOne: most_per_hour.to_one, toAll: most_per_hour.to_all },
      lease: lease_seconds,
      grace: grace_seconds,
    },
  };
  return {
    desk,
    mailboxes: all,
    async close() {
      await Promise.all(all.map((mailbox) => mailbox.close()));
      await sending?.close();
      await desk.reader.close();
      await desk.store.close();
    },
  };
}

/** The name servers to ask about senders, none named for those of the system; undefined where none is to be asked. */
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

export const systemClock: Clock = { now: () => new Date() };

async function readText(file: string): Promise<string> {
  return readFile(file, "utf8").catch((cause: unknown) => {
    throw new CannotRun(`cannot read ${file}: ${reasonOf(cause)}`, { cause });
  });
}

function faulty(faults: readonly Fault[]): CannotRun {
  return new CannotRun(faults.map(faultLine).join("\n"));
}
