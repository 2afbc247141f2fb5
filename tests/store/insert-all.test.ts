import { expect, onTestFinished, test } from "vitest";
import { openBlobs } from "../../src/store/blobs.ts";
import { insertAll } from "../../src/store/insert-all.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryFolder } from "../make/desk.ts";

test.each([0, 1, 500, 501, 1_000])("of %i rows each is there once", async (count) => {
  const db = openSqlite(":memory:");
  const store = await openStore(db, openBlobs(temporaryFolder()));
  onTestFinished(() => store.close());
  const rows = Array.from({ length: count }, (_, n) => ({ what: "bytes", name: `${10_000 + n}` }));
  await db.transaction().execute((tx) => insertAll(tx, "to_delete", rows));
  expect(await db.selectFrom("to_delete").selectAll().orderBy("name").execute()).toEqual(rows);
});
