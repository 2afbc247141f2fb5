import { Client } from "pg";
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { among } from "../../src/store/among.ts";
import { databaseBlobs } from "../../src/store/database-blobs.ts";
import { openPostgres } from "../../src/store/postgres.ts";
import { openStore } from "../../src/store/store.ts";
import { noPostgres, type PostgresServer, startPostgres } from "../make/postgres.ts";
import { postgresStore } from "../make/postgres-store.ts";
import { completeOrder, deviceAt } from "../make/sample.ts";
import { settled, storeContract } from "./contract.ts";

const now = new Date("2026-11-09T14:00:00Z");
const until = new Date("2026-11-09T14:10:00Z");
const never = new AbortController().signal;
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe.skipIf(noPostgres !== undefined)("on PostgreSQL", () => {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await startPostgres();
  });
  afterAll(() => server.stop());

  storeContract(() => postgresStore(server));

  /** Workers over one record. */
  const workers = async (count: number) => {
    const address = await server.database();
    const first = await postgresStore(server, address);
    const others = Array.from({ length: count - 1 }, () => postgresStore(server, address));
    return { address, stores: [first, ...(await Promise.all(others))] };
  };

  test("workers that ask at once have each letter in one hand, and the chain of events is whole", async () => {
    const { stores } = await workers(4);
    const keys = Array.from({ length: 24 }, (_, i) => `k${i}`);
    // Each letter comes in by two of them at once.
    const both = [...stores, ...stores.slice(1), ...stores.slice(0, 1)];
    const taken = await Promise.all(
      both.flatMap((store, i) =>
        keys
          .filter((_, n) => n % stores.length === i % stores.length)
          .map((key) => store.letters.receive(key, bytes(key), now, `lane ${keys.indexOf(key) % 6}`)),
      ),
    );
    expect(new Set(taken.map(({ letter }) => letter)).size).toBe(keys.length);
    const hands: number[] = [];
    // Of a lane one letter is given at a time: the next when the one before is judged.
    const work = async (store: (typeof stores)[number]): Promise<void> => {
      for (let idle = 0; idle < 20; ) {
        const claim = await store.letters.claimDue(now, until);
        if (claim === undefined) {
          idle++;
          await new Promise((resolve) => setTimeout(resolve, 10));
          continue;
        }
        idle = 0;
        hands.push(claim.letter);
        await store.letters.mark(await store.letters.opening(claim), "held", "seen", now, until);
      }
    };
    await Promise.all(stores.map(work));
    expect(hands).toHaveLength(keys.length);
    expect(new Set(hands)).toEqual(new Set(taken.map(({ letter }) => letter)));
    expect(await stores[0]?.verify()).toMatchObject({ events: 48, differ: [] });
    expect(await stores[0]?.verify()).not.toHaveProperty("broken");
  });

  test("a letter that one worker takes in wakes another that waits", async () => {
    const { stores } = await workers(2);
    const [one, two] = stores;
    const awake = new AbortController();
    const waiting = two?.letters.arrival(60_000, never).finally(() => awake.abort());
    // Until it listens, nobody hears; so it is rung until it wakes.
    for (let n = 0; !awake.signal.aborted; n++) {
      await one?.letters.receive(`k${n}`, bytes(`${n}`), now);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    await waiting;
  });

  test("a worker is not woken by what it takes in itself", async () => {
    const store = await postgresStore(server);
    const end = new AbortController();
    const waiting = store.letters.arrival(60_000, end.signal).then(() => "awake");
    const asleep = new Promise((resolve) => setTimeout(resolve, 500, "asleep"));
    for (let n = 0; n < 10; n++) {
      await store.letters.receive(`k${n}`, bytes(`${n}`), now);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    expect(await Promise.race([waiting, asleep])).toBe("asleep");
    end.abort();
    expect(await waiting).toBe("awake");
  });

  test("a server that was away is used again, and nothing that was committed is gone", async () => {
    const own = await startPostgres();
    onTestFinished(() => own.stop());
    const store = await postgresStore(own);
    const letter = await settled(store, "k1", completeOrder());
    // Whoever waits for letters by a connection that is lost looks for himself.
    const waiting = store.letters.arrival(60_000, never);
    await new Promise((resolve) => setTimeout(resolve, 500));
    for (const how of ["immediate", "fast"] as const) {
      own.restart(how);
      // Connections that the server has ended fail once, each when it is used.
      for (let tries = 0; tries < 20; tries++) if (await store.letters.states().catch(() => undefined)) break;
      expect(await store.letters.read(letter)).toMatchObject({ state: "ready", orders: ["BW-2207"] });
    }
    await waiting;
    expect(await store.verify()).toMatchObject({ orders: 1, differ: [] });
  });

  test.each([
    ["LOCALE 'C' ENCODING 'UTF8'", true],
    ["LOCALE_PROVIDER icu ICU_LOCALE 'cs' ENCODING 'UTF8'", false],
    ["LOCALE 'C' ENCODING 'SQL_ASCII'", false],
  ])("whether a database may be used that was made with %s: %s", async (how, may) => {
    const opened = openPostgres(await server.database(`TEMPLATE template0 ${how}`));
    if (may) await (await opened).db.destroy();
    else await expect(opened).rejects.toThrow("make it with: createdb");
  });

  test("among no values nothing is found, whether they would be numbers or texts", async () => {
    const address = await server.database();
    await settled(await postgresStore(server, address), "k1", completeOrder());
    const { db } = await openPostgres(address);
    const letters = db.selectFrom("letters").select("id");
    expect(await letters.where("id", "in", among([1])).execute()).toEqual([{ id: 1 }]);
    expect(await letters.where("key", "in", among(["k1"])).execute()).toEqual([{ id: 1 }]);
    for (const column of ["id", "key"] as const)
      expect(await letters.where(column, "in", among([])).execute()).toEqual([]);
    await db.destroy();
  });

  test("it says what time it is there", async () => {
    const store = await postgresStore(server);
    const before = Date.now();
    const time = (await store.time?.())?.getTime() ?? 0;
    expect(time).toBeGreaterThanOrEqual(before - 1);
    expect(time).toBeLessThanOrEqual(Date.now() + 1);
  });

  test("a worker of the version before goes on beside a newer one, and none begins there any more", async () => {
    const address = await server.database();
    const old = await postgresStore(server, address);
    await settled(old, "k1", completeOrder());
    // As newer versions do: they only add.
    const client = new Client(address);
    await client.connect();
    await client.query("ALTER TABLE letters ADD COLUMN something_new text");
    await client.query("INSERT INTO kysely_migration (name, timestamp) VALUES ('999-newer', '')");
    await client.end();
    await settled(old, "k2", [deviceAt(2, { id: "2/1" })]);
    expect(await old.letters.states()).toEqual({ ready: 2 });
    const { db } = await openPostgres(address);
    await expect(openStore(db, databaseBlobs(db))).rejects.toThrow("of a newer version of Burin");
    await db.destroy();
  });
});
