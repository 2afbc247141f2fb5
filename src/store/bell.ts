import { randomUUID } from "node:crypto";
import { type Kysely, sql } from "kysely";
import type pg from "pg";
import type { Tables } from "./tables.ts";

/** Tells workers that wait for letters that another has taken one into the record. */
export interface Bell {
  /** Within the transaction that takes a letter in: it rings when that is committed. */
  readonly ring: (tx: Kysely<Tables>) => Promise<void>;
  /** Waits for the next ring, or for so many milliseconds, or for the signal. */
  readonly wait: (ms: number, signal: AbortSignal) => Promise<void>;
  readonly close: () => void;
}

/** A bell that nobody else hears: whoever takes a letter in himself needs none. */
export function silentBell(): Bell {
  const { wait, wake } = waiters();
  return { ring: () => Promise.resolve(), wait, close: wake };
}

/** The channel of PostgreSQL's NOTIFY. */
const channel = "burin_letters";

/** A bell that all other workers on a server hear. A connection that is lost is made anew at the next wait. */
export function serverBell(pool: pg.Pool): Bell {
  const { wait, wake } = waiters();
  const own = randomUUID();
  let listening: Promise<pg.PoolClient> | undefined;
  const listen = async (): Promise<pg.PoolClient> => {
    const client = await pool.connect();
    let isLost = false;
    const lose = (): void => {
      if (isLost) return;
      isLost = true;
      listening = undefined;
      client.release(true);
      wake();
    };
    client.on("notification", ({ payload }) => payload === own || wake());
    client.on("error", lose);
    try {
      await client.query(`LISTEN ${channel}`);
    } catch (cause) {
      lose();
      throw cause;
    }
    return client;
  };
  return {
    async ring(tx) {
      await sql`SELECT pg_notify(${channel}, ${own})`.execute(tx);
    },
    async wait(ms, signal) {
      // Without a connection it is a wait for the time.
      listening ??= listen();
      await listening.catch(() => {
        listening = undefined;
      });
      await wait(ms, signal);
    },
    close() {
      void listening?.then((client) => client.release(true)).catch(() => undefined); // gone already
      wake();
    },
  };
}

function waiters(): { readonly wait: Bell["wait"]; readonly wake: () => void } {
  const waiting = new Set<() => void>();
  return {
    wait: (ms, signal) =>
      new Promise((resolve) => {
        const end = (): void => {
          clearTimeout(timer);
          waiting.delete(end);
          signal.removeEventListener("abort", end);
          resolve();
        };
        const timer = setTimeout(end, ms);
        waiting.add(end);
        if (signal.aborted) end();
        else signal.addEventListener("abort", end, { once: true });
      }),
    wake() {
      for (const end of waiting) end();
    },
  };
}
