import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { expect, test, vi } from "vitest";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { pagedDesk } from "../make/desk-page.ts";
import { post } from "../make/thread.ts";

/** Tables that grow with every letter. */
const growing =
  /^SCAN (?:letters|orders|revisions|problems|questions|order_terms|order_letters|answers|events|sheets|one)\b(?!.*USING )/;

test("no page reads a whole table", async () => {
  const folder = temporaryFolder();
  const path = join(folder, "record.sqlite");
  const store = await openStore(openSqlite(path), openBlobs(join(folder, "blobs")));
  const desk = await temporaryDesk({ store });
  await post(desk, { sheets: [{ mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } }] });
  const { as } = await pagedDesk({ desk });
  const own = await as("administer");
  const spy = vi.spyOn(DatabaseSync.prototype, "prepare");
  for (const page of [
    "/",
    "/people",
    "/orders",
    "/orders?verdict=confirm&before=9",
    "/orders?verdict=person",
    "/orders?verdict=pass",
    "/orders?verdict=released&before=9",
    "/orders?search=SALONA greta",
    "/orders/FM-80",
    "/letters?before=9",
    "/letters/1",
    "/files/1/1",
    "/erase?address=greta@fallowmere.example",
  ])
    expect([page, (await own.get(page)).status]).toEqual([page, 200]);
  const said = new Set(spy.mock.calls.map(([sql]) => sql));
  spy.mockRestore();
  const selects = [...said].filter((sql) => /^\s*(?:select|with)\b/i.test(sql));
  expect(selects.length).toBeGreaterThan(20);
  const db = new DatabaseSync(path, { readOnly: true });
  const scans = selects.flatMap((sql) =>
    (db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all() as { detail: string }[])
      .filter(({ detail }) => growing.test(detail))
      .map(({ detail }) => `${detail}: ${sql}`),
  );
  db.close();
  expect(scans).toEqual([]);
  await store.close();
});
