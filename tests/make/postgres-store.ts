import { onTestFinished } from "vitest";
import type { Store } from "../../src/ports/store.ts";
import { databaseBlobs } from "../../src/store/database-blobs.ts";
import { openPostgres } from "../../src/store/postgres.ts";
import { openStore } from "../../src/store/store.ts";
import type { PostgresServer } from "./postgres.ts";

/** A record in a database of its own, or as another worker's in the same; it is closed when the test ends. */
export async function postgresStore(server: PostgresServer, address?: string): Promise<Store> {
  const { db, bell } = await openPostgres(address ?? (await server.database()));
  const store = await openStore(db, databaseBlobs(db), undefined, bell);
  onTestFinished(() => store.close());
  return store;
}
