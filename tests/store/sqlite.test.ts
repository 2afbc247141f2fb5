import { spawn } from "node:child_process";
import { once } from "node:events";
import { accessSync, chmodSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { expect, onTestFinished, test } from "vitest";
import { StateMoved } from "../../src/ports/store.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite, openSqliteToRead } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryFolder, temporaryStore } from "../make/desk.ts";
import { completeOrder, deviceAt } from "../make/sample.ts";
import { settled, storeContract } from "./contract.ts";

storeContract(temporaryStore);

test("a record is there when it is opened again", async () => {
  const folder = temporaryFolder();
  const open = () => openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
  const first = await open();
  const { letter } = await first.letters.receive("k", new Uint8Array([1, 2, 3]), new Date(0));
  await first.close();
  const second = await open();
  expect(await second.letters.bytesOf(letter)).toEqual(new Uint8Array([1, 2, 3]));
  await second.close();
});

test("in an older record two buyers may have one number, and the order of each stays his", async () => {
  const db = openSqlite(":memory:");
  const store = await openStore(db, openBlobs(temporaryFolder()));
  onTestFinished(() => store.close());
  await settled(store, "k1", completeOrder());
  await db.updateTable("numbers").set({ buyer: "eve@stranger.example" }).execute();
  await settled(store, "k2", [deviceAt(2, { id: "2/1", finish: "CHK" })]);
  expect((await store.orders.named("BW-2207")).map(({ revision }) => revision)).toEqual([2]);
  const jo = settled(store, "k3", [deviceAt(2, { id: "3/1" })], undefined, { buyer: "jo@oakmoor.example" });
  await expect(jo).rejects.toThrow(StateMoved);
});

test("a record that is opened to be read cannot be changed, and none is made", async () => {
  const path = join(temporaryFolder(), "record.sqlite");
  expect(() => openSqliteToRead(path)).toThrow("there is no record");
  const store = await openStore(openSqlite(path), openBlobs(temporaryFolder()));
  const reader = openSqliteToRead(path);
  expect(await reader.selectFrom("letters").selectAll().execute()).toEqual([]);
  await expect(reader.deleteFrom("letters").execute()).rejects.toThrow("readonly database");
  await Promise.all([store.close(), reader.destroy()]);
});

/** Does something as somebody who may read a folder and write nothing there. */
async function asReader<T>(folder: string, does: () => Promise<T>): Promise<T> {
  const isRoot = process.getuid?.() === 0;
  chmodSync(folder, 0o555);
  // Root may write anywhere.
  if (isRoot) process.seteuid?.(65_534);
  try {
    return await does();
  } finally {
    if (isRoot) process.seteuid?.(0);
    chmodSync(folder, 0o755);
  }
}

test("whoever may only read a record reads it while nobody has it open, and never one whose log he cannot", async (context) => {
  const folder = temporaryFolder();
  const isReached = await asReader(folder, async () => accessSync(folder)).then(
    () => true,
    () => false,
  );
  if (!isReached) context.skip("the folder for temporary files lets nobody else in");
  const path = join(folder, "record.sqlite");
  const blobs = openBlobs(temporaryFolder());
  const first = await openStore(openSqlite(path), blobs);
  await first.letters.receive("k1", new Uint8Array([1]), new Date(0));
  await first.close();
  const read = () =>
    asReader(folder, async () => {
      const db = openSqliteToRead(path);
      const letters = await db.selectFrom("letters").select("key").execute();
      await db.destroy();
      return letters;
    });
  expect(await read()).toEqual([{ key: "k1" }]);
  // What is in its log alone would be missing.
  writeFileSync(`${path}-wal`, "");
  await expect(read()).rejects.toThrow("unable to open database file");
});

test("a database that another program has to itself for a moment is waited for", async () => {
  const path = join(temporaryFolder(), "record.sqlite");
  await openSqlite(path).destroy();
  const holder = new Worker(
    `const { DatabaseSync } = require("node:sqlite");
     const { parentPort, workerData } = require("node:worker_threads");
     const database = new DatabaseSync(workerData);
     database.exec("PRAGMA locking_mode = EXCLUSIVE; BEGIN IMMEDIATE; CREATE TABLE held (x); COMMIT");
     parentPort.postMessage("held");
     setTimeout(() => database.close(), 400);`,
    { eval: true, workerData: path },
  );
  await once(holder, "message");
  // Without waiting it would throw: the database is locked.
  const db = openSqlite(path);
  await db.destroy();
  expect(await once(holder, "exit")).toEqual([0]);
});

test("of two programs that begin a record at once, one waits for the other", async () => {
  const folder = temporaryFolder();
  const program = `
    import { openSqlite } from ${JSON.stringify(new URL("../../src/store/sqlite.ts", import.meta.url).href)};
    import { openStore } from ${JSON.stringify(new URL("../../src/store/store.ts", import.meta.url).href)};
    import { openBlobs } from ${JSON.stringify(new URL("../../src/store/blobs.ts", import.meta.url).href)};
    const store = await openStore(openSqlite(${JSON.stringify(join(folder, "record.sqlite"))}), openBlobs(${JSON.stringify(folder)}));
    await store.close();`;
  const ends = await Promise.all(
    [1, 2, 3].map(async () => {
      const child = spawn(process.execPath, ["--input-type=module", "--eval", program], {
        stdio: ["ignore", "ignore", "inherit"],
      });
      const [code] = (await once(child, "exit")) as [number];
      return code;
    }),
  );
  expect(ends).toEqual([0, 0, 0]);
});
