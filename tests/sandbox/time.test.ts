import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import type { Reader, TimeLeft } from "../../src/ports/reader.ts";
import type { Limits } from "../../src/sandbox/limits.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import { processorTime, waitingTime, watchTime } from "../../src/sandbox/processor-time.ts";
import { shareOf, takeOff } from "../../src/sandbox/share.ts";

const program = fileURLToPath(new URL("./odd-child.ts", import.meta.url));
const log = { info: () => undefined, warn: () => undefined };
const usual = { jobMs: 10_000, patience: 6 } as Limits;

function oddPool(limits: Partial<Limits>): Reader {
  const pool = openPool({ log, program, processes: 1, limits });
  onTestFinished(() => pool.close());
  return pool;
}
const deed = (pool: Reader, what: string, time?: TimeLeft) => pool.file(Buffer.from(what), time);

test("a file may take a quarter of what is left, and never more than a file may", () => {
  expect(shareOf({ processorMs: 60_000, clockMs: 600_000 }, usual)).toEqual({
    processorMs: 10_000,
    clockMs: 60_000,
  });
  expect(shareOf({ processorMs: 8_000, clockMs: 5_000 }, usual)).toEqual({
    processorMs: 2_000,
    clockMs: 5_000,
  });
  expect(shareOf(undefined, usual)).toEqual({ processorMs: 10_000, clockMs: 60_000 });
});

test("where there is too little left nothing is opened", () => {
  expect(shareOf({ processorMs: 300, clockMs: 5_000 }, usual)).toBeUndefined();
  expect(shareOf({ processorMs: 400, clockMs: 1 }, usual)).toEqual({ processorMs: 100, clockMs: 1 });
  expect(shareOf({ processorMs: 60_000, clockMs: 0 }, usual)).toBeUndefined();
});

test("two hundred files that each take all they may take no more together than a letter may", () => {
  const left = { processorMs: 60_000, clockMs: 600_000 };
  let taken = 0;
  for (let n = 0; n < 200; n++) {
    const share = shareOf(left, usual);
    if (share === undefined) break;
    taken += share.processorMs;
    takeOff(left, share, false);
  }
  expect(taken).toBeLessThanOrEqual(60_000);
  // What a process was lost to counts thrice, so that the rest of the letter gets its turn the sooner.
  takeOff(left, { processorMs: 100, clockMs: 100 }, true);
  expect(left.processorMs).toBeCloseTo(60_000 - taken - 300, 5);
});

test("files that take too long leave less for those behind them, and at last nothing; an honest one is read", async () => {
  const pool = oddPool({ jobMs: 1000, patience: 20 });
  const time = { processorMs: 3_000, clockMs: 600_000 };
  const outcomes: unknown[] = [];
  for (let n = 0; n < 6 && shareOf(time, { jobMs: 1000, patience: 20 } as Limits) !== undefined; n++) {
    outcomes.push(await deed(pool, "never end", time));
    outcomes.push((await deed(pool, "answer", time)).ok || shareOf(time, usual) === undefined);
  }
  expect(outcomes.filter((one) => one === false)).toEqual([]);
  expect(outcomes[0]).toEqual({ ok: false, why: "no time left" });
  expect(outcomes[1]).toBe(true);
  expect(await deed(pool, "answer", time)).toEqual({ ok: false, why: "no time left" });
  // A letter of its own is read.
  expect(await deed(pool, "answer", { processorMs: 3_000, clockMs: 600_000 })).toMatchObject({ ok: true });
});

test.skipIf(processorTime(process.pid) === undefined)(
  "a process that only waits for its turn is not too slow",
  async () => {
    // It waits for half a second by the clock.
    const pool = oddPool({ jobMs: 400, patience: 100 });
    expect(await deed(pool, "say when")).toMatchObject({ ok: true });
  },
);

test.skipIf(!existsSync("/proc/self/schedstat"))(
  "while others have the processor no time by the clock is taken off",
  async () => {
    // Four times as many busy processes as there are processors: a reader mostly waits for its turn.
    const busy = Array.from({ length: 4 * availableParallelism() }, () =>
      spawn(process.execPath, ["-e", "for (;;);"], { stdio: "ignore" }),
    );
    onTestFinished(() => busy.forEach((one) => void one.kill("SIGKILL")));
    const waited = waitingTime(process.pid);
    // It works for half a second of the processor, and by the clock it may take thrice as much.
    const pool = oddPool({ jobMs: 1_500, patience: 1 });
    const worked = await deed(pool, "work");
    expect(worked).toMatchObject({ ok: true });
    expect(waitingTime(process.pid)).toBeGreaterThan(waited);
  },
);

test("one that waits for ever is, by the clock", async () => {
  const pool = oddPool({ jobMs: 500, patience: 2 });
  expect(await deed(pool, "never resolve")).toEqual({ ok: false, why: "too slow" });
});

test("whoever asks about a sender has as much time by the clock as a file has of the processor", async () => {
  const pool = oddPool({ jobMs: 500, patience: 10_000 });
  const proof = await pool.sender(Buffer.from(""), {
    from: "ines@brightwire.example",
    lines: 1,
    servers: [],
  });
  expect(proof).toEqual({ ok: false, why: "too slow" });
});

test("a process that died had time enough, however little was left", async () => {
  const pool = oddPool({ jobMs: 2_000 });
  const little = { processorMs: 4_000, clockMs: 600_000 };
  expect(await deed(pool, "die", little)).toEqual({ ok: false, why: "died" });
});

test("of what it was allowed before and is allowed now a process has the less", async () => {
  const watched = (first: number, ...more: number[]) => {
    let slow = 0;
    const watch = watchTime(2 ** 30, { processorMs: 0, clockMs: first }, () => void slow++);
    onTestFinished(watch.stop);
    for (const clockMs of more) watch.allow({ processorMs: 0, clockMs });
    return () => slow > 0;
  };
  const over = [watched(100), watched(60_000, 100), watched(100, 60_000)];
  const within = [watched(60_000), watched(60_000, 90_000), watched(90_000, 60_000)];
  for (const one of over) await expect.poll(one).toBe(true);
  expect(within.map((one) => one())).toEqual([false, false, false]);
});

test.skipIf(processorTime(process.pid) === undefined)("the time of a process is that of its work", () => {
  const before = processorTime(process.pid) ?? 0;
  const { user } = process.cpuUsage();
  while (process.cpuUsage().user - user < 200_000);
  const took = (processorTime(process.pid) ?? 0) - before;
  expect(took).toBeGreaterThanOrEqual(150);
  expect(processorTime(2 ** 30)).toBeUndefined();
});

test("where the processor's time cannot be told, time by the clock stands for it", async () => {
  const nobody = 2 ** 30;
  expect(waitingTime(nobody)).toBe(0);
  let slow = 0;
  const watch = watchTime(nobody, { processorMs: 0, clockMs: 100 }, () => void slow++);
  onTestFinished(watch.stop);
  const { processorMs, clockMs } = watch.taken();
  expect([processorMs, slow]).toEqual([clockMs, 0]);
  await expect.poll(() => slow).toBeGreaterThan(0);
  expect(watch.taken().processorMs).toBeGreaterThan(100);
});
