import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { Leases } from "../../src/ports/leases.ts";
import { alone, type Holder, leaseFor } from "../../src/worker/alone.ts";
import { temporaryStore } from "../make/desk.ts";

const never = new AbortController().signal;
const clock = { now: () => new Date() };

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["Date", "setInterval", "clearInterval"] });
});
afterEach(() => {
  vi.useRealTimers();
});

/** Work that goes on until it is told to stop. */
function working(): { readonly begun: Promise<void>; readonly work: (signal: AbortSignal) => Promise<void> } {
  const { promise: begun, resolve } = Promise.withResolvers<void>();
  const work = async (signal: AbortSignal): Promise<void> => {
    resolve();
    if (!signal.aborted)
      await new Promise<void>((end) => {
        signal.addEventListener("abort", () => end(), { once: true });
      });
  };
  return { begun, work };
}

async function held(over: Partial<Leases> = {}): Promise<{ readonly a: Holder; readonly b: Holder }> {
  const { leases } = await temporaryStore();
  return {
    a: { leases: { ...leases, ...over }, clock, name: "a" },
    b: { leases, clock, name: "b" },
  };
}

test("what one worker is at is left to it, for as long as it works", async () => {
  const { a, b } = await held();
  const stop = new AbortController();
  const { begun, work } = working();
  const first = alone(a, "orders", stop.signal, work);
  await begun;
  for (let s = 0; s < 60; s += 5) {
    await vi.advanceTimersByTimeAsync(5000);
    expect(await alone(b, "orders", never, () => Promise.reject(new Error("both at once")))).toBe(false);
  }
  stop.abort();
  expect(await first).toBe(true);
  expect(await alone(b, "orders", never, async () => undefined)).toBe(true);
});

test("what a dead worker was at is taken over within its lease", async () => {
  const { a, b } = await held();
  const now = clock.now();
  await a.leases.take("orders", "a", now, new Date(now.getTime() + leaseFor));
  expect(await alone(b, "orders", never, async () => undefined)).toBe(false);
  await vi.advanceTimersByTimeAsync(leaseFor);
  expect(await alone(b, "orders", never, async () => undefined)).toBe(true);
  expect(leaseFor).toBeLessThan(30_000);
});

test("a worker that lost its lease is told, and one whose record fails is, when the lease has ended", async () => {
  for (const fails of [() => Promise.resolve(false), () => Promise.reject(new Error("gone"))]) {
    let times = 0;
    const { leases } = await temporaryStore();
    const take: Leases["take"] = (...given) => (times++ === 0 ? leases.take(...given) : fails());
    const { a } = await held({ take });
    const { begun, work } = working();
    const run = alone(a, "orders", never, work);
    await begun;
    await vi.advanceTimersByTimeAsync(leaseFor);
    expect(await run).toBe(true);
  }
});

test("a fault of the work is its caller's, and lets go of the lease", async () => {
  const { a, b } = await held();
  await expect(alone(a, "orders", never, () => Promise.reject(new Error("no route")))).rejects.toThrow(
    "no route",
  );
  expect(await alone(b, "orders", never, async () => undefined)).toBe(true);
});
