import type { Clock } from "../ports/clock.ts";
import type { Leases } from "../ports/leases.ts";

/** How long others leave something to a worker that has gone silent, in milliseconds. */
export const leaseFor = 20_000;

/** How often a lease is renewed, in milliseconds. */
const renewEvery = 5000;

/** One worker among those of a record. */
export interface Holder {
  readonly leases: Leases;
  readonly clock: Clock;
  /** What no other worker is called. */
  readonly name: string;
}

/**
 * Works on something that one worker at a time works on. The work's signal comes when the lease is lost: somebody
 * else may have it by then. Resolves to false where somebody else has it now.
 */
export async function alone(
  { leases, clock, name }: Holder,
  what: string,
  signal: AbortSignal,
  work: (signal: AbortSignal) => Promise<void>,
): Promise<boolean> {
  let until = 0;
  const take = async (): Promise<boolean> => {
    const now = clock.now();
    const end = new Date(now.getTime() + leaseFor);
    const isTaken = await leases.take(what, name, now, end);
    if (isTaken) until = end.getTime();
    return isTaken;
  };
  if (!(await take())) return false;
  const lost = new AbortController();
  const renewal = setInterval(() => {
    // A record that does not answer takes nothing away before the lease ends.
    void take()
      .catch(() => clock.now().getTime() < until)
      .then((isTaken) => isTaken || lost.abort());
  }, renewEvery);
  try {
    await work(AbortSignal.any([signal, lost.signal]));
  } finally {
    clearInterval(renewal);
    await leases.drop(what, name).catch(() => undefined); // ends by itself
  }
  return true;
}
