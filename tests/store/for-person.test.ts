import { expect, onTestFinished, test } from "vitest";
import { openBlobs } from "../../src/store/blobs.ts";
import { insertAll } from "../../src/store/insert-all.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryFolder } from "../make/desk.ts";

const monday = new Date("2026-11-09T14:00:00Z");
const sam = "sam@quillgate.example";

test("letters that wait for a person are told each once, however many: all in the list, five hundred in a notice", async () => {
  const db = openSqlite(":memory:");
  const store = await openStore(db, openBlobs(temporaryFolder()));
  onTestFinished(() => store.close());
  const ids = Array.from({ length: 1_001 }, (_, n) => n + 1);
  // The later its number, the earlier it came.
  const came = (id: number): string => new Date(monday.getTime() - id * 1_000).toISOString();
  const letters = ids.map((id) => ({
    id,
    key: `${id}`,
    bytes_sha: "x",
    received_at: came(id),
    state: "held",
  }));
  await db.transaction().execute((tx) => insertAll(tx, "letters", letters));
  const waiting = await store.people.waiting(monday);
  expect(waiting.map(({ letter }) => letter)).toEqual(ids.toReversed());
  const told = async (minutes: number): Promise<number[]> => {
    const now = new Date(monday.getTime() + minutes * 60_000);
    return (await store.people.takeNotice(now, sam)).map(({ letter }) => letter);
  };
  expect(await told(0)).toEqual(ids.toReversed().slice(0, 500));
  expect(await told(59)).toEqual([]);
  expect(await told(60)).toEqual(ids.toReversed().slice(500, 1_000));
  expect(await told(120)).toEqual([1]);
});
