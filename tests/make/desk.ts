import { mkdtempSync } from "node:fs";
import { rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import type { Outgoing, Sender, Sending } from "../../src/ports/sender.ts";
import type { Store } from "../../src/ports/store.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { catalogue, editions } from "./config.ts";
import { directReader } from "./reader.ts";

/** A folder that goes when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "burin-"));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** A record of its own, that goes when the test ends. */
export async function temporaryStore(): Promise<Store> {
  const store = await openStore(openSqlite(":memory:"), openBlobs(temporaryFolder()));
  onTestFinished(() => store.close());
  return store;
}

/** A sender that keeps what it is given and says what it is told to say. */
export function keepingSender(says: () => Sending = () => ({ kind: "sent", words: "250 kept" })): Sender & {
  readonly kept: Outgoing[];
} {
  const kept: Outgoing[] = [];
  return {
    kept,
    send: (answer) => {
      const sending = says();
      if (sending.kind === "sent") kept.push(answer);
      return Promise.resolve(sending);
    },
    find: (messageId) => Promise.resolve(kept.some((answer) => answer.messageId === messageId)),
  };
}

/** A desk with the project's own catalogue, a record that goes with the test, and a clock that stands still. */
export async function temporaryDesk(changes: Partial<Desk> = {}): Promise<Desk> {
  return {
    store: changes.store ?? (await temporaryStore()),
    reader: directReader,
    sender: keepingSender(),
    clock: { now: () => new Date("2026-11-09T15:00:00Z") },
    log: { info: () => undefined, warn: () => undefined },
    catalogue,
    editions,
    timeZone: "America/Chicago",
    from: { name: "Order desk", address: "orders@quillgate.example" },
    chance: () => 0.5,
    secret: "a secret of the tests",
    rules: {
      ours: ["orders@quillgate.example"],
      returnPathWritten: false,
      receivedLines: 1,
      sharedDomains: [],
      known: [],
      staff: [],
      managing: [],
      mostAnswers: { toOne: 20, toAll: 600, toOneADay: 100, inThreadADay: 20 },
      lease: 600,
      patience: 600,
      grace: 120,
    },
    ...changes,
  };
}
