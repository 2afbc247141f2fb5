import type { Clock } from "../ports/clock.ts";
import type { Log } from "../ports/log.ts";
import type { Mail, Mailbox, Mark, Shelf } from "../ports/mailbox.ts";
import { fetchLetter, transferLimit } from "./imap-letter.ts";
import { type Line, type LineOptions, openLine } from "./imap-line.ts";
import { type Listed, list, scan } from "./imap-scan.ts";
import { shelveLetter } from "./imap-shelf.ts";
import type { Server } from "./server.ts";

export interface ImapMailbox {
  readonly name: string;
  readonly server: Server;
  readonly folder: string;
  /** Letters that arrived before this day are left alone. A desk is not to answer years of old mail. */
  readonly begin: Date;
  /** Folders that handled letters are moved to. A shelf without a folder leaves them where they are. */
  readonly shelves: { readonly [shelf in Shelf]?: string | undefined };
  readonly log: Log;
  readonly clock: Clock;
  /** 0 to 1, another each time. */
  readonly chance: () => number;
  /** Milliseconds between looks at a folder while the server says nothing; 90 s, if absent. */
  readonly poll?: number;
  /** Milliseconds of silence after which a server that owes an answer is taken for dead; 60 s, if absent. */
  readonly silence?: number;
}

/** How many days back are read when UIDs have lost their meaning. The record knows what was answered already. */
const daysAgain = 30;

/** Sizes and dates of so many letters are asked for at once. */
const listedAtOnce = 200;

/** After so many failures in a row one look at the mailbox gives up. */
const onceFailures = 3;

/** How often one letter is tried. A letter that the server cannot give must not hold up the others for ever. */
const letterTries = 5;

/** A folder on an IMAP server (RFC 3501, RFC 9051). Letters are read without being marked as read. */
export function imapMailbox(options: ImapMailbox): Mailbox {
  const { name, server, folder, begin, log, clock, chance, silence } = options;
  let patience: ReturnType<LineOptions["patience"]> = { failures: Number.POSITIVE_INFINITY };
  const line = openLine({
    server,
    folder,
    log: named(log, name),
    chance,
    patience: () => patience,
    ...(silence === undefined ? {} : { silence }),
  });

  /** The day from which letters are read while `mark` says nothing about this UIDVALIDITY. */
  function firstDay(mark: Mark | undefined): Date {
    if (mark === undefined) return begin;
    const ago = clock.now().getTime() - daysAgain * 86_400_000;
    return new Date(Math.max(begin.getTime(), ago));
  }

  return {
    name,
    isShared: true,
    async *letters({ since, once, signal, looked: lookedAt, failed }) {
      patience = { failures: once ? onceFailures : Number.POSITIVE_INFINITY, signal, failed };
      let mark = since;
      while (!signal.aborted) {
        const known = mark;
        const looked = line.use(async (view) => {
          const fresh = await line.refresh(view);
          return { validity: fresh.validity, ...(await scan(fresh, known, firstDay(known))) };
        });
        const found = await unlessStopped(signal, looked);
        if (found === undefined) return;
        lookedAt?.();
        for (let i = 0; i < found.uids.length; i += listedAtOnce) {
          const some = found.uids.slice(i, i + listedAtOnce);
          const listed = await unlessStopped(
            signal,
            line.use(async (view) => (view.validity === found.validity ? list(view, some) : [])),
          );
          for (const each of listed ?? []) {
            if (signal.aborted) return;
            yield mailAt(line, each, found.validity, options);
            mark = { validity: found.validity, uid: each.uid };
          }
        }
        mark = { validity: found.validity, uid: found.upTo };
        if (found.uids.length > 0) continue;
        if (once) return;
        await line.news(options.poll ?? 90_000, signal);
      }
    },
    close: () => line.close(),
  };
}

function mailAt(
  line: Line,
  { uid, size, receivedAt }: Listed,
  validity: string,
  { name, folder, shelves, log }: ImapMailbox,
): Mail {
  return {
    name: `${folder} ${validity}/${uid}`,
    size,
    receivedAt,
    mark: { validity, uid },
    // Under another UIDVALIDITY this UID means nothing. The letter is read again under its new one.
    bytes: () =>
      line.use(
        async (view) => (view.validity === validity ? fetchLetter(view.client, uid, size) : undefined),
        { tries: letterTries, limit: transferLimit(size) },
      ),
    shelve: (shelf) =>
      line.use(
        async (view) => {
          if (view.validity === validity)
            await shelveLetter(view.client, uid, shelf, shelves[shelf], named(log, name));
        },
        { tries: letterTries },
      ),
  };
}

function named(log: Log, mailbox: string): Log {
  return {
    info: (fields, sentence) => log.info({ mailbox, ...fields }, sentence),
    warn: (fields, sentence) => log.warn({ mailbox, ...fields }, sentence),
  };
}

/** The result of `work`; undefined if it failed because we are to stop. */
async function unlessStopped<T>(signal: AbortSignal, work: Promise<T>): Promise<T | undefined> {
  try {
    return await work;
  } catch (error) {
    if (signal.aborted) return undefined;
    throw error;
  }
}
