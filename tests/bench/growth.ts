/**
 * What a letter costs the main process with so many letters of others in the record already. Twelve letters of twelve
 * buyers are really judged. The rows that they leave in every table are multiplied straight by SQL, in one transaction,
 * under other names and numbers, each copy an hour older than the last; their bytes are not. Records of all sizes stand
 * side by side. Letters of other buyers are answered one by one, each by every record in turn, so that what else the
 * machine does is shared out. Prints the processor time of a letter, as a median, and how many times that with the first
 * record.
 *
 *     npx node tests/bench/growth.ts [--sizes 0,10000,100000] [--letters 40] [--explain]
 *
 * --sizes    letters in each record; a million take about 3 minutes to fill and 12 GB of disk
 * --letters  letters that are measured
 * --explain  prints SQLite's plan of each statement that a letter asked of the largest record, by the time it took
 *
 * Ends with 1 if a letter costs more than 1.2 times what it costs with the first record.
 */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync, type StatementSync } from "node:sqlite";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { deskFor, lettersOf, quantile } from "./desk-for.ts";
import { tellingSender } from "./mailbox-of.ts";
import { told } from "./told.ts";

const {
  sizes,
  letters: count,
  explain,
} = told(import.meta.filename, { sizes: "0,10000,100000", letters: 40, explain: false });
const kinds = 12;
const warming = 5;
const letters = await lettersOf(kinds + warming + count, kinds + warming + count);

/** The columns of a table, and which of them refer to a row that is copied. */
function columnsOf(db: DatabaseSync, table: string): string[] {
  return db
    .prepare(`SELECT name FROM pragma_table_info('${table}')`)
    .all()
    .map(({ name }) => String(name));
}

/** How a column's value differs in the copy numbered `n`; columns that are not named stay as they are. */
const moved: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  letters: {
    id: "id + n * 1000",
    key: "key || '/' || n",
    sender: "n || sender",
    buyer: "n || buyer",
    lane: "n || lane",
    message_id: "n || message_id",
    thread: "n || thread",
  },
  jobs: { id: "id + n * 1000", letter: "letter + n * 1000", claimed_until: "NULL" },
  buyers: { buyer: "n || buyer" },
  numbers: { key: "key || '/' || n", buyer: "n || buyer" },
  attachments: { id: "n || '/' || id", letter: "letter + n * 1000" },
  sheets: {
    id: "n || '/' || id",
    letter: "letter + n * 1000",
    buyer: "n || buyer",
    order_key: "order_key || '/' || n",
  },
  problems: { id: "id + n * 1000", letter: "letter + n * 1000" },
  orders: {
    id: "id + n * 1000",
    buyer: "n || buyer",
    key: "key || '/' || n",
    number: "number || '/' || n",
    latest: "latest + n * 1000",
  },
  order_letters: { order_id: "order_id + n * 1000", letter: "letter + n * 1000" },
  order_terms: { order_id: "order_id + n * 1000" },
  revisions: { id: "id + n * 1000", order_id: "order_id + n * 1000", letter: "letter + n * 1000" },
  revision_sheets: { revision: "revision + n * 1000", sheet: "n || '/' || sheet" },
  questions: { id: "id + n * 1000", order_id: "order_id + n * 1000", opened_by: "opened_by + n * 1000" },
  answers: { letter: "letter + n * 1000", message_id: "n || message_id", recipient: "n || recipient" },
  lines: { sender: "n || sender" },
  events: { id: "id + n * 1000", subject_id: "subject_id + n * 1000" },
};

/** Each copy is an hour older than the one before: a desk with twelve letters an hour. */
function earlier(column: string): string {
  return /^(?:.+_)?at$/.test(column)
    ? `strftime('%Y-%m-%dT%H:%M:%fZ', "${column}", '-' || n || ' hours')`
    : `"${column}"`;
}

/** Copies all rows of the record so many times, under other names. */
function multiply(path: string, times: number): void {
  const db = new DatabaseSync(path);
  // Its indexes are not in the order of the copies, so they are held in memory: two gigabytes at most.
  db.exec("PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF; PRAGMA cache_size = -2000000; BEGIN");
  for (const [table, change] of Object.entries(moved)) {
    const columns = columnsOf(db, table);
    const missing = Object.keys(change).filter((name) => !columns.includes(name));
    if (missing.length > 0) throw new Error(`${table} has no ${missing.join(", ")}`);
    db.exec(
      `WITH RECURSIVE copy(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM copy WHERE n < ${times})
       INSERT INTO ${table} (${columns.map((name) => `"${name}"`).join(", ")})
       SELECT ${columns.map((name) => change[name] ?? earlier(name)).join(", ")} FROM ${table}, copy`,
    );
  }
  db.exec("COMMIT");
  db.close();
}

