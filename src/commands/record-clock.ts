import type { Clock } from "../ports/clock.ts";

/** How often it is asked what time it is, in milliseconds. */
const askEvery = 60_000;

/**
 * The clock of the record's server, for workers on several machines: leases and times due are then of one clock, however
 * their own clocks differ or jump. Rejects when the server does not say the time.
 */
export async function followClock(ask: () => Promise<Date>): Promise<Clock & { readonly stop: () => void }> {
  let asked = await look(ask);
  const timer = setInterval(() => {
    // A server that does not answer is asked again; this machine counts on meanwhile.
    void look(ask)
      .catch(() => asked)
      .then((latest) => (asked = latest));
  }, askEvery);
  timer.unref();
  return {
    now: () => new Date(asked.time + performance.now() - asked.at),
    stop: () => clearInterval(timer),
  };
}

/** What time it was there, in the middle of the asking; `at` is of a clock that never jumps. */
async function look(ask: () => Promise<Date>): Promise<{ readonly time: number; readonly at: number }> {
  const before = performance.now();
  const time = (await ask()).getTime();
  return { time, at: (before + performance.now()) / 2 };
}
