import { fork } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import type { Opened, Reader } from "../../src/ports/reader.ts";
import type { FileFacts } from "../../src/reading/facts.ts";
import { fromPs, residentMemory } from "../../src/sandbox/memory.ts";
import { openPool, type PoolOptions } from "../../src/sandbox/pool.ts";
import { children } from "../make/hostile/try-out.ts";

const program = fileURLToPath(new URL("./odd-child.ts", import.meta.url));
/** Time and memory are tried apart, so that whichever is tried comes to its end first on any machine. */
const endless = { jobMs: 600_000, pagesMs: 600_000, patience: 10 };
const small = { memory: 400 * 1024 * 1024, heapMb: 100 };
const limits = { ...endless, ...small };
const quick = { ...small, jobMs: 500, pagesMs: 500, patience: 2 };

const patiently = { timeout: 120_000 };

interface OddPool extends Reader {
  readonly do: (deed: string) => Promise<Opened<FileFacts>>;
  readonly logged: unknown[];
}

function oddPool(options: Partial<PoolOptions> = {}): OddPool {
  const logged: unknown[] = [];
  const log = { info: () => undefined, warn: (fields: unknown) => void logged.push(fields) };
  const pool = openPool({ log, program, processes: 1, limits, ...options });
  onTestFinished(() => pool.close());
  return { ...pool, logged, do: (deed) => pool.file(Buffer.from(deed)) };
}

const good = { ok: true, value: { kind: "pdf", pages: [] } };
const ended: Readonly<Record<string, string>> = {
  "never end": "too slow",
  "never resolve": "too slow",
  die: "died",
  throw: "died",
  "throw elsewhere": "died",
  "fill buffers": "too much memory",
  "fill the heap": "too much memory",
  "talk nonsense": "died",
  write: "died",
};

test.each(Object.entries(ended))(
  "a file that makes its reader %s costs its own answer: %s",
  async (deed, why) => {
    const pool = oddPool(why === "too slow" ? { limits: quick } : {});
    expect(await pool.do(deed)).toEqual({ ok: false, why });
    expect(pool.logged.at(-1)).toMatchObject({ op: "file", bytes: deed.length, why });
    expect(await pool.do("answer")).toMatchObject(good);
  },
);

test("files of letters are opened in turn, however many one letter has", async () => {
  const pool = oddPool();
  const opened: string[] = [];
  const send = (letter: string, count: number) => {
    const time = { processorMs: 60_000, clockMs: 600_000 };
    return Array.from({ length: count }, async () => {
      await pool.file(Buffer.from("answer"), time);
      opened.push(letter);
    });
  };
  await Promise.all([...send("many", 6), ...send("one", 1), ...send("two", 2)]);
  expect(opened).toEqual(["many", "many", "one", "two", "many", "two", "many", "many", "many"]);
});

test.each(["never end", "die", "fill buffers"])(
  "the fields count even if the pages make the reader %s",
  async (deed) => {
    // Only the pages have an end in time.
    const pool = oddPool(deed === "never end" ? { limits: { ...limits, pagesMs: 300, patience: 2 } } : {});
    await pool.do("answer");
    const answer = await pool.do(`early, then ${deed}`);
    expect(answer).toMatchObject({ ok: true, value: { kind: "pdf" } });
    expect(answer.ok && "pages" in answer.value).toBe(false);
    expect(await pool.do("answer")).toMatchObject(good);
  },
);

test("files told at once are read one after the other, and a bad one among them hurts no other", async () => {
  const pool = oddPool({ processes: 2, limits: { ...quick, jobMs: 2500 } });
  const deeds = ["answer", "die", "answer", "never end", "answer", "answer", "throw", "answer"];
  const answers = await Promise.all(deeds.map(pool.do));
  expect(answers.map(({ ok }) => ok)).toEqual(deeds.map((deed) => deed === "answer"));
});

test("what a reader was lost to is logged with what it took, and whether the fields are known", async () => {
  const pool = oddPool();
  await pool.do("fill buffers");
  await pool.do("early, then die");
  const [full, early] = pool.logged as Record<string, number>[];
  expect(full).toMatchObject({ why: "too much memory", pagesOnly: false });
  expect(full?.["peakMb"]).toBeGreaterThan(400);
  expect(full?.["peakMb"]).toBeLessThan(10_000);
  expect(early).toMatchObject({ why: "died", pagesOnly: true });
  expect(early?.["ms"]).toBeLessThan(60_000);
});

test("a pool says how many of its processes are at work", async () => {
  const pool = oddPool({ processes: 2 });
  expect(pool.busy?.()).toBe(0);
  const both = [pool.do("answer"), pool.do("answer"), pool.do("answer")];
  expect(pool.busy?.()).toBe(2);
  await Promise.all(both);
  expect(pool.busy?.()).toBe(0);
});

/** The numbers that the odd reader puts into its facts. */
async function numbers(pool: OddPool, deed: string): Promise<number[]> {
  const answer = await pool.do(deed);
  return answer.ok && answer.value.kind === "archive"
    ? answer.value.left.map(({ name }) => Number(name))
    : [];
}

