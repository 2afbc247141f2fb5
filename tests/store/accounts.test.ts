import { expect, test } from "vitest";
import type { Account } from "../../src/ports/accounts.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryFolder, temporaryStore } from "../make/desk.ts";

const monday = new Date("2026-11-09T14:00:00Z");
const noon = new Date("2026-11-09T18:00:00Z");
const rosa: Account = { user: "rosa", name: "Rosa Imhoff", role: "act", password: "a hash", isShut: false };
const ana: Account = { user: "ana", name: "Ana Reyes", role: "administer", isShut: false };

test("an account comes back as it was saved last, and all stand by their names", async () => {
  const { accounts } = await temporaryStore();
  for (const account of [rosa, ana]) await accounts.save(account, "ana", monday);
  expect(await accounts.all()).toEqual([ana, rosa]);
  const changed: Account = { ...rosa, role: "release", isShut: true };
  await accounts.save(changed, "ana", monday);
  expect(await accounts.find("rosa")).toEqual(changed);
  expect(await accounts.all()).toEqual([ana, changed]);
  expect(await accounts.find("sam")).toBeUndefined();
});

test("a session lasts until its moment, or until it is ended, and counts for one account", async () => {
  const { accounts } = await temporaryStore();
  for (const account of [rosa, ana]) await accounts.save(account, "ana", monday);
  await accounts.begin({ user: "rosa", until: noon }, "s1", monday);
  await accounts.begin({ user: "ana", until: noon }, "s2", monday);
  const before = new Date(noon.getTime() - 1);
  expect([await accounts.of("s1", before), await accounts.of("s2", before)]).toEqual([rosa, ana]);
  expect(await accounts.of("s3", before)).toBeUndefined();
  expect(await accounts.of("s1", noon)).toBeUndefined();
  await accounts.end("s1");
  expect([await accounts.of("s1", before), await accounts.of("s2", before)]).toEqual([undefined, ana]);
  // whoever comes in clears away the sessions that are over
  await accounts.begin({ user: "rosa", until: new Date("2026-11-10T18:00:00Z") }, "s4", noon);
  expect(await accounts.of("s2", before)).toBeUndefined();
  expect(await accounts.of("s4", noon)).toEqual(rosa);
});

test("an account that is saved has to come in anew, and a shut one cannot", async () => {
  const { accounts } = await temporaryStore();
  for (const account of [rosa, ana]) await accounts.save(account, "ana", monday);
  for (const { user } of [rosa, ana]) await accounts.begin({ user, until: noon }, `s ${user}`, monday);
  await accounts.save({ ...rosa, isShut: true }, "ana", monday);
  expect([await accounts.of("s rosa", monday), await accounts.of("s ana", monday)]).toEqual([undefined, ana]);
  await accounts.begin({ user: "rosa", until: noon }, "again", monday);
  expect(await accounts.of("again", monday)).toBeUndefined();
});

test("who saved and who shut an account is in the chain of events", async () => {
  const db = openSqlite(":memory:");
  const store = await openStore(db, openBlobs(temporaryFolder()));
  await store.accounts.save(rosa, "Ana Reyes", monday);
  await store.accounts.save({ ...rosa, isShut: true }, "Ana Reyes", noon);
  const events = await db
    .selectFrom("events")
    .select(["at", "actor", "what", "words"])
    .orderBy("id")
    .execute();
  const words = "rosa: Rosa Imhoff, act";
  expect(events).toEqual([
    { at: monday.toISOString(), actor: "Ana Reyes", what: "saved", words },
    { at: noon.toISOString(), actor: "Ana Reyes", what: "shut", words },
  ]);
  expect((await store.verify()).broken).toBeUndefined();
  await store.close();
});
