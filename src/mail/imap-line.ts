import { setTimeout as after } from "node:timers/promises";
import type { ImapFlow } from "imapflow";
import type { Log } from "../ports/log.ts";
import { backOff } from "./back-off.ts";
import { bell } from "./bell.ts";
import { openImap } from "./imap-connection.ts";
import { reasonOf, type Server } from "./server.ts";

/** A folder, selected over a connection that is up. */
export interface View {
  readonly client: ImapFlow;
  /** UIDVALIDITY: a UID means nothing under another one (RFC 9051 §2.3.1.1). */
  readonly validity: string;
}

export interface Job {
  /** How often it is tried once the folder is open; without end, if absent. */
  readonly tries?: number;
  /** Milliseconds after which the connection is given up; 2 minutes, if absent. */
  readonly limit?: number;
}

/** One folder of one server, kept in reach. Connections come and go behind it. */
export interface Line {
  /** Does one job at a time. Rejects with the last failure when there are no more tries. */
  readonly use: <T>(work: (view: View) => Promise<T>, job?: Job) => Promise<T>;
  /** Selects the folder again. Only this shows every change, a new UIDVALIDITY too. */
  readonly refresh: (view: View) => Promise<View>;
  /** Returns when the folder has changed, when the connection is lost, when the time is over, or at the signal. */
  readonly news: (ms: number, signal: AbortSignal) => Promise<void>;
  readonly close: () => Promise<void>;
}

export interface LineOptions {
  readonly server: Server;
  readonly folder: string;
  readonly log: Log;
  readonly chance: () => number;
  readonly silence?: number;
  /** How many failures in a row are borne, and the signal that ends all waiting. */
  readonly patience: () => Patience;
}

interface Patience {
  readonly failures: number;
  readonly signal?: AbortSignal | undefined;
  /**
   * Called with the reason when the folder cannot be used, from the second failure in a row on. A single failure is
   * usual, since servers restart now and then.
   */
  readonly failed?: ((why: string) => void) | undefined;
}

/** How long a server has to say goodbye; in milliseconds. */
const goodbyeMs = 2_000;

export function openLine({ server, folder, log, chance, silence, patience }: LineOptions): Line {
  const changed = bell();
  const closing = new AbortController();
  let open: View | undefined;
  let before: Promise<unknown> = Promise.resolve();
  let isListening = false;

  /** IDLE lasts until the next command. If it fails, the connection shows it. */
  function listen(): void {
    if (isListening && open?.client.usable === true) void open.client.idle().catch(() => undefined);
  }

  async function refresh({ client }: Pick<View, "client">): Promise<View> {
    const { uidValidity } = await client.mailboxOpen(folder);
    // What comes after this is news.
    changed.hush();
    open = { client, validity: String(uidValidity) };
    return open;
  }

  async function connected(): Promise<View> {
    if (closing.signal.aborted) throw new Error("the mailbox is closed");
    if (open?.client.usable === true) return open;
    const client = await openImap(server, silence);
    client.on("exists", changed.ring);
    client.on("close", changed.ring);
    try {
      return await refresh({ client });
    } catch (error) {
      client.close();
      throw error;
    }
  }

  async function persist<T>(work: (view: View) => Promise<T>, job: Job): Promise<T> {
    for (let failures = 1, tries = 0; ; failures++) {
      try {
        const view = await connected();
        tries++;
        return await limited(view, work, job.limit ?? 120_000);
      } catch (error) {
        const { failures: bearable, signal, failed } = patience();
        if (failures > 1 && signal?.aborted !== true) failed?.(reasonOf(error));
        const over =
          closing.signal.aborted ||
          signal?.aborted === true ||
          failures >= bearable ||
          tries >= (job.tries ?? Number.POSITIVE_INFINITY);
        if (over) throw error;
        log.warn({ failures, why: reasonOf(error) }, "the mailbox cannot be used; trying again");
        const either = AbortSignal.any([closing.signal, ...(signal === undefined ? [] : [signal])]);
        await bell().heard(backOff(failures, chance()), either);
      }
    }
  }

  return {
    use(work, job = {}) {
      const mine = before.then(() => persist(work, job));
      // Letters are put on their shelves while news is waited for.
      before = mine.catch(() => undefined).then(listen);
      return mine;
    },
    refresh,
    async news(ms, signal) {
      isListening = true;
      listen();
      await changed.heard(ms, AbortSignal.any([signal, closing.signal]));
      isListening = false;
    },
    async close() {
      closing.abort();
      if (open?.client.usable !== true) return;
      const goodbye = open.client.logout().catch(() => undefined);
      await Promise.race([goodbye, after(goodbyeMs, undefined, { ref: false })]);
      open.client.close();
    },
  };
}

/** Gives a job limited time. A job that takes longer has its connection closed, and fails by that. */
async function limited<T>(view: View, work: (view: View) => Promise<T>, limit: number): Promise<T> {
  const watchdog = setTimeout(() => view.client.close(), limit);
  try {
    return await work(view);
  } finally {
    clearTimeout(watchdog);
  }
}