async function who(pool: OddPool): Promise<number> {
  const [pid = 0] = await numbers(pool, "say who");
  return pid;
}

test("a pool opens as many files side by side as it has processes, and no more", async () => {
  const pool = oddPool({ processes: 2 });
  await Promise.all([who(pool), who(pool)]);
  const spans = await Promise.all(Array.from({ length: 4 }, () => numbers(pool, "say when")));
  const atOnce = spans.map(([began = 0]) =>
    spans.filter(([from = 0, to = 0]) => from <= began && began < to),
  );
  expect(Math.max(...atOnce.map(({ length }) => length))).toBe(2);
});

test("the same process serves again", async () => {
  const pool = oddPool();
  const [one, two, three] = [await who(pool), await who(pool), await who(pool)];
  expect([two, three]).toEqual([one, one]);
});

test("a process that has grown is not given the next file", async () => {
  const pool = oddPool();
  const one = await who(pool);
  expect(await pool.do("keep much")).toMatchObject({ ok: true });
  expect(await who(pool)).not.toBe(one);
});

test("a process ended while idle is replaced, and nobody is blamed", async () => {
  const pool = oddPool();
  const one = await who(pool);
  process.kill(one, "SIGKILL");
  // Gone for good once this program has heard of its end.
  await expect.poll(() => existsSync(`/proc/${one}`), patiently).toBe(false);
  await sleep(0);
  expect(await pool.do("answer")).toMatchObject(good);
  expect(pool.logged).toEqual([]);
});

test("a promise left behind rejected, and the signals that stop the program, end no reader", async () => {
  const pool = oddPool();
  const one = await who(pool);
  expect(await pool.do("leave a rejection behind")).toMatchObject({ ok: true });
  expect(await pool.do("be ended by others")).toMatchObject({ ok: true });
  expect(await who(pool)).toBe(one);
});

test("the time in which a process prepares its forms is taken off no file", async () => {
  const pool = oddPool({ limits: quick, forms: { editions: [], blanks: new Map() } });
  expect(await pool.do("answer")).toMatchObject(good);
});

test("absurdly many bytes are refused unseen", async () => {
  const pool = oddPool();
  expect(await pool.file(new Uint8Array(300 * 1024 * 1024))).toEqual({ ok: false, why: "too much memory" });
  expect(await pool.letter(new Uint8Array(300 * 1024 * 1024))).toMatchObject({ ok: false });
});

test("a reader that does not start is no file's fault", async () => {
  const pool = oddPool({ program: "tests/sandbox/no-such-program.ts" });
  await expect(pool.do("answer")).rejects.toThrow("does not start");
});

test("closing ends every process, and rejects what is still asked", async () => {
  const before = children();
  const pool = oddPool({ processes: 2 });
  const busy = expect(pool.do("never end")).rejects.toThrow("closed");
  await Promise.all([pool.do("die"), pool.do("answer")]);
  const last = [pool.do("never end"), pool.do("answer")].map((one) => expect(one).rejects.toThrow("closed"));
  await pool.close();
  await Promise.all([busy, ...last]);
  await expect(pool.do("answer")).rejects.toThrow("closed");
  expect(children()).toEqual(before);
});

/** Whether a process still runs; one that only waits to be reaped by the system does not. */
function runs(pid: number): boolean {
  return existsSync(`/proc/${pid}`) && !/^State:\s*Z/m.test(readFileSync(`/proc/${pid}/status`, "utf8"));
}

interface OtherProgram {
  readonly pid: number;
  /** The process that reads for it. */
  readonly reader: Promise<number>;
  /** With what code it ended. */
  readonly code: Promise<number | null>;
}

function otherProgram(deed: string): OtherProgram {
  const child = fork(fileURLToPath(new URL("./other-program.ts", import.meta.url)), [program, deed]);
  onTestFinished(() => void child.kill("SIGKILL"));
  return {
    pid: child.pid ?? 0,
    reader: new Promise((resolve) => child.once("message", (pid) => resolve(Number(pid)))),
    code: new Promise((resolve) => child.once("exit", resolve)),
  };
}

test.each(["answer", "die", "close"])("a pool that was last told to %s holds no program up", async (deed) => {
  const { reader, code } = otherProgram(deed);
  const pid = await reader;
  expect(await code).toBe(0);
  await expect.poll(() => runs(pid), patiently).toBe(false);
});

test("a busy reader does not outlive a program that is killed", async () => {
  const { pid, reader, code } = otherProgram("never end");
  const busy = await reader;
  await sleep(200);
  process.kill(pid, "SIGKILL");
  await code;
  expect(runs(busy)).toBe(true);
  await expect.poll(() => runs(busy), patiently).toBe(false);
});

test("both ways to ask for a process's memory say about the same", async () => {
  const [one, other] = [await residentMemory(process.pid), await fromPs(process.pid)];
  expect(one).toBeGreaterThan(10_000_000);
  expect(other / one).toBeCloseTo(1, 0);
  expect(await residentMemory(2 ** 30)).toBe(0);
  expect(await fromPs(2 ** 30)).toBe(0);
});
