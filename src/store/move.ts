import type { Kysely } from "kysely";
import type { Bell } from "./bell.ts";
import type { Blobs } from "./blobs.ts";
import { type Counted, copyRows, countRows, tables } from "./copy-rows.ts";
import { inTurn } from "./in-turn.ts";
import { isMigrated, migrate } from "./migrations.ts";
import type { Tables } from "./tables.ts";

/** A record: its tables, and where its bytes are. */
export interface Place {
  readonly db: Kysely<Tables>;
  readonly blobs: Blobs;
  /** Absent where workers hear of letters in this process alone. */
  readonly bell?: Bell;
}

/** A table in both records, once it is copied. */
export interface Moved {
  readonly table: string;
  readonly from: Counted;
  readonly to: Counted;
}

/** What came of a move. Bytes are read back, and have the hash by which they are known. */
export interface Move {
  readonly tables: readonly Moved[];
  readonly bytes: number;
}

/**
 * Copies a record into an empty one: all tables as they were at one moment, and all bytes that they name. Where it
 * fails, the tables of the other stay empty. Throws where they are not.
 */
export async function move(from: Place, to: Place, progress: (what: string) => void): Promise<Move> {
  if (!(await isMigrated(from.db)))
    throw new Error("the record is of another version of Burin; `burin work` brings an older one up to date");
  await migrate(to.db);
  for (const table of tables)
    if ((await to.db.selectFrom(table).selectAll().limit(1).execute()).length > 0)
      throw new Error("the record to copy into has something in it already");
  return from.db
    .transaction()
    .setIsolationLevel("repeatable read")
    .execute(async (source) => {
      const shas = await shasIn(source);
      let bytes = 0;
      for (const sha of shas) {
        progress(`bytes ${bytes} of ${shas.length}`);
        if ((await to.blobs.put(await from.blobs.get(sha))) !== sha)
          throw new Error(`the bytes ${sha} are other bytes by now`);
        await to.blobs.get(sha);
        bytes++;
      }
      const copied = await inTurn(to.db, (tx) => copyRows(source, tx, (table) => progress(`table ${table}`)));
      const compared: Moved[] = [];
      for (const [table, counted] of copied)
        compared.push({ table, from: counted, to: await countRows(to.db, table) });
      return { tables: compared, bytes };
    });
}

/** The bytes that a record names. Erased letters have none. */
async function shasIn(db: Kysely<Tables>): Promise<readonly string[]> {
  const rows = await db
    .selectFrom("letters")
    .select("bytes_sha")
    .where("bytes_sha", "!=", "")
    .union((eb) => eb.selectFrom("attachments").select("bytes_sha"))
    .union((eb) => eb.selectFrom("answers").select("bytes_sha"))
    .execute();
  return rows.map(({ bytes_sha }) => bytes_sha);
}
