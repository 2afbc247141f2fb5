import { mkdir, readdir, readFile, stat, writeFile } from "node:fs/promises";
import { basename, extname, join } from "node:path";
import type { Enclosure } from "../answer/message.ts";
import { usualCaps } from "../intake/open.ts";
import { type Tried, type TriedFile, tryFiles } from "../intake/try.ts";
import type { Reader } from "../ports/reader.ts";
import { openPool } from "../sandbox/pool.ts";
import { openLog } from "../telemetry/log.ts";
import { CannotRun, reasonOf } from "./command.ts";
import { type Configuration } from "./configuration.ts";
import { systemClock } from "./system-clock.ts";

const endless = Number.POSITIVE_INFINITY;

/** Whoever names files chooses how many there are. Only the size and time of each is bounded. */
const ownCaps = {
  ...usualCaps,
  files: endless,
  total: endless,
  time: { processorMs: endless, clockMs: endless },
};

/** Gives the use of a reader, and ends it. */
export async function withReader<T>(
  { forms }: Partial<Pick<Configuration, "forms">>,
  use: (reader: Reader) => Promise<T>,
): Promise<T> {
  const reader = openPool({ log: openLog("warn"), ...(forms === undefined ? {} : { forms }) });
  try {
    return await use(reader);
  } finally {
    await reader.close();
  }
}

/**
 * Checks PDFs, letters and folders of them as one submission. Throws CannotRun for a path that cannot be read.
 * `unread` is given what else lies in a folder.
 */
export async function checkPaths(
  paths: readonly string[],
  { catalogue, editions, settings }: Pick<Configuration, "catalogue" | "editions" | "settings">,
  reader: Reader,
  unread: (path: string) => void = () => undefined,
): Promise<Tried> {
  const files = await Promise.all((await filesOf(paths, unread)).map(readNamed));
  const desk = { reader, catalogue, editions, timeZone: settings.time_zone, clock: systemClock };
  return tryFiles(desk, files, ownCaps);
}

async function readNamed(path: string): Promise<TriedFile> {
  const bytes = await readFile(path).catch((cause: unknown) => {
    throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
  });
  return { name: basename(path), bytes: new Uint8Array(bytes) };
}

/** Writes files into a folder; gives their paths. */
export async function writeFiles(
  files: readonly Pick<Enclosure, "file" | "bytes">[],
  folder: string,
): Promise<string[]> {
  try {
    await mkdir(folder, { recursive: true });
    for (const { file, bytes } of files) await writeFile(join(folder, file), bytes);
  } catch (cause) {
    throw new CannotRun(`cannot write into ${folder}: ${reasonOf(cause)}`, { cause });
  }
  return files.map(({ file }) => join(folder, file));
}

async function filesOf(paths: readonly string[], unread: (path: string) => void): Promise<string[]> {
  const files: string[] = [];
  for (const path of paths) {
    const found = await stat(path).catch((cause: unknown) => {
      throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
    });
    if (found.isDirectory()) {
      const all = await readdir(path).catch((cause: unknown) => {
        throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
      });
      const isRead = (name: string): boolean => [".pdf", ".eml"].includes(extname(name).toLowerCase());
      const names = all.filter(isRead);
      if (names.length === 0) throw new CannotRun(`no PDF and no .eml in ${path}`);
      files.push(...names.toSorted().map((name) => join(path, name)));
      // What systems keep for themselves begins with a dot.
      for (const name of all.toSorted()) if (!isRead(name) && !name.startsWith(".")) unread(join(path, name));
    } else files.push(path);
  }
  return files;
}
