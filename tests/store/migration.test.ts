import { readFileSync } from "node:fs";
import { DatabaseSync } from "node:sqlite";
import { sql } from "kysely";
import { expect, test } from "vitest";
import type { Store } from "../../src/ports/store.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore, readStore } from "../../src/store/store.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const greta = "greta@fallowmere.example";

/** A record made when sheets were marked as counting, opened now. */
async function oldRecord(changes = ""): Promise<Store> {
  const folder = temporaryFolder();
  const database = new DatabaseSync(`${folder}/record.sqlite`);
  database.exec(readFileSync("fixtures/raw/record-005.sql", "utf8"));
  database.exec(changes);
  database.close();
  return openStore(openSqlite(`${folder}/record.sqlite`), openBlobs(`${folder}/blobs`));
}

test("every order of an older record is what it was, with its sheets, the stopped one among them", async () => {
  const store = await oldRecord();
  const orders = async (number: string) =>
    (await store.orders.named(number)).map(({ buyer, verdict, revision, sheets, letters, replies }) => [
      buyer,
      verdict,
      revision,
      sheets.map(({ file }) => file),
      letters.map(({ letter }) => letter),
      replies.map(({ letter }) => letter),
    ]);
  // In a record of that time a stranger who named a number had an order of it beside the buyer's.
  expect(await orders("FM-72")).toEqual([
    [greta, "fail", 1, ["B-5.pdf", "B-5 (2).pdf", "B-5 (3).pdf"], [1], []],
    ["eve@stranger.example", "person", 1, ["X-1.pdf"], [6], []],
  ]);
  expect(await orders("FM-73")).toEqual([[greta, "pass", 1, ["C-1.pdf"], [2], []]]);
  expect(await orders("FM-80")).toEqual([[greta, "confirm", 2, ["D-1.pdf", "D-2.pdf"], [3, 4], [5]]]);
  expect(await orders("FM-19")).toEqual([[greta, undefined, 2, [], [8, 9], []]]);
  expect(await store.buyers.ownerOf("FM-72")).toEqual({ buyer: greta });
  await store.close();
});

test("its reasons, questions, kept words and past days are carried over", async () => {
  const store = await oldRecord();
  const [failed] = await store.orders.named("FM-72");
  expect(failed?.problems.map(({ check }) => check)).toContain("row-too-long");
  const [asked] = await store.orders.named("FM-80");
  expect(asked?.questions.map(({ problem }) => problem.check)).toEqual(["spelling"]);
  expect(await store.buyers.keptWords(greta)).toMatchObject([{ word: "SALONA" }]);
  const open = await store.orders.openAt(new Date("2026-11-10T00:00:00Z"));
  expect(open.map(({ number, verdict }) => `${number} ${verdict}`)).toEqual([
    "FM-72 fail",
    "FM-80 confirm",
    "FM-72 person",
    "FM-91 confirm",
  ]);
  await store.close();
});

test("of its letters those wait for a person that waited before", async () => {
  const store = await oldRecord();
  const waiting = await store.people.waiting(new Date("2026-11-10T00:00:00Z"));
  // Nothing is left of the order of letter 8; letter 1 asks for nothing but a corrected sheet.
  expect(waiting.map(({ letter, verdict }) => `${letter} ${verdict}`)).toEqual([
    "3 confirm",
    "4 confirm",
    "5 person",
    "6 person",
    "7 confirm",
    "9 confirm",
  ]);
  await store.close();
});

test("letters go on where they were: a stopped sheet is still stopped, and mended", async () => {
  const desk = await temporaryDesk({ store: await oldRecord() });
  const place = { gangs: "2", standing: "in-plate" };
  const other = await post(desk, {
    sheets: [{ mark: "B-5", legend: ["STEAM"], fill: { ...place, position: "1" } }],
  });
  expect(other.verdict).toBe("fail");
  const mended = await post(desk, {
    sheets: [{ mark: "B-5", legend: ["RECEPTN"], fill: { ...place, position: "2" } }],
  });
  expect(mended.verdict).toBe("pass");
  expect((await desk.store.orders.named("FM-72"))[0]).toMatchObject({ verdict: "pass", revision: 3 });
  await desk.store.close();
});

