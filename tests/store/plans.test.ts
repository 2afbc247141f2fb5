import { rmSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { expect, onTestFinished, test, vi } from "vitest";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { serveStatus } from "../../src/telemetry/status.ts";
import { runWorker } from "../../src/worker/worker.ts";
import { week } from "../audit/week/letters.ts";
import { openWeek } from "../audit/week/play.ts";
import { temporaryDesk } from "../make/desk.ts";
import { freePort } from "../make/free-port.ts";

/** Statements of which SQLite says that it looks through a table, and never looks through more than a few rows. */
const harmless: Readonly<Record<string, RegExp>> = {
  "the last row alone": /^SCAN \w+ <- select [^;]* order by "id" desc limit \?$/,
  "the rows of the statement itself": /^SCAN (?:\d+-ROW VALUES CLAUSE|json_each VIRTUAL TABLE)/,
  "what waits, of which an index has nothing else":
    /^SCAN \w+ USING (?:COVERING )?INDEX (?:answers_unreached|letters_for_person|letters_unfinished|letters_to_alarm|reminders_for_person) /,
  "what is still to be deleted": /^SCAN to_delete /,
  "once, at the start":
    /^SCAN (?:sqlite_master|kysely_migration|p VIRTUAL TABLE INDEX 0:) .*(?:sqlite_master|kysely_migration)/,
};

/** What SQLite looks through for these statements: its documentation, "EXPLAIN QUERY PLAN", section 1.1. */
function scansOf(statements: Iterable<string>, db: DatabaseSync): string[] {
  return [...statements].flatMap((sql) =>
    db
      .prepare(`EXPLAIN QUERY PLAN ${sql}`)
      .all()
      .map(({ detail }) => `${String(detail)} <- ${sql}`)
      .filter((plan) => plan.startsWith("SCAN") && !Object.values(harmless).some((one) => one.test(plan))),
  );
}

test("no statement of a desk at work looks through a table that grows with its letters", async () => {
  const played = await openWeek();
  onTestFinished(() => rmSync(played.folder, { recursive: true }));
  const path = join(played.folder, "record/record.sqlite");
  const spy = vi.spyOn(DatabaseSync.prototype, "prepare");
  await played.play(week);
  await played.close();
  const store = await openStore(openSqlite(path), openBlobs(join(played.folder, "record/blobs")));
  const desk = await temporaryDesk({ store });
  const address = "odile@quillgate.example";
  // Without the letter about a day, whose figures look through weeks once a day.
  const releasing = {
    afterHours: 0,
    buyers: ["fallowmere.example", "oakmoor.example", "brackenholt.example"],
    put: () => Promise.resolve("released"),
  };
  const rules = { ...desk.rules, notice: address, room: address, releasing };
  await runWorker({ ...desk, rules }, [], { once: true, signal: new AbortController().signal });
  // What whoever watches the worker asks for: /healthz and /metrics.
  const port = await freePort();
  const closeStatus = await serveStatus(port, store);
  for (const page of ["healthz", "metrics"])
    expect((await fetch(`http://127.0.0.1:${port}/${page}`)).status).toBe(200);
  await closeStatus();
  const asked = new Set(
    spy.mock.calls.map(([sql]) => sql).filter((sql) => /^(?:select|insert|update|delete|with) /i.test(sql)),
  );
  spy.mockRestore();
  await store.close();
  const db = new DatabaseSync(path, { readOnly: true });
  onTestFinished(() => db.close());
  expect(asked.size).toBeGreaterThan(100);
  expect(scansOf(asked, db)).toEqual([]);
  // A statement that does is found.
  expect(scansOf(["select * from letters where subject = ?"], db)).toHaveLength(1);
});
