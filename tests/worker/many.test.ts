import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import type { Mail, Mailbox, Mark } from "../../src/ports/mailbox.ts";
import type { Outgoing } from "../../src/ports/sender.ts";
import { runWorker } from "../../src/worker/worker.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { noPostgres, type PostgresServer, startPostgres } from "../make/postgres.ts";
import { postgresStore } from "../make/postgres-store.ts";

const receivedAt = new Date("2026-11-09T15:00:00Z");
const letters = 40;

/** A mailbox of a server: whoever looks sees the same letters. It counts those who look at once. */
function serverMailbox() {
  const watched = { now: 0, most: 0, looks: 0 };
  const mail = (uid: number): Mail => ({
    name: `INBOX 1/${uid}`,
    size: 100,
    receivedAt,
    mark: { validity: "1", uid },
    bytes: () => {
      const lines = [
        `From: ines@buyer${uid % 8}.example`,
        "To: orders@quillgate.example",
        `Message-ID: <${uid}@b.example>`,
        "Subject: Stations",
        "",
        `Hello ${uid}`,
      ];
      return Promise.resolve(new TextEncoder().encode(lines.join("\r\n")));
    },
    shelve: () => Promise.resolve(),
  });
  const mailbox: Mailbox = {
    name: "orders",
    isShared: true,
    async *letters({ since, signal }: { readonly since?: Mark; readonly signal: AbortSignal }) {
      watched.most = Math.max(watched.most, ++watched.now);
      watched.looks++;
      try {
        for (let uid = (since?.uid ?? 0) + 1; uid <= letters && !signal.aborted; uid++) yield mail(uid);
        await new Promise<void>((stop) => {
          if (signal.aborted) stop();
          else signal.addEventListener("abort", () => stop(), { once: true });
        });
      } finally {
        watched.now--;
      }
    },
    close: () => Promise.resolve(),
  };
  return { mailbox, watched };
}

describe.skipIf(noPostgres !== undefined)("over one record on a server", () => {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await startPostgres();
  });
  afterAll(() => server.stop());

  test("one worker watches, all check, and every letter is answered once", async () => {
    const address = await server.database();
    const { mailbox, watched } = serverMailbox();
    // Each answer takes so long that no worker is done before the others hear of the letters.
    const senders = [keepingSender(), keepingSender(), keepingSender()].map((sender) => ({
      ...sender,
      send: async (answer: Outgoing) => {
        await new Promise((resolve) => setTimeout(resolve, 200));
        return sender.send(answer);
      },
    }));
    const desks: Desk[] = [];
    for (const sender of senders)
      desks.push(await temporaryDesk({ store: await postgresStore(server, address), sender }));
    const stops = desks.map(() => new AbortController());
    const runs = desks.map((desk, i) =>
      runWorker(desk, [mailbox], { once: false, signal: stops[i]?.signal ?? AbortSignal.abort() }),
    );
    const sent = () => senders.flatMap(({ kept }) => kept);
    await expect.poll(() => sent().length, { timeout: 60_000 }).toBe(letters);
    expect(new Set(sent().map(({ messageId }) => messageId)).size).toBe(letters);
    expect(watched).toMatchObject({ now: 1, most: 1 });
    expect(senders.filter(({ kept }) => kept.length > 0).length).toBeGreaterThan(1);
    // Whoever watched is gone; another watches from then on.
    for (const [i, stop] of stops.entries()) {
      stop.abort();
      await runs[i];
      if (i < 2) await expect.poll(() => watched.now, { timeout: 30_000 }).toBe(1);
    }
    expect(watched.most).toBe(1);
    expect(sent()).toHaveLength(letters);
  });
});
