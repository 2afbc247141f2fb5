/**
 * How fast the desk's pages are with a large record: each page's time by the clock and of the processor, beside the same
 * page on a record of 100 orders; the rows are written straight into the
 * tables; their contents are those of one order that was really judged.
 *
 *     npx node tests/bench/desk-pages.ts [ORDERS]
 */
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { deskApp } from "../../src/desk/app.ts";
import { hashPassword } from "../../src/desk/passwords.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { catalogue, editions } from "../make/config.ts";
import { keepingSender } from "../make/desk.ts";
import { directReader } from "../make/reader.ts";
import { post } from "../make/thread.ts";

const many = Number(process.argv[2] ?? 100_000);
const few = 100;
const rounds = 25;
const address = "http://desk.quillgate.example";
/** One order of so many waits for one of us. */
const forPerson = 500;
const verdicts = ["pass", "pass", "pass", "waiting", "confirm", "fail"] as const;

const folder = mkdtempSync(join(tmpdir(), "burin-bench-"));

/** A record of one order that was judged, and that many copies of it under other numbers. */
async function recordOf(orders: number): Promise<string> {
  const path = join(folder, String(orders));
  mkdirSync(path);
  const store = await openStore(openSqlite(join(path, "record.sqlite")), openBlobs(join(path, "blobs")));
  await post(deskOver(store), { sheets: [{ mark: "P-1", legend: ["SALONA"], fill: { order: "FM-1" } }] });
  await store.close();
  const db = new DatabaseSync(join(path, "record.sqlite"));
  db.exec("PRAGMA synchronous = OFF; BEGIN");
  const numbers = `WITH RECURSIVE n(i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < ${orders})`;
  const verdict = `CASE WHEN i % ${forPerson} = 0 THEN 'person' ELSE CASE i % 6 ${verdicts.map((one, n) => `WHEN ${n} THEN '${one}'`).join(" ")} END END`;
  const at = `strftime('%Y-%m-%dT%H:%M:%fZ', 1750000000 + i * 60, 'unixepoch')`;
  db.exec(`${numbers} INSERT INTO letters (id, key, bytes_sha, received_at, state, sender, buyer, subject, verdict, kind)
    SELECT i, 'k' || i, bytes_sha, ${at}, 'sent', 'buyer' || (i % 900) || '@fallowmere.example', 'buyer' || (i % 900) || '@fallowmere.example', subject, ${verdict}, 'letter' FROM n, (SELECT * FROM letters WHERE id = 1)`);
  db.exec(`${numbers} INSERT INTO orders (id, buyer, key, number, project, opened_at, latest, verdict, for_person)
    SELECT i, 'buyer' || (i % 900) || '@fallowmere.example', 'FM' || i, 'FM-' || i, 'Project ' || (i % 3000), ${at}, i, ${verdict}, CASE WHEN i % ${forPerson} = 0 THEN 1 ELSE 0 END FROM n`);
  db.exec(`${numbers} INSERT INTO revisions (id, order_id, number, at, cause, letter, verdict, missing, carried, withdrawn, shape, problems)
    SELECT i, i, 1, ${at}, 'letter', i, ${verdict}, missing, carried, withdrawn, shape, problems FROM n, (SELECT * FROM revisions WHERE id = 1)`);
  db.exec(
    `${numbers} INSERT INTO revision_sheets SELECT i, sheet FROM n, (SELECT sheet FROM revision_sheets WHERE revision = 1)`,
  );
  db.exec(`${numbers} INSERT INTO order_letters (order_id, letter) SELECT i, i FROM n`);
  db.exec(`${numbers} INSERT INTO questions (order_id, key, shape, problem, station, position, opened_at, opened_by, number)
    SELECT i, key, shape, problem, station, position, ${at}, i, number FROM n, (SELECT * FROM questions WHERE order_id = 1 LIMIT 1) WHERE i % 6 = 4`);
  db.exec(
    `${numbers} INSERT INTO order_terms (order_id, term) SELECT i, term FROM n, (SELECT term FROM order_terms WHERE order_id = 1 AND term NOT LIKE 'FM%')`,
  );
  db.exec(`${numbers} INSERT INTO order_terms (order_id, term) SELECT i, 'FM' || i FROM n`);
  db.exec("COMMIT; ANALYZE");
  db.close();
  return path;
}

