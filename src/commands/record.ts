import { existsSync } from "node:fs";
import { mkdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Clock } from "../ports/clock.ts";
import type { Store } from "../ports/store.ts";
import { folderOf, isOnServer } from "../settings/record.ts";
import { type Blobs, openBlobs } from "../store/blobs.ts";
import type { Place } from "../store/move.ts";
import { openSqlite, openSqliteToRead } from "../store/sqlite.ts";
import { openStore, readStore } from "../store/store.ts";
import { CannotRun, reasonOf } from "./command.ts";
import { beside, type Configuration } from "./configuration.ts";
import { followClock } from "./record-clock.ts";

type Written = Pick<Configuration, "file" | "settings">;

/** What a record is called: its folder, or its address on a server. */
export function recordName({ file, settings: { record } }: Written): string {
  return isOnServer(record) ? record : beside(file, folderOf(record));
}

/** The folder of a record. Throws CannotRun where it is on a server. */
export function recordFolder(written: Written): string {
  if (isOnServer(written.settings.record))
    throw new CannotRun("the record is on a PostgreSQL server: copy it by pg_dump, or by `burin move`");
  return recordName(written);
}

/** Opens the record that the settings name, making it if need be. */
export async function openRecord(written: Written, clock: Clock): Promise<Store> {
  return orSay(`cannot open the record in ${recordName(written)}`, async () => {
    const { db, blobs, bell } = await openPlace(written);
    return openStore(db, blobs, clock.now(), bell);
  });
}

/** Opens the record that the settings name, if it is there. */
export async function openRecordThere(written: Written, clock: Clock): Promise<Store> {
  const isMissing = !isOnServer(written.settings.record) && !existsSync(fileOf(written));
  if (isMissing) throw new CannotRun(`cannot open the record in ${recordName(written)}: there is no record`);
  return openRecord(written, clock);
}

/** Opens the record that the settings name, to read it. It has to be there, and stays as it is. */
export async function readRecord(written: Written): Promise<Store> {
  return orSay(`cannot read the record in ${recordName(written)}`, async () => {
    const { db, blobs } = await placeToRead(written);
    return readStore(db, blobs);
  });
}

/** The clock by which a record goes: that of its server, or the given one. */
export async function clockOf(store: Store, clock: Clock): Promise<Clock & { readonly stop: () => void }> {
  return store.time === undefined ? { now: clock.now, stop: () => undefined } : followClock(store.time);
}

/** Opens the database of a record and its place for bytes; a record's folder is made if need be. */
export async function openPlace(written: Written): Promise<Place> {
  if (isOnServer(written.settings.record)) return onServer(written);
  await mkdir(recordName(written), { recursive: true });
  return { db: openSqlite(fileOf(written)), blobs: await blobsOf(written) };
}

/** The same, to read it: it has to be there. */
export async function placeToRead(written: Written): Promise<Place> {
  if (isOnServer(written.settings.record)) return onServer(written);
  return { db: openSqliteToRead(fileOf(written)), blobs: await blobsOf(written) };
}

async function onServer(written: Written): Promise<Place> {
  const { record, record_password_env: env, record_password_file: file } = written.settings;
  const { openPostgres } = await import("../store/postgres.ts");
  const { db, bell } = await openPostgres(record, await secretOf(written, env, file));
  return { db, bell, blobs: await blobsOf(written, db) };
}

function fileOf(written: Written): string {
  return join(recordName(written), "record.sqlite");
}

/** Where the bytes of a record are: on an S3 server, or with the record. */
export async function blobsOf(written: Written, db?: Place["db"]): Promise<Blobs> {
  const { bytes } = written.settings;
  if (bytes !== undefined) {
    const { openS3Blobs } = await import("../store/s3-blobs.ts");
    const { s3: address, region, access_key: accessKey } = bytes;
    const secretKey = (await secretOf(written, bytes.secret_key_env, bytes.secret_key_file)) ?? "";
    return openS3Blobs({ address, region, accessKey, secretKey });
  }
  if (db === undefined) return openBlobs(join(recordName(written), "blobs"));
  const { databaseBlobs } = await import("../store/database-blobs.ts");
  return databaseBlobs(db);
}

/** A secret that the settings point to. */
async function secretOf(
  { file }: Written,
  env: string | undefined,
  path: string | undefined,
): Promise<string | undefined> {
  if (path !== undefined)
    return (
      await readFile(beside(file, path), "utf8").catch((cause: unknown) => {
        throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
      })
    ).trim();
  if (env === undefined) return undefined;
  const secret = process.env[env];
  if (secret === undefined) throw new CannotRun(`the environment has no ${env}`);
  return secret;
}

async function orSay<T>(what: string, open: () => Promise<T>): Promise<T> {
  return open().catch((cause: unknown) => {
    if (cause instanceof CannotRun) throw cause;
    throw new CannotRun(`${what}: ${reasonOf(cause)}`, { cause });
  });
}
