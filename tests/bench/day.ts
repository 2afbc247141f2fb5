import { sql } from "kysely";
import { makeDay } from "../../src/audit/day.ts";
import { dayBounds } from "../../src/calendar/dates.ts";
import { migrate } from "../../src/store/migrations.ts";
import { readLetters, readOpenOrders } from "../../src/store/read.ts";
import { openSqlite } from "../../src/store/sqlite.ts";

// Audits a day of so many letters (day.ts [letters]) and prints how long each step took. Each letter has an order of its
// own that waits, an answer, two attachments and two problems. Making the record, in memory, is not counted.

const count = Number(process.argv[2] ?? 12_000);
const { from, to } = dayBounds("2026-11-09", "America/Chicago");
const at = new Date(from.getTime() + 60_000).toISOString();
const db = openSqlite(":memory:");
await migrate(db);

const each = sql`WITH RECURSIVE one(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM one WHERE i < ${count})`;
for (const fill of [
  sql`INSERT INTO letters (id, key, bytes_sha, received_at, state, sender, subject, verdict, kind)
    ${each} SELECT i, 'k' || i, 's', ${at}, 'sent', 'a' || i || '@bench.example', 'Order', 'fail', 'letter' FROM one`,
  sql`INSERT INTO orders (id, buyer, key, number, opened_at, latest)
    ${each} SELECT i, 'b' || i, 'K' || i, 'K-' || i, ${at}, i FROM one`,
  sql`INSERT INTO order_letters (order_id, letter) ${each} SELECT i, i FROM one`,
  sql`INSERT INTO revisions (id, order_id, number, at, cause, letter, verdict, missing, carried, shape, problems)
    ${each} SELECT i, i, 1, ${at}, 'letter', i, 'fail', '[]', '[]', 1, '[]' FROM one`,
  sql`INSERT INTO answers (letter, message_id, recipient, subject, bytes_sha, made_at, sent_at)
    ${each} SELECT i, 'm' || i, 'r', 's', 's', ${at}, ${at} FROM one`,
  sql`INSERT INTO attachments (id, letter, file, kind, bytes_sha)
    ${each} SELECT i || '/' || j, i, j || '.pdf', 'sheet', 's' FROM one, (SELECT 1 AS j UNION SELECT 2)`,
  sql`INSERT INTO problems (letter, "check", wording, severity, verdict, facts, spots)
    ${each} SELECT i, 'check-' || j, 'w', 'stops', 'fail', '{}', '[]' FROM one, (SELECT 1 AS j UNION SELECT 2)`,
])
  await fill.execute(db);

async function timed<T>(what: string, work: () => Promise<T> | T): Promise<T> {
  const start = performance.now();
  const made = await work();
  console.log(`${what.padEnd(12)} ${Math.round(performance.now() - start)} ms`);
  return made;
}

const rows = await db.selectFrom("letters").selectAll().execute();
const letters = await timed("letters", () => readLetters(db, rows));
const open = await timed("open orders", () => readOpenOrders(db, to));
const audit = await timed("audit", () => makeDay("2026-11-09", "America/Chicago", letters, open));
console.log(`${audit.letters.length} letters, ${audit.open.length} open orders`);
await db.destroy();