function deskOver(store: Awaited<ReturnType<typeof openStore>>) {
  return {
    store,
    reader: directReader,
    sender: keepingSender(),
    clock: { now: () => new Date("2026-11-09T15:00:00Z") },
    log: { info: () => undefined, warn: () => undefined },
    catalogue,
    editions,
    timeZone: "America/Chicago",
    from: { name: "Order desk", address: "orders@quillgate.example" },
    chance: () => 0.5,
    secret: "a secret of the bench",
    rules: {
      ours: ["orders@quillgate.example"],
      returnPathWritten: false,
      receivedLines: 1,
      sharedDomains: [],
      known: [],
      staff: [],
      managing: [],
      mostAnswers: { toOne: 999, toAll: 999, toOneADay: 999, inThreadADay: 999 },
      lease: 60,
      patience: 600,
      grace: 120,
    },
  };
}

const pages = (orders: number): readonly string[] => [
  "/",
  "/people",
  "/orders",
  "/orders?verdict=pass",
  "/orders?verdict=confirm",
  `/orders?verdict=pass&before=${Math.floor(orders / 2)}`,
  `/orders?search=FM-${Math.floor(orders / 2)}`,
  "/orders?search=nothing-of-the-kind",
  "/orders?search=greta",
  "/orders?search=SALONA P-1",
  "/letters",
  `/letters?before=${Math.floor(orders / 2)}`,
  `/orders/FM-${Math.floor(orders / 2)}`,
  `/letters/1`,
];

interface Took {
  readonly median: number;
  readonly p95: number;
  readonly processor: number;
}

async function measure(path: string, orders: number): Promise<Took[]> {
  const store = await openStore(openSqlite(join(path, "record.sqlite")), openBlobs(join(path, "blobs")));
  const desk = deskOver(store);
  const account = {
    user: "rosa",
    name: "Rosa",
    role: "act",
    password: await hashPassword("a quill for every wall"),
    isShut: false,
  } as const;
  await store.accounts.save(account, "a bench", desk.clock.now());
  const app = deskApp({ desk, address, hours: 10, isTryOpen: false });
  const env = { incoming: { socket: { remoteAddress: "127.0.0.1" } } };
  const body = new URLSearchParams({ user: "rosa", password: "a quill for every wall" }).toString();
  const headers = { "content-type": "application/x-www-form-urlencoded", origin: address };
  const signed = await app.request(`${address}/sign-in`, { method: "POST", body, headers }, env);
  const cookie = signed.headers.get("set-cookie")?.split(";")[0] ?? "";
  const took: Took[] = [];
  for (const page of pages(orders)) {
    const times: number[] = [];
    const before = process.cpuUsage();
    for (let i = 0; i < rounds; i++) {
      const start = performance.now();
      const response = await app.request(`${address}${page}`, { headers: { cookie } }, env);
      await response.text();
      if (response.status !== 200) throw new Error(`${page}: ${response.status}`);
      times.push(performance.now() - start);
    }
    const { user, system } = process.cpuUsage(before);
    times.sort((a, b) => a - b);
    const at = (share: number): number => times[Math.ceil(share * times.length) - 1] ?? 0;
    took.push({ median: at(0.5), p95: at(0.95), processor: (user + system) / 1000 / rounds });
  }
  await store.close();
  return took;
}

const small = await recordOf(few);
console.log(`Making ${many.toLocaleString("en")} orders …`);
const large = await recordOf(many);
const [base, now] = [await measure(small, few), await measure(large, many)];
const ms = (n: number): string => n.toFixed(1).padStart(8);
console.log(`${"page".padEnd(40)}   median      p95 processor   ratio to ${few} orders (processor)`);
for (const [i, page] of pages(many).entries()) {
  const [one, other] = [now[i], base[i]];
  if (one === undefined || other === undefined) continue;
  console.log(
    `${page.padEnd(40)} ${ms(one.median)} ${ms(one.p95)}  ${ms(one.processor)}   ${(one.processor / other.processor).toFixed(1).padStart(6)}`,
  );
}
rmSync(folder, { recursive: true, force: true });
