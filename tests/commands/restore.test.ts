import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { expect, test } from "vitest";
import { backup } from "../../src/commands/backup.ts";
import type { Command, Io } from "../../src/commands/command.ts";
import { order } from "../../src/commands/order.ts";
import { restore } from "../../src/commands/restore.ts";
import { openS3Blobs } from "../../src/store/s3-blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { aloneAt, quickReader, takeQuick } from "../make/quick.ts";
import { s3Server } from "../make/s3.ts";

const at = new Date("2026-11-09T15:00:00Z");

/** A folder with settings, and a record of one letter whose bytes lie on a server. `settingsFor` names its record. */
async function filled() {
  const folder = temporaryFolder();
  cpSync("fixtures/trade", folder, { recursive: true });
  cpSync("config/glossary.txt", join(folder, "glossary.txt"));
  const place = await s3Server();
  writeFileSync(join(folder, "key"), place.secretKey);
  const bytes = (address: string): string =>
    `bytes: { s3: "${address}", access_key: ${place.accessKey}, secret_key_file: key }`;
  const settingsFor = (record: string, address = place.address): string => {
    const file = join(folder, `${record}.yaml`);
    const text = readFileSync("config/burin.yaml", "utf8").replaceAll("../out/", "");
    writeFileSync(file, `${text.replace(/^record: .*/m, `record: ${record}`)}\n${bytes(address)}\n`);
    return file;
  };
  mkdirSync(join(folder, "record"));
  const store = await openStore(openSqlite(join(folder, "record", "record.sqlite")), openS3Blobs(place));
  const desk = await temporaryDesk({ store, reader: quickReader, clock: { now: () => at } });
  await takeQuick(desk, { id: "a", dated: at, receivedAt: at, sheets: [aloneAt("T-9", "SALONA")] });
  const letter = await store.letters.bytesOf(1);
  await store.close();
  return { folder, place, settingsFor, letter };
}

async function run(command: Command, ...args: readonly string[]) {
  const said = { out: [] as string[], err: [] as string[], progress: [] as string[] };
  const io: Io = {
    out: (text) => said.out.push(text),
    err: (text) => said.err.push(text),
    progress: (text) => said.progress.push(text),
  };
  const code = await command.run(args, io);
  return { code, out: said.out.join("\n"), err: said.err.join("\n"), progress: said.progress };
}

test("a record whose bytes lie on a server is backed up with them, and restored onto a server", async () => {
  const { folder, place, settingsFor, letter } = await filled();
  const [file, here] = [join(folder, "backup.sqlite"), settingsFor("record")];
  expect(await run(backup, file, "--settings", here)).toMatchObject({ code: 0 });
  const address = `${place.address}-again`;
  const there = settingsFor("again", address);
  expect(await run(restore, file, "--settings", there)).toMatchObject({
    code: 0,
    err: "",
    progress: ["Recounting bytes: 0 %", "Putting bytes: 0 %", ""],
  });
  expect(existsSync(join(folder, "again", "blobs"))).toBe(false);
  const shown = await run(order, "BW-2207", "--json", "--settings", here);
  expect(await run(order, "BW-2207", "--json", "--settings", there)).toEqual(shown);
  const blobs = openS3Blobs({ ...place, address });
  const store = await openStore(openSqlite(join(folder, "again", "record.sqlite")), blobs);
  expect(await store.letters.bytesOf(1)).toEqual(letter);
  await store.close();
});

test("a backup of an older version is brought up to date", async () => {
  const { folder, settingsFor } = await filled();
  const [file, here, there] = [join(folder, "backup.sqlite"), settingsFor("record"), settingsFor("again")];
  await run(backup, file, "--settings", here);
  const older = new DatabaseSync(file);
  older.exec("DROP INDEX orders_unreleased; DROP INDEX orders_released");
  older.exec("DROP INDEX letters_to_pack; ALTER TABLE letters DROP COLUMN to_pack");
  older.exec("DELETE FROM kysely_migration WHERE name >= '025'");
  older.close();
  expect(await run(restore, file, "--settings", there)).toMatchObject({ code: 0, err: "" });
  const shown = await run(order, "BW-2207", "--verify", "--settings", here);
  expect(shown.code).toBe(0);
  expect(await run(order, "BW-2207", "--verify", "--settings", there)).toEqual(shown);
});

test("a backup into a folder that is not there says so, and leaves nothing", async () => {
  const { folder, settingsFor } = await filled();
  const file = join(folder, "missing", "backup.sqlite");
  await expect(run(backup, file, "--settings", settingsFor("record"))).rejects.toThrow(
    `there is no folder ${join(folder, "missing")}`,
  );
  expect(existsSync(join(folder, "missing"))).toBe(false);
});