/** What each statement took so far, in milliseconds; kept only while it is asked for. */
const taken = new Map<string, number>();
let isTimed = false;

/** From here on the time of each statement is kept, by its text. */
function timeStatements(): void {
  // oxlint-disable-next-line typescript/unbound-method -- it is called with the database as `this`
  const { prepare } = DatabaseSync.prototype;
  DatabaseSync.prototype.prepare = function (this: DatabaseSync, sql: string): StatementSync {
    const statement = prepare.call(this, sql);
    for (const way of ["all", "run", "get"] as const) {
      const ask = statement[way].bind(statement) as (...parameters: unknown[]) => never;
      Object.assign(statement, {
        [way]: (...parameters: unknown[]) => {
          const began = performance.now();
          const answer = ask(...parameters);
          if (isTimed) taken.set(sql, (taken.get(sql) ?? 0) + performance.now() - began);
          return answer;
        },
      });
    }
    return statement;
  };
}

/** A record with so many letters, and what a letter costs there: of this process's processor, and by the clock. */
async function recordWith(size: number) {
  const { desk, close, folder } = await deskFor(tellingSender());
  const path = join(folder, "record/record.sqlite");
  const take = async (bytes: Uint8Array): Promise<{ processor: number; clock: number }> => {
    const [began, before] = [performance.now(), process.cpuUsage()];
    await takeLetter(desk, bytes, new Date());
    await takeDue(desk);
    const { user, system } = process.cpuUsage(before);
    return { processor: (user + system) / 1000, clock: performance.now() - began };
  };
  for (const bytes of letters.slice(0, kinds)) await take(bytes);
  const states = await desk.store.letters.states();
  // Copies of a letter that still waits would all wait.
  if (states.sent !== kinds) throw new Error(`not all letters were answered: ${JSON.stringify(states)}`);
  if (size > 0) multiply(path, Math.round(size / kinds));
  const end = async (): Promise<void> => {
    await close();
    rmSync(folder, { recursive: true });
  };
  return { size, path, take, end, costs: [] as { processor: number; clock: number }[] };
}

/** The plans of the statements that took longest. */
function plansOf(path: string): void {
  const db = new DatabaseSync(path, { readOnly: true });
  const longest = [...taken].toSorted(([, a], [, b]) => b - a).slice(0, 15);
  for (const [sql, ms] of longest) {
    console.log(`${(ms / count).toFixed(2)} ms a letter: ${sql}`);
    for (const { detail } of db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all())
      console.log(`    ${String(detail)}`);
  }
  db.close();
}

if (explain) timeStatements();
const records = [];
for (const size of sizes.split(",").map(Number)) {
  const began = performance.now();
  records.push(await recordWith(size));
  console.error(`${size} letters in the record after ${((performance.now() - began) / 1000).toFixed(0)} s`);
}
for (const [n, bytes] of letters.slice(kinds).entries()) {
  if (n % 10 === 0) console.error(`letter ${n} of ${warming + count}`);
  for (const record of records) {
    isTimed = explain && n >= warming && record === records.at(-1);
    const cost = await record.take(bytes);
    isTimed = false;
    if (n >= warming) record.costs.push(cost); // what is read once is read before
  }
}
const medianOf = (
  costs: readonly { processor: number; clock: number }[],
  of: "processor" | "clock",
): number =>
  quantile(
    costs.map((cost) => cost[of]),
    0.5,
  );
const [first] = records;
let worst = 1;
for (const { size, costs, path, end } of records) {
  const times = medianOf(costs, "processor") / medianOf(first?.costs ?? [], "processor");
  worst = Math.max(worst, times);
  console.log(
    `${String(size).padStart(8)} letters before: ${medianOf(costs, "processor").toFixed(1)} ms of the main process, ` +
      `${medianOf(costs, "clock").toFixed(0)} ms by the clock, x ${times.toFixed(2)}`,
  );
  if (explain && size === records.at(-1)?.size) plansOf(path);
  await end();
}
process.exitCode = worst <= 1.2 ? 0 : 1;
