import { type Kysely, sql } from "kysely";
import { type MigrationProvider, Migrator } from "kysely/migration";
import { counted, isPostgres } from "./dialect.ts";
import { toDesk } from "./to-desk.ts";
import { toErasing } from "./to-erasing.ts";
import { toJobs } from "./to-jobs.ts";
import { toNotes } from "./to-notes.ts";
import { toReleases } from "./to-releases.ts";
import { toRevisions } from "./to-revisions.ts";

const migrations = {
  "001-record": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .createTable("letters")
        .addColumn("id", "integer", counted(db))
        .addColumn("key", "text", (c) => c.notNull().unique())
        .addColumn("bytes_sha", "text", (c) => c.notNull())
        .addColumn("received_at", "text", (c) => c.notNull())
        .addColumn("state", "text", (c) => c.notNull())
        .addColumn("why", "text")
        .addColumn("sender", "text")
        .addColumn("buyer", "text")
        .addColumn("subject", "text")
        .addColumn("message_id", "text")
        .addColumn("verdict", "text")
        .execute();
      await db.schema.createIndex("letters_by_time").on("letters").column("received_at").execute();
      await db.schema.createIndex("letters_by_state").on("letters").column("state").execute();
      await db.schema
        .createTable("attachments")
        .addColumn("id", "text", (c) => c.primaryKey())
        .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
        .addColumn("file", "text", (c) => c.notNull())
        .addColumn("kind", "text", (c) => c.notNull())
        .addColumn("bytes_sha", "text", (c) => c.notNull())
        .execute();
      await db.schema.createIndex("attachments_by_letter").on("attachments").column("letter").execute();
      await db.schema
        .createTable("sheets")
        .addColumn("id", "text", (c) => c.primaryKey())
        .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
        .addColumn("buyer", "text", (c) => c.notNull())
        .addColumn("order_key", "text", (c) => c.notNull())
        .addColumn("kind", "text", (c) => c.notNull())
        .addColumn("edition", "text", (c) => c.notNull())
        .addColumn("station", "text")
        .addColumn("position", "integer")
        .addColumn("verdict", "text", (c) => c.notNull())
        .addColumn("counts", "integer", (c) => c.notNull())
        .addColumn("content", "text", (c) => c.notNull())
        .execute();
      await db.schema.createIndex("sheets_by_buyer").on("sheets").columns(["buyer", "order_key"]).execute();
      await db.schema.createIndex("sheets_by_letter").on("sheets").column("letter").execute();
      await db.schema
        .createTable("problems")
        .addColumn("id", "integer", counted(db))
        .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
        .addColumn("order_key", "text")
        .addColumn("check", "text", (c) => c.notNull())
        .addColumn("wording", "text", (c) => c.notNull())
        .addColumn("severity", "text", (c) => c.notNull())
        .addColumn("verdict", "text", (c) => c.notNull())
        .addColumn("facts", "text", (c) => c.notNull())
        .addColumn("spots", "text", (c) => c.notNull())
        .execute();
      await db.schema.createIndex("problems_by_letter").on("problems").column("letter").execute();
      await db.schema
        .createTable("orders")
        .addColumn("id", "integer", counted(db))
        .addColumn("buyer", "text", (c) => c.notNull())
        .addColumn("key", "text", (c) => c.notNull())
        .addColumn("number", "text", (c) => c.notNull())
        .addColumn("project", "text")
        .addColumn("verdict", "text")
        .addColumn("missing", "text", (c) => c.notNull())
        .addColumn("opened_at", "text", (c) => c.notNull())
        .addColumn("changed_at", "text", (c) => c.notNull())
        .addUniqueConstraint("orders_once", ["buyer", "key"])
        .execute();
      await db.schema.createIndex("orders_by_key").on("orders").column("key").execute();
      await db.schema
        .createTable("order_letters")
        .addColumn("order_id", "integer", (c) => c.notNull().references("orders.id"))
        .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
        .addColumn("verdict", "text")
        .addColumn("missing", "text", (c) => c.notNull())
        .addPrimaryKeyConstraint("order_letters_once", ["order_id", "letter"])
        .execute();
      await db.schema
        .createTable("answers")
        .addColumn("letter", "integer", (c) => c.primaryKey().references("letters.id"))
        .addColumn("message_id", "text", (c) => c.notNull().unique())
        .addColumn("recipient", "text", (c) => c.notNull())
        .addColumn("subject", "text", (c) => c.notNull())
        .addColumn("bytes_sha", "text", (c) => c.notNull())
        .addColumn("made_at", "text", (c) => c.notNull())
        .addColumn("sent_at", "text")
        .addColumn("words", "text")
        .execute();
      await db.schema
        .createTable("events")
        .addColumn("id", "integer", counted(db))
        .addColumn("at", "text", (c) => c.notNull())
        .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
        .addColumn("what", "text", (c) => c.notNull())
        .addColumn("words", "text", (c) => c.notNull())
        .execute();
      await db.schema.createIndex("events_by_letter").on("events").column("letter").execute();
    },
  },
  "002-claims": {
    async up(db: Kysely<never>): Promise<void> {
      const letters = db.schema.alterTable("letters");
      await letters.addColumn("claimed_until", "text").execute();
      await letters.addColumn("fence", "integer", (c) => c.notNull().defaultTo(0)).execute();
      await letters.addColumn("opened", "integer", (c) => c.notNull().defaultTo(0)).execute();
      await letters.addColumn("tries", "integer", (c) => c.notNull().defaultTo(0)).execute();
      await letters.addColumn("due_at", "text").execute();
      await db.schema.alterTable("orders").addColumn("domain", "text").execute();
      await db.schema
        .createIndex("answers_by_recipient")
        .on("answers")
        .columns(["recipient", "made_at"])
        .execute();
      await db.schema
        .createTable("marks")
        .addColumn("mailbox", "text", (c) => c.primaryKey())
        .addColumn("validity", "text", (c) => c.notNull())
        .addColumn("uid", "integer", (c) => c.notNull())
        .execute();
    },
  },
  "003-notice-and-cut": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .alterTable("sheets")
        .addColumn("cut", "text", (c) => c.notNull().defaultTo("[]"))
        .execute();
      await db.schema.alterTable("letters").addColumn("noticed_at", "text").execute();
      await db.schema.alterTable("letters").addColumn("noticed_as", "text").execute();
    },
  },
  "004-kept-words": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .createTable("kept_words")
        .addColumn("buyer", "text", (c) => c.notNull())
        .addColumn("project", "text", (c) => c.notNull())
        .addColumn("word", "text", (c) => c.notNull())
        .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
        .addColumn("kept_at", "text", (c) => c.notNull())
        .addPrimaryKeyConstraint("kept_words_once", ["letter", "project", "word"])
        .execute();
      await db.schema.createIndex("kept_words_by_buyer").on("kept_words").column("buyer").execute();
    },
  },
  "005-replies": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .alterTable("order_letters")
        .addColumn("changes", "integer", (c) => c.notNull().defaultTo(1))
        .execute();
    },
  },
  "006-revisions": { up: toRevisions },
  "007-senders": {
    async up(db: Kysely<never>): Promise<void> {
      const letters = db.schema.alterTable("letters");
      await letters.addColumn("proof", "text").execute();
      await letters.addColumn("thread", "text").execute();
      await letters.addColumn("unsure", "integer", (c) => c.notNull().defaultTo(0)).execute();
      await letters.addColumn("waits_since", "text").execute();
      await db.schema.createIndex("letters_by_sender").on("letters").column("sender").execute();
      await db.schema.createIndex("letters_by_thread").on("letters").column("thread").execute();
      await db.schema.createIndex("answers_by_time").on("answers").column("made_at").execute();
      await db.schema
        .createTable("secrets")
        .addColumn("name", "text", (c) => c.primaryKey())
        .addColumn("value", "text", (c) => c.notNull())
        .execute();
    },
  },
  "008-jobs": { up: toJobs },
  "009-answers": {
    async up(db: Kysely<never>): Promise<void> {
      const questions = db.schema.alterTable("questions");
      await questions.addColumn("number", "integer", (c) => c.notNull().defaultTo(0)).execute();
      await questions.addColumn("settled_at", "text").execute();
      await questions.addColumn("settled_by", "integer").execute();
      await sql`UPDATE questions SET number = (SELECT count(*) FROM questions AS before
        WHERE before.order_id = questions.order_id AND before.id <= questions.id)`.execute(db);
    },
  },
  "010-notes": { up: toNotes },
  "011-withdrawn": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .alterTable("revisions")
        .addColumn("withdrawn", "text", (c) => c.notNull().defaultTo("[]"))
        .execute();
    },
  },
  "012-releases": { up: toReleases },
  "013-reminders": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .createTable("reminders")
        .addColumn("order_id", "integer", (c) => c.notNull().references("orders.id"))
        .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
        .addColumn("what", "text", (c) => c.notNull())
        .addColumn("at", "text", (c) => c.notNull())
        .addPrimaryKeyConstraint("reminders_once", ["letter"])
        .execute();
      await db.schema.createIndex("reminders_by_order").on("reminders").column("order_id").execute();
    },
  },
  "015-desk": { up: toDesk },
  "016-copies": {
    async up(db: Kysely<never>): Promise<void> {
      const answers = db.schema.alterTable("answers");
      await answers.addColumn("copies", "text", (c) => c.notNull().defaultTo("[]")).execute();
      await answers.addColumn("unreached", "text").execute();
    },
  },
  "017-lists": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema.createIndex("orders_by_latest").on("orders").column("latest").execute();
      await sql`CREATE INDEX letters_for_person ON letters (id) WHERE for_person = 1 AND dealt_with_at IS NULL`.execute(
        db,
      );
      await db.schema.dropIndex("order_terms_by_order").execute();
      await db.schema
        .createIndex("order_terms_by_order")
        .on("order_terms")
        .columns(["order_id", "term"])
        .execute();
      await sql`CREATE INDEX answers_unreached ON answers (letter) WHERE unreached IS NOT NULL`.execute(db);
    },
  },
  "018-erasing": { up: toErasing },
  /** What refers to a row is found without a look through all, when the row goes; and so are the revisions of a day. */
  "019-found": {
    async up(db: Kysely<never>): Promise<void> {
      const index = (table: string, column: string) =>
        db.schema.createIndex(`${table}_by_${column}`).on(table).column(column).execute();
      await index("revision_sheets", "sheet");
      await index("revisions", "at");
      for (const column of ["opened_at", "opened_by", "closed_by"]) await index("questions", column);
      await index("letters", "noticed_at");
      await sql`CREATE INDEX letters_to_alarm ON letters (id) WHERE alarm IS NOT NULL AND alarmed_at IS NULL`.execute(
        db,
      );
      await sql`CREATE INDEX reminders_for_person ON reminders (letter) WHERE what = 'person'`.execute(db);
    },
  },
  /** Where PostgreSQL keeps bytes, if nothing else does. Beside SQLite they are files. */
  "020-bytes": {
    async up(db: Kysely<never>): Promise<void> {
      if (!isPostgres(db)) return;
      await db.schema
        .createTable("blobs")
        .addColumn("sha", "text", (c) => c.primaryKey())
        .addColumn("bytes", "bytea", (c) => c.notNull())
        .execute();
    },
  },
  "021-leases": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .createTable("leases")
        .addColumn("what", "text", (c) => c.primaryKey())
        .addColumn("holder", "text", (c) => c.notNull())
        .addColumn("until", "text", (c) => c.notNull())
        .execute();
    },
  },
  /** Which letters are in hand is asked whenever one is taken up. */
  "022-in-hand": {
    up: (db: Kysely<never>): Promise<void> =>
      db.schema.createIndex("jobs_by_claim").on("jobs").column("claimed_until").execute(),
  },
  /** Whoever watches a desk asks for these all the time. */
  "023-unfinished": {
    up: async (db: Kysely<never>): Promise<void> =>
      void (await sql`CREATE INDEX letters_unfinished ON letters (state) WHERE state NOT IN ('sent', 'silent') AND dealt_with_at IS NULL`.execute(
        db,
      )),
  },
  /** Orders that wait for their buyers are reminded of; released ones are not, so they wait for a person. */
  "024-released": {
    up: async (db: Kysely<never>): Promise<void> =>
      void (await sql`UPDATE orders SET for_person = 1 WHERE released IS NOT NULL AND verdict IN ('waiting', 'confirm', 'fail')`.execute(
        db,
      )),
  },
  /** Which released orders have no package yet. Of those released before, nobody knows. */
  "025-packages": {
    async up(db: Kysely<never>): Promise<void> {
      await db.schema
        .alterTable("letters")
        .addColumn("to_pack", "integer", (c) => c.notNull().defaultTo(0))
        .execute();
      await sql`CREATE INDEX letters_to_pack ON letters (id) WHERE to_pack = 1`.execute(db);
    },
  },
  /** The few orders that are to be released are found among all that passed before, and so are the others. */
  "026-to-release": {
    async up(db: Kysely<never>): Promise<void> {
      await sql`CREATE INDEX orders_unreleased ON orders (verdict, latest) WHERE released IS NULL`.execute(
        db,
      );
      await sql`CREATE INDEX orders_released ON orders (verdict, latest) WHERE released IS NOT NULL`.execute(
        db,
      );
    },
  },
};

