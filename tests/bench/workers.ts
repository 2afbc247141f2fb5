/**
 * How many letters a second several workers answer over one PostgreSQL, beside one worker. All get the same letters, each
 * of another buyer with an order of about three sheets. The letters are put into the record first. Then the workers
 * start, each a process of its own, and nothing is killed. The clock runs from the first answer to the last, so
 * that no start counts. Prints letters a second, how many times those of one worker, the processor time a letter of the
 * workers with their readers, and how busy all cores of this machine were, whoever made them so.
 *
 *     npx node tests/bench/workers.ts [--workers 1,2,4] [--letters 120]
 *
 * --workers  how many at once; the first is what the others are measured by
 * --letters  letters for each number of workers
 *
 * Needs Debian's PostgreSQL. Takes about three minutes.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { Client } from "pg";
import { stringify } from "yaml";
import { configure, projectFile } from "../../src/commands/configuration.ts";
import { letterKey } from "../../src/reading/letter/letter-key.ts";
import { databaseBlobs } from "../../src/store/database-blobs.ts";
import { openPostgres } from "../../src/store/postgres.ts";
import { openStore } from "../../src/store/store.ts";
import { noPostgres, startPostgres } from "../make/postgres.ts";
import { lettersOf } from "./desk-for.ts";
import { processorOf } from "./processes.ts";
import { told } from "./told.ts";

const { workers: counts, letters: most } = told(import.meta.filename, { workers: "1,2,4", letters: 120 });
if (noPostgres !== undefined) throw new Error(noPostgres);

/** How long nothing may be answered before the workers are given up, in milliseconds. */
const idleMs = 120_000;

console.error(`${most} letters are made …`);
const letters = await lettersOf(most, most);
const folder = mkdtempSync(join(tmpdir(), "burin-workers-"));
mkdirSync(join(folder, "letters"));
const { settings } = await configure();

/** The file with the settings of a desk over a record. */
function settingsFor(record: string): string {
  const { catalogue, editions, glossary = "glossary.txt", answers } = settings;
  const ours = (path: string): string => projectFile("config", path);
  const file = join(folder, "burin.yaml");
  writeFileSync(
    file,
    stringify({
      ...settings,
      catalogue: ours(catalogue),
      editions: ours(editions),
      glossary: ours(glossary),
      record,
      folders: ["letters"],
      answers: {
        ...answers,
        folder: "answers",
        most_per_hour: { to_one: 1e6, to_all: 1e6 },
        most_per_day: { to_one: 1e6, in_thread: 1e6 },
      },
      release: undefined,
    }),
  );
  return file;
}

/** Puts all letters into a new record. */
async function fill(record: string): Promise<void> {
  const { db, bell } = await openPostgres(record);
  const store = await openStore(db, databaseBlobs(db), undefined, bell);
  for (const [n, bytes] of letters.entries())
    await store.letters.receive(letterKey(bytes), bytes, new Date(), `buyer${n}.example`);
  await store.close();
}

/** Time of all cores since the machine was started, and how much of it they did nothing. */
function coreTime(): { readonly all: number; readonly idle: number } {
  const times = cpus().map((core) => core.times);
  const idle = times.reduce((sum, one) => sum + one.idle, 0);
  return { all: times.reduce((sum, one) => sum + one.user + one.nice + one.sys + one.irq, idle), idle };
}

interface Pace {
  readonly perSecond: number;
  readonly processor: number;
  /** Share of the cores' time. */
  readonly busy: number;
}

async function paceOf(count: number, record: string): Promise<Pace> {
  await fill(record);
  const file = settingsFor(record);
  const workers = Array.from({ length: count }, () =>
    spawn(process.execPath, ["src/main.ts", "work", "--settings", file], { stdio: "ignore" }),
  );
  const client = new Client(record);
  await client.connect();
  const look = async () => {
    const { rows } = await client.query<{ n: string }>(
      "select count(*) as n from letters where state not in ('received', 'ready', 'sending')",
    );
    const processor = workers.reduce((sum, { pid = 0 }) => sum + processorOf(pid), 0);
    return { done: Number(rows[0]?.n ?? 0), at: performance.now(), processor, cores: coreTime() };
  };
  try {
    let [first, last] = [await look(), await look()];
    while (last.done < letters.length) {
      await sleep(100);
      const now = await look();
      if (first.done === 0) first = now;
      if (now.done > last.done || first.done === 0) last = now;
      if (now.at - last.at > idleMs) throw new Error(`nothing is answered after ${last.done} letters`);
    }
    const answered = last.done - first.done;
    const cores = last.cores.all - first.cores.all;
    return {
      perSecond: (1000 * answered) / (last.at - first.at),
      processor: (last.processor - first.processor) / answered,
      busy: 1 - (last.cores.idle - first.cores.idle) / cores,
    };
  } finally {
    await client.end();
    for (const worker of workers) {
      const ended = once(worker, "exit");
      if (worker.exitCode === null && worker.kill("SIGKILL")) await ended;
    }
  }
}

const server = await startPostgres();
try {
  let first: Pace | undefined;
  for (const count of counts.split(",").map(Number)) {
    console.error(`${count} at work …`);
    const pace = await paceOf(count, await server.database());
    first ??= pace;
    console.log(
      `${String(count).padStart(2)} ${count === 1 ? "worker " : "workers"} ${pace.perSecond.toFixed(1).padStart(6)} letters/s  ` +
        `x ${(pace.perSecond / first.perSecond).toFixed(2)}  ${pace.processor.toFixed(0).padStart(5)} ms of the processor a letter, ` +
        `all ${cpus().length} cores ${(100 * pace.busy).toFixed(0)} % busy`,
    );
  }
} finally {
  server.stop();
  rmSync(folder, { recursive: true });
}
