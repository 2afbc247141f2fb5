import { afterEach, expect, test, vi } from "vitest";
import { followClock } from "../../src/commands/record-clock.ts";

afterEach(() => {
  vi.useRealTimers();
});

test("a clock of the record's server goes as it does, whatever this machine's says", async () => {
  vi.useFakeTimers();
  let ahead = 3_600_000;
  let fails = false;
  const began = Date.now();
  let passed = 0;
  const ask = () =>
    fails ? Promise.reject(new Error("gone")) : Promise.resolve(new Date(began + passed + ahead));
  const pass = async (ms: number): Promise<void> => {
    passed += ms;
    await vi.advanceTimersByTimeAsync(ms);
  };
  const clock = await followClock(ask);
  expect(clock.now().getTime()).toBe(began + ahead);
  // This machine's clock is put back by a day.
  vi.setSystemTime(began - 86_400_000);
  await pass(30_000);
  expect(clock.now().getTime()).toBe(began + passed + ahead);
  // The server's clock is put right.
  ahead = 0;
  await pass(30_000);
  expect(clock.now().getTime()).toBe(began + passed);
  // A server that does not answer changes nothing.
  fails = true;
  await pass(120_000);
  expect(clock.now().getTime()).toBe(began + passed);
  clock.stop();
  fails = false;
  ahead = 5000;
  await pass(120_000);
  expect(clock.now().getTime()).toBe(began + passed);
});

test("a server that does not say the time is no clock", async () => {
  await expect(followClock(() => Promise.reject(new Error("gone")))).rejects.toThrow("gone");
});
