import { sql } from "kysely";
import { expect, onTestFinished, test } from "vitest";
import { copyRows, countRows } from "../../src/store/copy-rows.ts";
import { migrate } from "../../src/store/migrations.ts";
import { openSqlite } from "../../src/store/sqlite.ts";

/** An empty database in memory. */
function emptyDatabase() {
  const db = openSqlite(":memory:");
  onTestFinished(() => db.destroy());
  return db;
}

test.each([0, 1, 200, 201, 401])("of %i rows with a key of two columns all are copied", async (count) => {
  const [from, to] = [emptyDatabase(), emptyDatabase()];
  await migrate(from);
  await migrate(to);
  const rows = Array.from({ length: count }, (_, n) => ({
    what: n % 3 === 0 ? "bytes" : "package",
    name: String(n),
  }));
  for (const row of rows) await from.insertInto("to_delete").values(row).execute();
  const copied = await to.transaction().execute((tx) => copyRows(from, tx));
  const all = async (db: typeof from) =>
    db.selectFrom("to_delete").selectAll().orderBy("what").orderBy("name").execute();
  expect(await all(to)).toEqual(await all(from));
  expect(copied.get("to_delete")).toEqual(await countRows(to, "to_delete"));
  expect([...copied].flatMap(([table, { rows: n }]) => (n > 0 ? [[table, n]] : []))).toEqual(
    count === 0 ? [] : [["to_delete", count]],
  );
});

test("rows are the same whatever the order of their columns, and others with one letter changed", async () => {
  const hashOf = async (columns: string, word: string) => {
    const db = emptyDatabase();
    await sql`CREATE TABLE secrets (${sql.raw(columns)})`.execute(db);
    await db.insertInto("secrets").values({ name: "links", value: word }).execute();
    return (await countRows(db, "secrets")).hash;
  };
  const hash = await hashOf("name text, value text", "a");
  expect(await hashOf("value text, name text", "a")).toBe(hash);
  expect(await hashOf("name text, value text", "b")).not.toBe(hash);
});
