/**
 * How many letters a second a record takes, whatever reads and checks them: from coming in to being answered, with
 * three sheets and an answer of 80 KB each. Transactions that add an event go one after the other, so this bounds all
 * workers together. SQLite on this disk, PostgreSQL (Debian's) on this machine.
 *
 *     npx node tests/bench/turns.ts [--letters 200]
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { changesOf } from "../../src/judging/changes.ts";
import { makeReport } from "../../src/judging/report.ts";
import type { Store } from "../../src/ports/store.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { databaseBlobs } from "../../src/store/database-blobs.ts";
import { openPostgres } from "../../src/store/postgres.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { catalogue } from "../make/config.ts";
import { noPostgres, startPostgres } from "../make/postgres.ts";
import { deviceAt, plate } from "../make/sample.ts";

const { values } = parseArgs({ options: { letters: { type: "string", default: "200" } } });
const letters = Number(values.letters);
const [now, until] = [new Date("2026-11-09T14:00:00Z"), new Date("2026-11-09T15:00:00Z")];
const answer = new Uint8Array(80_000);

/** One letter of a buyer of its own, all the way. */
async function take(store: Store, name: string): Promise<void> {
  const buyer = `ines@${name}.example`;
  const sheets = [
    plate({ id: `${name}/0`, order: name }),
    ...[1, 2].map((n) => deviceAt(n, { id: `${name}/${n}`, order: name })),
  ];
  const { letter } = await store.letters.receive(name, new TextEncoder().encode(name), now, name);
  const taken = await store.letters.claim(letter, now, until);
  if (taken === undefined) throw new Error("somebody else has it");
  const claim = await store.letters.opening(taken);
  const files = sheets.map(({ id, file }) => ({ id, file, kind: "sheet" as const }));
  const known = await store.buyers.stateOf(buyer, [name]);
  const report = makeReport({ files, sheets, kept: [], settles: [] }, catalogue, known);
  await store.letters.settle(
    claim,
    {
      letter: {
        from: buyer,
        subject: "sheets",
        references: [],
        text: "",
        attachments: files.map((file) => ({ ...file, bytes: new TextEncoder().encode(file.id) })),
      },
      report,
      buyer,
      version: known.version,
      changes: changesOf(report, known, () => 0),
      state: "ready",
      answer: {
        messageId: `<${name}@quillgate.example>`,
        recipient: buyer,
        subject: "Re: sheets",
        bytes: answer,
      },
    },
    now,
  );
  await store.letters.mark(claim, "sending", "", now);
  await store.letters.sent(claim, "250 kept", undefined, now);
}

async function measure(what: string, stores: readonly Store[]): Promise<void> {
  const began = performance.now();
  let next = 0;
  await Promise.all(
    stores.map(async (store) => {
      while (next < letters) await take(store, `${what.replaceAll(/\W/g, "")}-${next++}`);
    }),
  );
  const seconds = (performance.now() - began) / 1000;
  console.log(`${what.padEnd(24)} ${(letters / seconds).toFixed(0).padStart(5)} letters a second`);
  for (const store of stores) await store.close();
}

const folder = mkdtempSync(join(tmpdir(), "burin-turns-"));
const sqlite = await openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
await measure("SQLite", [sqlite]);
rmSync(folder, { recursive: true });
if (noPostgres === undefined) {
  const server = await startPostgres();
  for (const count of [1, 2, 4]) {
    const address = await server.database();
    const stores: Store[] = [];
    for (let n = 0; n < count; n++) {
      const { db, bell } = await openPostgres(address);
      stores.push(await openStore(db, databaseBlobs(db), undefined, bell));
    }
    await measure(`PostgreSQL, ${count} at once`, stores);
  }
  server.stop();
} else console.log(`PostgreSQL left out: ${noPostgres}`);
