import { execFile } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { backUp, restore } from "../../src/store/backup.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { ordersInWords } from "../../src/store/rebuild.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { post } from "../make/thread.ts";

async function deskIn(folder: string): Promise<Desk> {
  const store = await openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
  return temporaryDesk({ store });
}

/** Tells nobody. */
const quiet = (): void => undefined;
const sheet = (n: number) => ({ mark: `P-${n}`, legend: ["SALONA"], fill: { order: `FM-${n}` } });

test("a record comes out of a backup as it went in", async () => {
  const [folder, other] = [temporaryFolder(), join(temporaryFolder(), "record")];
  const desk = await deskIn(folder);
  await post(desk, { sheets: [sheet(1)] });
  await post(desk, { sheets: [sheet(2)] });
  const file = join(temporaryFolder(), "backup.sqlite");
  const made = await backUp(folder, file, () => undefined);
  expect(made).toMatchObject({ letters: 2 });
  expect(await restore(file, other, quiet)).toEqual(made);
  const again = await deskIn(other);
  expect(await again.store.letters.bytesOf(1)).toEqual(await desk.store.letters.bytesOf(1));
  expect(await again.store.answers.of(2)).toEqual(await desk.store.answers.of(2));
  expect(await again.store.orders.named("FM-1")).toEqual(await desk.store.orders.named("FM-1"));
  expect(await again.store.verify()).toMatchObject({ differ: [] });
  expect((await again.store.verify()).broken).toBeUndefined();
  await Promise.all([desk.store.close(), again.store.close()]);
});

test("a backup that is made while letters come is a record of some moment, with all its bytes", async () => {
  const folder = temporaryFolder();
  const desk = await deskIn(folder);
  await post(desk, { sheets: [sheet(0)] });
  const stop = new AbortController();
  let came = 1;
  const working = (async () => {
    for (let n = 1; !stop.signal.aborted; n++) {
      await post(desk, { sheets: [sheet(n)] });
      came = n + 1;
    }
  })();
  const taken: number[] = [];
  for (let i = 0; i < 6; i++) {
    const file = join(temporaryFolder(), "backup.sqlite");
    // Another program makes it, as it would beside the worker.
    await new Promise<void>((resolve, reject) => {
      const code = `import { backUp } from "${join(import.meta.dirname, "../../src/store/backup.ts")}"; await backUp(process.argv[1], process.argv[2], () => undefined);`;
      execFile(process.execPath, ["--input-type=module", "--eval", code, folder, file], (error) =>
        error === null ? resolve() : reject(error),
      );
    });
    const target = join(temporaryFolder(), "record");
    const { letters } = await restore(file, target, quiet);
    taken.push(letters);
    const again = await deskIn(target);
    expect(await again.store.verify()).toMatchObject({ differ: [] });
    for (let letter = 1; letter <= letters; letter++) await again.store.letters.bytesOf(letter);
    await again.store.close();
  }
  stop.abort();
  await working;
  expect(taken).toEqual(taken.toSorted((a, b) => a - b));
  expect(taken.at(-1)).toBeGreaterThan(1);
  expect(taken.at(-1)).toBeLessThanOrEqual(came);
  await desk.store.close();
});

test("nothing is written over, and a damaged backup makes no record", async () => {
  const folder = temporaryFolder();
  const desk = await deskIn(folder);
  await post(desk, { sheets: [sheet(1)] });
  const file = join(temporaryFolder(), "backup.sqlite");
  await backUp(folder, file, () => undefined);
  await expect(backUp(folder, file, () => undefined)).rejects.toThrow("there is a file of that name");
  await expect(restore(file, folder, quiet)).rejects.toThrow("there is a record in");
  const damaged = new DatabaseSync(file);
  damaged.exec("UPDATE blobs SET bytes = x'00' WHERE rowid = 1");
  damaged.close();
  const target = join(temporaryFolder(), "record");
  await expect(restore(file, target, quiet)).rejects.toThrow("it is damaged: bytes");
  expect(existsSync(target)).toBe(false);
  const lacking = new DatabaseSync(file);
  lacking.exec("DELETE FROM blobs WHERE rowid = 1");
  lacking.close();
  await expect(restore(file, target, quiet)).rejects.toThrow("it lacks the bytes of 1 files");
  const empty = join(temporaryFolder(), "empty.sqlite");
  new DatabaseSync(empty).close();
  await expect(restore(empty, target, quiet)).rejects.toThrow("it is no backup");
  await desk.store.close();
});