test("a stranger's order of an older record under the buyer's number can still be written about", async () => {
  const desk = await temporaryDesk({ store: await oldRecord() });
  const eve = "Eve Moran <eve@stranger.example>";
  const record = await post(desk, { from: eve, text: "Please cancel FM-72." });
  expect([record.state, record.verdict]).toEqual(["sent", "person"]);
  const orders = await desk.store.orders.named("FM-72");
  expect(orders.map(({ buyer, carried }) => [buyer, carried.map(({ text }) => text)])).toEqual([
    [greta, []],
    ["eve@stranger.example", ["Please cancel FM-72."]],
  ]);
  await desk.store.close();
});

test("what an older record had under a placeholder has no number now, and is nobody's for others", async () => {
  const store = await oldRecord("UPDATE orders SET key = 'TBD', number = 'TBD' WHERE number = 'FM-91'");
  const { orders } = await store.buyers.stateOf(greta, []);
  expect(orders.map(({ number }) => number)).toContain("TBD");
  expect((await store.orders.revisionsOf(greta, ["TBD"])).get("TBD")).toBeGreaterThan(0);
  expect(await store.buyers.ownerOf("TBD")).toBeUndefined();
  await store.close();
});

test("a record of another version is read by none that does not bring it up to date", async () => {
  const folder = temporaryFolder();
  const open = () => readStore(openSqlite(`${folder}/record.sqlite`), openBlobs(`${folder}/blobs`));
  await expect(open()).rejects.toThrow("there is no record");
  await (await openStore(openSqlite(`${folder}/record.sqlite`), openBlobs(`${folder}/blobs`))).close();
  await (await open()).close();
  const database = new DatabaseSync(`${folder}/record.sqlite`);
  const before = "DELETE FROM kysely_migration WHERE name = '023-unfinished' RETURNING *";
  const { timestamp } = database.prepare(before).get() as { timestamp: string };
  await expect(open()).rejects.toThrow("the record is of another version of Burin");
  const put = database.prepare("INSERT INTO kysely_migration VALUES (?, ?)");
  for (const name of ["023-unfinished", "999-of-tomorrow"]) put.run(name, timestamp);
  database.close();
  await expect(open()).rejects.toThrow("the record is of another version of Burin");
  await expect(
    openStore(openSqlite(`${folder}/record.sqlite`), openBlobs(`${folder}/blobs`)),
  ).rejects.toThrow("the record is of a newer version of Burin than this one");
});

test("an order of an older record that is released and fails is on the people's list", async () => {
  const folder = temporaryFolder();
  const open = () => openStore(openSqlite(`${folder}/record.sqlite`), openBlobs(`${folder}/blobs`));
  const store = await open();
  const sheets = [{ mark: "P-1", legend: ["WESTERN TERRACES AND WALKS"] }];
  expect((await post(await temporaryDesk({ store }), { sheets })).verdict).toBe("fail");
  expect(await store.people.orders()).toEqual([]);
  await store.close();
  const database = new DatabaseSync(`${folder}/record.sqlite`);
  const released = { revision: 1, at: "2026-11-09T15:00:00.000Z", on: "2026-11-09", by: "Ada", pieces: [] };
  database.prepare("UPDATE orders SET released = ?").run(JSON.stringify(released));
  database.exec(`DELETE FROM kysely_migration WHERE name >= '024-released';
    DROP INDEX orders_unreleased; DROP INDEX orders_released;
    DROP INDEX letters_to_pack; ALTER TABLE letters DROP COLUMN to_pack`);
  database.close();
  const migrated = await open();
  expect((await migrated.people.orders()).map(({ verdict }) => verdict)).toEqual(["fail"]);
  await migrated.close();
});

test("a database that cannot be brought up to date is not opened, and stays as it was", async () => {
  const db = openSqlite(":memory:");
  await sql`CREATE TABLE letters (of TEXT)`.execute(db);
  await expect(openStore(db, openBlobs(temporaryFolder()))).rejects.toThrow(
    "the record could not be brought up to date",
  );
  const { rows } = await sql<{ name: string }>`SELECT name FROM sqlite_schema`.execute(db);
  expect(rows.map(({ name }) => name)).toEqual(["letters"]);
  await db.destroy();
});
