import { createHash } from "node:crypto";
import { existsSync, statSync } from "node:fs";
import { access, mkdir, open, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { backup as copyDatabase, DatabaseSync } from "node:sqlite";
import { type Blobs, openBlobs } from "./blobs.ts";
import { isKnownVersion } from "./migrations.ts";

/** What a backup holds. */
export interface Backup {
  readonly letters: number;
  readonly events: number;
  /** Files and letters, by their bytes: each is there once. */
  readonly blobs: number;
}

/** Tables that name bytes. Erased letters have none. */
const naming =
  "SELECT bytes_sha FROM letters WHERE bytes_sha <> '' UNION SELECT bytes_sha FROM attachments UNION SELECT bytes_sha FROM answers";

/** Progress is told each so many files. */
const tellEach = 100;

/** Where a record has its bytes, unless the settings name another place. */
function blobsBeside(record: string): Blobs {
  return openBlobs(join(record, "blobs"));
}

/**
 * Writes a record into one file, an SQLite database with all bytes in it, while others go on working. It is written
 * under another name and then renamed: whole, or not there. Throws when a file of that name is there, or its folder is
 * not.
 */
export async function backUp(
  record: string,
  file: string,
  progress: (share: number) => void,
  blobs: Blobs = blobsBeside(record),
): Promise<Backup> {
  if (existsSync(file)) throw new Error("there is a file of that name");
  if (!existsSync(dirname(file))) throw new Error(`there is no folder ${dirname(file)}`);
  const source = new DatabaseSync(join(record, "record.sqlite"), { readOnly: true, timeout: 10_000 });
  const beside = `${file}.part`;
  await rm(beside, { force: true });
  try {
    // SQLite's online backup: what is written meanwhile is in the copy or is not, never by halves.
    await copyDatabase(source, beside, { rate: 1_000 });
    const copy = new DatabaseSync(beside);
    const made = await takeBlobs(copy, blobs, progress).finally(() => copy.close());
    await makeDurable(beside);
    await rename(beside, file);
    return made;
  } catch (cause) {
    await rm(beside, { force: true });
    throw cause;
  } finally {
    source.close();
  }
}

/** Puts the bytes that a copy names into it. They were written before the rows that name them. */
async function takeBlobs(
  copy: DatabaseSync,
  blobs: Blobs,
  progress: (share: number) => void,
): Promise<Backup> {
  // Nothing of it counts before it is whole.
  copy.exec("PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF");
  copy.exec("CREATE TABLE blobs (sha TEXT PRIMARY KEY, bytes BLOB NOT NULL)");
  const shas = copy.prepare(naming).all() as { bytes_sha: string }[];
  const insert = copy.prepare("INSERT INTO blobs VALUES (?, ?)");
  for (const [i, { bytes_sha }] of shas.entries()) {
    insert.run(bytes_sha, await blobs.get(bytes_sha));
    if (i % tellEach === 0) progress(i / shas.length);
  }
  return { letters: count(copy, "letters"), events: count(copy, "events"), blobs: shas.length };
}

/**
 * Makes a record of a backup. Nothing may be where it goes. All bytes are recounted first, by their hashes; a backup
 * that lacks any, or has others, is refused and nothing is written.
 */
export async function restore(
  file: string,
  record: string,
  progress: (share: number, does: "recounts" | "puts") => void,
  blobs: Blobs = blobsBeside(record),
): Promise<Backup> {
  const target = join(record, "record.sqlite");
  if (existsSync(target)) throw new Error(`there is a record in ${record} already`);
  // Source: SQLite's documentation, "How To Corrupt An SQLite Database File", 1.4: a log that another database has left
  // is taken for this one's, and written into it.
  const log = `${target}-wal`;
  if ((statSync(log, { throwIfNoEntry: false })?.size ?? 0) > 0)
    throw new Error(`${log} is left of another record: put it away first`);
  await access(file);
  const source = new DatabaseSync(file, { readOnly: true });
  try {
    const made = proved(source, (share) => progress(share, "recounts"));
    await mkdir(record, { recursive: true });
    let put = 0;
    for (const { bytes } of source.prepare("SELECT bytes FROM blobs").iterate() as Iterable<{
      bytes: Uint8Array;
    }>) {
      if (put % tellEach === 0) progress(put / made.blobs, "puts");
      put += 1;
      await blobs.put(bytes);
    }
    const beside = `${target}.part`;
    await rm(beside, { force: true });
    await copyDatabase(source, beside);
    const copy = new DatabaseSync(beside);
    // Whoever was signed in there is not signed in here.
    copy.exec("DROP TABLE blobs; DELETE FROM sessions; VACUUM");
    copy.close();
    await makeDurable(beside);
    await rename(beside, target);
    return made;
  } finally {
    source.close();
  }
}

/** Counts what a backup holds. Throws when it is no backup, or when bytes are missing or changed. */
function proved(source: DatabaseSync, progress: (share: number) => void): Backup {
  const has = source.prepare(
    "SELECT count(*) AS count FROM sqlite_schema WHERE name IN ('blobs', 'letters', 'events', 'kysely_migration')",
  );
  if ((has.get() as { count: number }).count !== 4) throw new Error("it is no backup of a record");
  const applied = source.prepare("SELECT name FROM kysely_migration").all() as { name: string }[];
  if (!isKnownVersion(applied.map(({ name }) => name)))
    throw new Error("it is of a newer version of Burin than this one");
  const { integrity_check: sound } = source.prepare("PRAGMA integrity_check").get() as {
    integrity_check: string;
  };
  if (sound !== "ok") throw new Error(`it is damaged: ${sound}`);
  const rows = source.prepare("SELECT sha, bytes FROM blobs").iterate() as Iterable<{
    sha: string;
    bytes: Uint8Array;
  }>;
  const all = count(source, "blobs");
  let blobs = 0;
  for (const { sha, bytes } of rows) {
    if (blobs % tellEach === 0) progress(blobs / all);
    if (createHash("sha256").update(bytes).digest("hex") !== sha)
      throw new Error(`it is damaged: bytes ${sha}`);
    blobs++;
  }
  const missing = source
    .prepare(`SELECT bytes_sha FROM (${naming}) WHERE bytes_sha NOT IN (SELECT sha FROM blobs)`)
    .all();
  if (missing.length > 0) throw new Error(`it lacks the bytes of ${missing.length} files`);
  return { letters: count(source, "letters"), events: count(source, "events"), blobs };
}

function count(database: DatabaseSync, table: "letters" | "events" | "blobs"): number {
  return (database.prepare(`SELECT count(*) AS count FROM ${table}`).get() as { count: number }).count;
}

async function makeDurable(path: string): Promise<void> {
  const file = await open(path, "r");
  await file.sync();
  await file.close();
}