test("a backup whose tables and indexes differ makes no record", async () => {
  const folder = temporaryFolder();
  await (await deskIn(folder)).store.close();
  const file = join(temporaryFolder(), "backup.sqlite");
  await backUp(folder, file, () => undefined);
  const damaged = new DatabaseSync(file, { defensive: false });
  damaged.exec("INSERT INTO secrets VALUES ('odd', 'x'); CREATE INDEX odd ON secrets (name) WHERE name = ''");
  damaged.exec("PRAGMA writable_schema = ON");
  damaged.exec("UPDATE sqlite_schema SET sql = 'CREATE INDEX odd ON secrets (name)' WHERE name = 'odd'");
  damaged.close();
  const target = join(temporaryFolder(), "record");
  await expect(restore(file, target, quiet)).rejects.toThrow("it is damaged: ");
  expect(existsSync(target)).toBe(false);
});

test("a backup tells after every hundredth of the bytes how far it is", async () => {
  const folder = temporaryFolder();
  const desk = await deskIn(folder);
  for (let n = 0; n < 200; n++)
    await desk.store.letters.receive(`k${n}`, Buffer.from(`${n}`), desk.clock.now());
  await desk.store.close();
  const shares: number[] = [];
  const made = await backUp(folder, join(temporaryFolder(), "backup.sqlite"), (share) => shares.push(share));
  expect(made).toEqual({ letters: 200, events: 200, blobs: 200 });
  expect(shares).toEqual([0, 0.5]);
});

test("of a folder without a record no backup is made, and no record either", async () => {
  const folder = temporaryFolder();
  await expect(backUp(folder, join(folder, "backup.sqlite"), () => undefined)).rejects.toThrow(
    "unable to open",
  );
  expect(readdirSync(folder)).toEqual([]);
});

test("a backup that fails leaves nothing of its name", async () => {
  const folder = temporaryFolder();
  const desk = await deskIn(folder);
  const { letter } = await post(desk, { sheets: [sheet(1)] });
  expect(letter).toBe(1);
  await desk.store.close();
  const database = new DatabaseSync(join(folder, "record.sqlite"));
  database.exec("UPDATE letters SET bytes_sha = 'gone'");
  database.close();
  const out = temporaryFolder();
  await expect(backUp(folder, join(out, "backup.sqlite"), () => undefined)).rejects.toThrow();
  expect(readdirSync(out)).toEqual([]);
});

test("a record that cannot be read is told of as that", async () => {
  const [folder, out] = [temporaryFolder(), temporaryFolder()];
  writeFileSync(join(folder, "record.sqlite"), "no database ".repeat(1_000));
  const copying = backUp(folder, join(out, "backup.sqlite"), () => undefined);
  await expect(copying).rejects.toThrow("file is not a database");
  expect(readdirSync(out)).toEqual([]);
});

test("a backup into a folder that is not there is told of as that", async () => {
  const folder = temporaryFolder();
  const desk = await deskIn(folder);
  const copying = backUp(folder, join(folder, "nowhere", "backup.sqlite"), () => undefined);
  await expect(copying).rejects.toThrow(`there is no folder ${join(folder, "nowhere")}`);
  await desk.store.close();
});

