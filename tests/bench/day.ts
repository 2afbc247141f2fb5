import { sql } from "kysely";
import { readPeriod } from "../../src/audit/period.ts";
import { calendarOf } from "../../src/calendar/business-days.ts";
import { dayBounds } from "../../src/calendar/dates.ts";
import { readAudited } from "../../src/store/audited.ts";
import { migrate } from "../../src/store/migrations.ts";
import { openSqlite } from "../../src/store/sqlite.ts";

// Audits a day of so many letters (day.ts [letters]) and prints how long it took. Each letter has an order of its
// own that waits, an answer, two sheets and two slips. Making the record, in memory, is not counted.

const count = Number(process.argv[2] ?? 12_000);
const { from } = dayBounds("2026-11-09", "America/Chicago");
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
  sql`INSERT INTO sheets (id, letter, buyer, order_key, kind, edition, verdict, shape, content)
    ${each} SELECT i || '/' || j, i, 'b' || i, 'K' || i, 'device', 'e', 'fail', 1, '{}' FROM one, (SELECT 1 AS j UNION SELECT 2)`,
  sql`INSERT INTO questions (order_id, key, shape, problem, opened_at, opened_by, number)
    ${each} SELECT i, 'q' || j, 1, json_object('check', 'check-' || j, 'wording', 'w', 'severity', 'stops', 'verdict', 'fail',
      'facts', json('{}'), 'spots', json_array(json_object('file', i || '/' || j))), ${at}, i, j FROM one, (SELECT 1 AS j UNION SELECT 2)`,
  sql`INSERT INTO events (at, actor, subject, subject_id, what, words, hash)
    ${each} SELECT ${at}, 'burin', 'letter', i, what, '', 'h' FROM one, (SELECT 'ready' AS what UNION SELECT 'sent')`,
])
  await fill.execute(db);

const day = { first: "2026-11-09", last: "2026-11-09" };
const calendar = calendarOf({ timeZone: "America/Chicago" });
const start = performance.now();
const { figures } = await readPeriod((since, until) => readAudited(db, since, until), day, calendar);
console.log(`${Math.round(performance.now() - start)} ms`);
console.log(
  `${figures.letters} letters, ${figures.opened} orders, ${figures.slips} slips, ${figures.secondsToAnswer.count} answers`,
);
await db.destroy();
