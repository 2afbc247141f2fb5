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
import type { Health } from "../ports/health.ts";
import type { Log } from "../ports/log.ts";
import type { Mailbox } from "../ports/mailbox.ts";
import type { Store } from "../ports/store.ts";
import type { Edition } from "../reading/edition.ts";
import { type EditionFile, type EditionText, readEditions } from "../reading/editions.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { openPool } from "../sandbox/pool.ts";
import { readPaths, readSettings, type Settings } from "../settings/settings.ts";
import { sharedDomains } from "../settings/shared-domains.ts";
import { openBlobs } from "../store/blobs.ts";
import { openSqlite, openSqliteToRead } from "../store/sqlite.ts";
import { openStore, readStore } from "../store/store.ts";
import { faultIn, faultLine, type Written } from "../yaml/yaml.ts";
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
  /** The same with the files that say them. */
  readonly editionFiles: readonly EditionFile[];
  /** What the pages of sheets are compared with. */
  readonly forms: KnownForms;
}

/** Tries what an edition is for beyond reading, and says why it cannot be had. */
type Prove = (edition: Edition, catalogue: Catalogue) => Promise<string | undefined>;

/**
 * Reads settings, catalogue, glossary and editions. Throws CannotRun with every fault in all of them, and what
 * `prove` says against editions that `drawn` promises.
 */
export async function configure(
  file = projectFile("config", "burin.yaml"),
  prove?: Prove,
): Promise<Configuration> {
  const trouble: string[] = [];
  const take = <T>(written: Written<T>): T | undefined => {
    if (written.ok) return written.value;
    trouble.push(...written.faults.map(faultLine));
    return undefined;
  };
  const open = async <T>(path: string, read: (text: string, file: string) => Written<T>) => {
    const text = await textOf(path, trouble);
    return text === undefined ? undefined : take(read(text, path));
  };
  const written = await textOf(file, trouble);
  if (written === undefined) throw new CannotRun(trouble.join("\n"));
  const settings = take(readSettings(written, file));
  // Settings with a fault may still say where the rest lies.
  const paths = settings ?? readPaths(written, file);
  const catalogueFile = paths.catalogue === undefined ? undefined : beside(file, paths.catalogue);
  const makes = catalogueFile === undefined ? undefined : await open(catalogueFile, readCatalogue);
  const glossary = await open(
    paths.glossary === undefined ? projectFile("config", "glossary.txt") : beside(file, paths.glossary),
    readGlossary,
  );
  const texts = paths.editions === undefined ? [] : await editionTexts(beside(file, paths.editions), trouble);
  const { editions, faults } = readEditions(texts, makes);
  trouble.push(...faults.map(faultLine));
  const catalogue =
    makes === undefined || glossary === undefined
      ? undefined
      : { ...makes, words: makeWords(glossary, await dictionariesOf(settings?.languages ?? [])) };
  if (prove !== undefined && catalogue !== undefined)
    for (const { edition, text, file } of editions.filter((one) => one.edition.drawn)) {
      const what = await prove(edition, catalogue);
      if (what !== undefined) trouble.push(faultLine(faultIn(text, file, ["drawn"], what)));
    }
  if (trouble.length > 0 || settings === undefined || catalogue === undefined)
    throw new CannotRun(trouble.join("\n"));
  return {
    file,
    settings,
    catalogue,
    editions: editions.map(({ edition }) => edition),
    editionFiles: editions,
    forms: await knownForms(
      editions.map(({ edition }) => edition),
      catalogue,
      beside(file, settings.editions),
    ),
  };
}

async function editionTexts(folder: string, trouble: string[]): Promise<EditionText[]> {
  const names = await readdir(folder).catch((cause: unknown) => {
    trouble.push(`cannot read the folder of editions ${folder}: ${reasonOf(cause)}`);
    return [];
  });
  const texts: EditionText[] = [];
  for (const name of names.filter((n) => n.endsWith(".yaml")).toSorted()) {
    const file = join(folder, name);
    const text = await textOf(file, trouble);
    if (text !== undefined) texts.push({ file, text });
  }
  return texts;
}

async function textOf(file: string, trouble: string[]): Promise<string | undefined> {
  return readFile(file, "utf8").catch((cause: unknown) => {
    trouble.push(`cannot read ${file}: ${reasonOf(cause)}`);
    return undefined;
  });
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
export async function openRecord(configuration: Configuration, clock: Clock): Promise<Store> {
  const folder = recordFolder(configuration);
  try {
    await mkdir(folder, { recursive: true });
    return await openStore(
      openSqlite(join(folder, "record.sqlite")),
      openBlobs(join(folder, "blobs")),
      clock.now(),
    );
  } catch (cause) {
    throw new CannotRun(`cannot open the record in ${folder}: ${reasonOf(cause)}`, { cause });
  }
}

/** Opens the record that the settings name to read it. It has to be there, and stays as it is. */
export async function readRecord(configuration: Configuration): Promise<Store> {
  const folder = recordFolder(configuration);
  try {
    return await readStore(openSqliteToRead(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
  } catch (cause) {
    throw new CannotRun(`cannot read the record in ${folder}: ${reasonOf(cause)}`, { cause });
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
  { clock, log, health, secret }: { clock: Clock; log: Log; health?: Health; secret?: string },
): Promise<OpenDesk> {
  const { file, settings, catalogue, editions, forms } = configuration;
  const around = {
    ...aroundMail(configuration, { clock, log }),
    ...(health === undefined ? {} : { health }),
  };
  const { from, also, folder, send, most_per_hour, most_per_day } = settings.answers;
  const { grace_seconds, lease_seconds, patience_seconds } = settings.answers;
  const { authority, received_lines, known, staff } = settings.trust;
  const nameServers = nameServersOf(settings);
  const [mailboxes, sending] = await Promise.all([
    Promise.all(settings.mailboxes.map((written) => openMailbox(written, around))),
    send === undefined ? undefined : openSender(send, around, patience_seconds * 1000),
  ]).catch((cause: unknown) => {
    throw new CannotRun(cause instanceof Error ? cause.message : String(cause), { cause });
  });
  const all = [...settings.folders.map((path) => folderMailbox(beside(file, path))), ...mailboxes];
  const store = await openRecord(configuration, clock);
  const desk: Desk = {
    store,
    reader: openPool({ log, forms }),
    sender: sending ?? folderSender(beside(file, folder ?? ".")),
    clock,
    log,
    chance: Math.random,
    catalogue,
    editions,
    timeZone: settings.time_zone,
    from,
    secret: secret ?? (await store.answers.secret()),
    rules: {
      ours: [from.address, ...also],
      returnPathWritten: settings.mailboxes.length > 0,
      ...(authority === undefined ? {} : { authority }),
      ...(nameServers === undefined ? {} : { nameServers }),
      receivedLines: received_lines,
      ...(settings.notice === undefined ? {} : { notice: settings.notice.to }),
      sharedDomains: sharedDomains(settings.trust),
      known,
      staff,
      mostAnswers: {
        toOne: most_per_hour.to_one,
        toAll: most_per_hour.to_all,
        toOneADay: most_per_day.to_one,
        inThreadADay: most_per_day.in_thread,
      },
      lease: lease_seconds,
      patience: patience_seconds,
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
