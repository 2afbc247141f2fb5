/**
 * What a letter costs the main process with so many letters of others in the record already. The record is filled with
 * copies of real rows, straight by SQL, then letters of another buyer are answered one by one. Prints processor time a
 * letter beside that with an empty record.
 *
 *     npx node tests/bench/growth.ts [--sizes 0,10000,100000] [--letters 40]
 *
 * Ends with 1 if a letter costs more than 1.2 times what it costs with an empty record.
 */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { parseArgs } from "node:util";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { deskFor, lettersOf, quantile } from "./desk-for.ts";
import { tellingSender } from "./mailbox-of.ts";

const { values } = parseArgs({
  options: {
    sizes: { type: "string", default: "0,10000,100000" },
    letters: { type: "string", default: "40" },
  },
});
const count = Number(values.letters);
const kinds = 12;
const letters = await lettersOf(2 * count + kinds, 2 * count + kinds);

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

/** Copies all rows of the record so many times, under other names. */
function multiply(path: string, times: number): void {
  const db = new DatabaseSync(path);
  db.exec("PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF; BEGIN");
  for (const [table, change] of Object.entries(moved)) {
    const columns = columnsOf(db, table);
    const missing = Object.keys(change).filter((name) => !columns.includes(name));
    if (missing.length > 0) throw new Error(`${table} has no ${missing.join(", ")}`);
    db.exec(
      `WITH RECURSIVE copy(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM copy WHERE n < ${times})
       INSERT INTO ${table} (${columns.map((name) => `"${name}"`).join(", ")})
       SELECT ${columns.map((name) => change[name] ?? `"${name}"`).join(", ")} FROM ${table}, copy`,
    );
  }
  db.exec("COMMIT");
  db.close();
}

/** Milliseconds of this process's processor, and by the clock, that the letters take each with a record of this size. */
async function costWith(size: number): Promise<{ readonly processor: number; readonly clock: number }> {
  const sender = tellingSender();
  const { desk, close, folder } = await deskFor(sender);
  const take = async (bytes: Uint8Array): Promise<{ processor: number; clock: number }> => {
    const [began, before] = [performance.now(), process.cpuUsage()];
    await takeLetter(desk, bytes, new Date());
    await takeDue(desk);
    const { user, system } = process.cpuUsage(before);
    return { processor: (user + system) / 1000, clock: performance.now() - began };
  };
  for (const bytes of letters.slice(0, kinds)) await take(bytes);
  if (size > 0) multiply(join(folder, "record/record.sqlite"), Math.round(size / kinds));
  for (const bytes of letters.slice(kinds, kinds + count)) await take(bytes); // what is read once is read now
  const costs = [];
  for (const bytes of letters.slice(kinds + count)) costs.push(await take(bytes));
  await close();
  rmSync(folder, { recursive: true });
  return {
    processor: quantile(
      costs.map(({ processor }) => processor),
      0.5,
    ),
    clock: quantile(
      costs.map(({ clock }) => clock),
      0.5,
    ),
  };
}

await costWith(0);
const empty = await costWith(0);
let worst = 1;
for (const size of values.sizes.split(",").map(Number)) {
  const { processor, clock } = size === 0 ? empty : await costWith(size);
  worst = Math.max(worst, processor / empty.processor);
  console.log(
    `${String(size).padStart(8)} letters before: ${processor.toFixed(0)} ms of the main process, ${clock.toFixed(0)} ms by the clock, x ${(processor / empty.processor).toFixed(2)}`,
  );
}
process.exitCode = worst <= 1.2 ? 0 : 1;
