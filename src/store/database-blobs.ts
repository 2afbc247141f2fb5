import type { Kysely } from "kysely";
import { type Blobs, shaOf } from "./blobs.ts";
import type { Tables } from "./tables.ts";

interface Kept {
  blobs: { sha: string; bytes: Uint8Array };
}

/** Bytes in a table of the record's own database, on PostgreSQL. */
export function databaseBlobs(record: Kysely<Tables>): Blobs {
  const db = record as unknown as Kysely<Kept>;
  const inside = (tx: Kysely<Tables>): Kysely<Kept> => tx as unknown as Kysely<Kept>;
  return {
    async put(bytes) {
      const sha = shaOf(bytes);
      const known = await db.selectFrom("blobs").select("sha").where("sha", "=", sha).executeTakeFirst();
      if (known === undefined)
        await db
          .insertInto("blobs")
          .values({ sha, bytes: Buffer.from(bytes) })
          .onConflict((conflict) => conflict.doNothing())
          .execute();
      return sha;
    },
    async get(sha) {
      const row = await db.selectFrom("blobs").select("bytes").where("sha", "=", sha).executeTakeFirst();
      if (row === undefined) throw new Error(`there are no bytes ${sha}`);
      return new Uint8Array(row.bytes);
    },
    has: async (sha, tx) =>
      (await inside(tx).selectFrom("blobs").select("sha").where("sha", "=", sha).executeTakeFirst()) !==
      undefined,
    async remove(sha, tx) {
      await inside(tx).deleteFrom("blobs").where("sha", "=", sha).execute();
    },
    /** The server's matter. */
    room: () => Promise.resolve(Number.MAX_SAFE_INTEGER),
  };
}
