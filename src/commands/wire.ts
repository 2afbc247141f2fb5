import { mkdir, readdir, readFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { type Catalogue, readCatalogue } from "../catalogue/catalogue.ts";
import type { Desk } from "../intake/desk.ts";
import { folderMailbox, folderSender } from "../mail/folder.ts";
import type { Clock } from "../ports/clock.ts";
import type { Log } from "../ports/log.ts";
import type { Mailbox } from "../ports/mailbox.ts";
import type { Store } from "../ports/store.ts";
import { type Edition, readEdition } from "../reading/edition.ts";
import { readSettings, type Settings } from "../settings/settings.ts";
import { openBlobs } from "../store/blobs.ts";
import { openSqlite } from "../store/sqlite.ts";
import { openStore } from "../store/store.ts";
import { type Fault, faultLine, type Written } from "../yaml/yaml.ts";
import { CannotRun } from "./command.ts";

/** The option that every command with settings has. */
export const settingsOption = {
  settings: { type: "string", takes: "FILE", tells: "the settings (default config/burin.yaml)" },
} as const;

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

  const beside = (path: string): string => resolve(dirname(file), path);
  const catalogueFile = beside(settings.catalogue);
  const catalogue = take(readCatalogue(await readText(catalogueFile), catalogueFile));
  if (catalogue === undefined) throw faulty(faults);

  const folder = beside(settings.editions);
  const names = await readdir(folder).catch((cause: unknown) => {
    throw new CannotRun(`cannot read the folder of editions ${folder}`, { cause });
  });
  const editions: Edition[] = [];
  for (const name of names.filter((n) => n.endsWith(".yaml")).toSorted()) {
    const edition = take(readEdition(await readText(join(folder, name)), join(folder, name), catalogue));
    if (edition !== undefined) editions.push(edition);
  }
  if (faults.length > 0) throw faulty(faults);
  return { file, settings, catalogue, editions };
}

/** Opens the record that the settings name, making it if need be. */
export async function openRecord({ file, settings }: Configuration): Promise<Store> {
  const folder = resolve(dirname(file), settings.record);
  await mkdir(folder, { recursive: true });
  return openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
}

/** The mailbox and the desk that answers it. */
export async function openDesk(
  configuration: Configuration,
  { clock, log }: { clock: Clock; log: Log },
): Promise<{ desk: Desk; mailbox: Mailbox }> {
  const { file, settings, catalogue, editions } = configuration;
  const beside = (path: string): string => resolve(dirname(file), path);
  return {
    mailbox: folderMailbox(beside(settings.mailbox.folder)),
    desk: {
      store: await openRecord(configuration),
      sender: folderSender(beside(settings.answers.folder)),
      from: settings.answers.from,
      clock,
      log,
      catalogue,
      editions,
    },
  };
}

export const systemClock: Clock = { now: () => new Date() };

/** One line a sentence, on the standard error stream. */
export function lineLog(err: (text: string) => void): Log {
  const write = (level: string) => (fields: Readonly<Record<string, unknown>>, sentence: string) =>
    err(
      `${level} ${sentence} ${JSON.stringify(fields, (_, value: unknown) => (value instanceof Error ? value.message : value))}`,
    );
  return { info: write("info"), warn: write("warn") };
}

async function readText(file: string): Promise<string> {
  return readFile(file, "utf8").catch((cause: unknown) => {
    throw new CannotRun(`cannot read ${file}`, { cause });
  });
}

function faulty(faults: readonly Fault[]): CannotRun {
  return new CannotRun(faults.map(faultLine).join("\n"));
}