const provider: MigrationProvider = { getMigrations: () => Promise.resolve(migrations) };

/**
 * Brings a database to the present tables. Of two programs that begin with it, one does it and the other waits. `now`
 * is given where another clock than the machine's counts. Throws, with the cause, when it cannot.
 */
export async function migrate<T>(db: Kysely<T>, now?: Date): Promise<void> {
  const applied = (await appliedTo(db)) ?? [];
  if (!isKnownVersion(applied)) throw new Error("the record is of a newer version of Burin than this one");
  await db.connection().execute(async (one) => {
    // PostgreSQL's transactions take in changes of tables, and Kysely's migrator locks there by itself.
    if (!isPostgres(db)) await sql`BEGIN IMMEDIATE`.execute(one);
    const { error, results = [] } = await new Migrator({ db: one, provider }).migrateToLatest();
    if (now !== undefined)
      for (const { migrationName } of results)
        await sql`UPDATE kysely_migration SET timestamp = ${now.toISOString()} WHERE name = ${migrationName}`.execute(
          one,
        );
    if (!isPostgres(db)) await (error === undefined ? sql`COMMIT` : sql`ROLLBACK`).execute(one);
    if (error !== undefined) throw new Error("the record could not be brought up to date", { cause: error });
  });
}

/** Whether a record has the present tables. A reader does not bring them up to date. Throws where there is none. */
export async function isMigrated<T>(db: Kysely<T>): Promise<boolean> {
  const applied = await appliedTo(db);
  if (applied === undefined) throw new Error("there is no record");
  return Object.keys(migrations).every((name) => applied.includes(name)) && isKnownVersion(applied);
}

/** Whether a record that has seen these migrations is of this version of the program or of an older one. */
export function isKnownVersion(applied: readonly string[]): boolean {
  return applied.every((name) => name in migrations);
}

/** The migrations that a record has seen; undefined where there is none. */
async function appliedTo<T>(db: Kysely<T>): Promise<readonly string[] | undefined> {
  const known = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!known.some(({ name }) => name === "kysely_migration")) return undefined;
  const { rows } = await sql<{ name: string }>`SELECT name FROM kysely_migration`.execute(db);
  return rows.map(({ name }) => name);
}