test("what an attempt before has left under the name of a copy is in nobody's way", async () => {
  const [folder, other] = [temporaryFolder(), join(temporaryFolder(), "record")];
  const desk = await deskIn(folder);
  await post(desk, { sheets: [sheet(1)] });
  await desk.store.close();
  const file = join(temporaryFolder(), "backup.sqlite");
  writeFileSync(`${file}.part`, "half a backup");
  const shares: number[] = [];
  const made = await backUp(folder, file, (share) => shares.push(share));
  expect(shares).toEqual([0]);
  mkdirSync(other);
  writeFileSync(join(other, "record.sqlite.part"), "half a record");
  expect(await restore(file, other, quiet)).toEqual(made);
});

test("what is read of orders is the same before and after", async () => {
  const [folder, other] = [temporaryFolder(), join(temporaryFolder(), "record")];
  const desk = await deskIn(folder);
  await post(desk, { sheets: [sheet(1)] });
  const file = join(temporaryFolder(), "backup.sqlite");
  await backUp(folder, file, () => undefined);
  await restore(file, other, quiet);
  const [one, two] = [openSqlite(join(folder, "record.sqlite")), openSqlite(join(other, "record.sqlite"))];
  expect(await ordersInWords(two)).toEqual(await ordersInWords(one));
  await Promise.all([one.destroy(), two.destroy(), desk.store.close()]);
});

test("a backup that is not there is not made by asking for it", async () => {
  const [file, other] = [join(temporaryFolder(), "backup.sqlite"), join(temporaryFolder(), "record")];
  await expect(restore(file, other, quiet)).rejects.toThrow();
  expect([file, other].filter((path) => existsSync(path))).toEqual([]);
});

test("bytes that lie elsewhere are taken from there, and go where others are to lie", async () => {
  const [folder, other] = [temporaryFolder(), join(temporaryFolder(), "record")];
  const [here, there] = [openBlobs(temporaryFolder()), openBlobs(temporaryFolder())];
  const desk = await temporaryDesk({
    store: await openStore(openSqlite(join(folder, "record.sqlite")), here),
  });
  await post(desk, { sheets: [sheet(1)] });
  const file = join(temporaryFolder(), "backup.sqlite");
  const made = await backUp(folder, file, () => undefined, here);
  expect(await restore(file, other, quiet, there)).toEqual(made);
  expect(readdirSync(other)).toEqual(["record.sqlite"]);
  const again = await openStore(openSqlite(join(other, "record.sqlite")), there);
  expect(await again.letters.bytesOf(1)).toEqual(await desk.store.letters.bytesOf(1));
  await Promise.all([desk.store.close(), again.close()]);
});

test("no record is made beside the log that another has left", async () => {
  const [folder, other] = [temporaryFolder(), temporaryFolder()];
  const desk = await deskIn(folder);
  await post(desk, { sheets: [sheet(1)] });
  const file = join(temporaryFolder(), "backup.sqlite");
  await backUp(folder, file, () => undefined);
  await post(desk, { sheets: [sheet(2)] });
  const log = join(other, "record.sqlite-wal");
  cpSync(join(folder, "record.sqlite-wal"), log);
  await expect(restore(file, other, quiet)).rejects.toThrow(`${log} is left of another record`);
  expect(readdirSync(other)).toEqual(["record.sqlite-wal"]);
  // What readers leave behind has nothing in it.
  writeFileSync(log, "");
  await restore(file, other, quiet);
  const again = await deskIn(other);
  expect(await again.store.orders.named("FM-1")).toEqual(await desk.store.orders.named("FM-1"));
  await Promise.all([desk.store.close(), again.store.close()]);
});

test("a backup of a newer version makes no record", async () => {
  const folder = temporaryFolder();
  await (await deskIn(folder)).store.close();
  const file = join(temporaryFolder(), "backup.sqlite");
  await backUp(folder, file, () => undefined);
  const newer = new DatabaseSync(file);
  newer.exec("INSERT INTO kysely_migration VALUES ('999-later', '2027-03-01T00:00:00Z')");
  newer.close();
  const target = join(temporaryFolder(), "record");
  await expect(restore(file, target, quiet)).rejects.toThrow("a newer version of Burin");
  expect(existsSync(target)).toBe(false);
});
