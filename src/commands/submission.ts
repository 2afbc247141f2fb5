import { mkdir, readdir, readFile, stat, writeFile } from "node:fs/promises";
import { basename, extname, join } from "node:path";
import type { Enclosure } from "../answer/message.ts";
import { dateIn } from "../calendar/dates.ts";
import {
  judgeOpened,
  type OpenLetter,
  openLetter,
  openParts,
  type Pictures,
  picturesOf,
  textsOf,
  usualCaps,
} from "../intake/open.ts";
import { makeReport, type Report } from "../judging/report.ts";
import type { Reader } from "../ports/reader.ts";
import { statementsBeside } from "../reading/reply/beside.ts";
import { openPool } from "../sandbox/pool.ts";
import { openLog } from "../telemetry/log.ts";
import type { Attachment } from "../trade/attachment.ts";
import type { Letter } from "../trade/letter.ts";
import { CannotRun, reasonOf } from "./command.ts";
import { type Configuration } from "./configuration.ts";
import { systemClock } from "./wire.ts";

const endless = Number.POSITIVE_INFINITY;

/** Whoever names files chooses how many there are. Only the size and time of each is bounded. */
const ownCaps = {
  ...usualCaps,
  files: endless,
  total: endless,
  time: { processorMs: endless, clockMs: endless },
};

/** What a submission came to, with the bytes of its files. */
export interface Checked {
  readonly report: Report;
  readonly attachments: readonly Attachment[];
  /** What was seen on their pages, for the answer. */
  readonly pictures: Pictures;
}

/** Gives the use of a reader, and ends it. */
export async function withReader<T>(
  { forms }: Pick<Configuration, "forms">,
  use: (reader: Reader) => Promise<T>,
): Promise<T> {
  const reader = openPool({ log: openLog("warn"), forms });
  try {
    return await use(reader);
  } finally {
    await reader.close();
  }
}

/** Checks PDFs, letters and folders of them as one submission. Throws CannotRun for a path that cannot be read. */
export async function checkPaths(
  paths: readonly string[],
  { catalogue, editions, settings }: Pick<Configuration, "catalogue" | "editions" | "settings">,
  reader: Reader,
): Promise<Checked> {
  const { files, letters, ...letter } = await openAll(reader, await filesOf(paths));
  const today = dateIn(systemClock.now(), settings.time_zone);
  const read = files.map((file) => judgeOpened(file, { editions, catalogue, today }));
  const brought = {
    files: read.map(({ file }) => file),
    sheets: read.flatMap(({ sheet }) => sheet ?? []),
  };
  const known = {
    ...brought,
    texts: textsOf(files),
    earlier: [],
    catalogue,
    furniture: new Set<string>(),
    quoted: [],
    understood: new Set<string>(),
  };
  const statements = letters.flatMap((one) => statementsBeside(one, known));
  const report = makeReport({ ...letter, ...brought, statements }, catalogue);
  return { report, attachments: files.map(({ attachment }) => attachment), pictures: picturesOf(read) };
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

async function filesOf(paths: readonly string[]): Promise<string[]> {
  const files: string[] = [];
  for (const path of paths) {
    const found = await stat(path).catch((cause: unknown) => {
      throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
    });
    if (found.isDirectory()) {
      const all = await readdir(path).catch((cause: unknown) => {
        throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
      });
      const names = all.filter((name) => [".pdf", ".eml"].includes(extname(name).toLowerCase()));
      if (names.length === 0) throw new CannotRun(`no PDF and no .eml in ${path}`);
      files.push(...names.toSorted().map((name) => join(path, name)));
    } else files.push(path);
  }
  return files;
}

/** Loose files count as one letter, numbered 0; letters are numbered after them. */
async function openAll(
  reader: Reader,
  paths: readonly string[],
): Promise<Pick<OpenLetter, "files" | "links" | "unsafe"> & { readonly letters: readonly Letter[] }> {
  const read = await Promise.all(
    paths.map(async (path) => ({
      name: basename(path),
      bytes: new Uint8Array(
        await readFile(path).catch((cause: unknown) => {
          throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
        }),
      ),
    })),
  );
  const isLetter = ({ name }: { name: string }): boolean => extname(name).toLowerCase() === ".eml";
  const loose = read.filter((file) => !isLetter(file)).map((file) => ({ ...file, looks: false }));
  const files = [...(await openParts(reader, loose, "0", ownCaps))];
  const links: string[] = [];
  const letters: Letter[] = [];
  let unsafe = false;
  for (const [i, { bytes }] of read.filter(isLetter).entries()) {
    const opened = await openLetter(reader, bytes, `${i + 1}`);
    files.push(...opened.files);
    links.push(...opened.links);
    letters.push(opened.letter);
    unsafe ||= opened.unsafe;
  }
  return { files, links, letters, unsafe };
}
