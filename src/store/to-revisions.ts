import { type Kysely, sql } from "kysely";
import { orderKey } from "../judging/state.ts";
import { counted, isPostgres } from "./dialect.ts";

/**
 * Brings a record that marks sheets as counting to one of order revisions. What an order consists of now is carried
 * over whole: the sheets that counted, and those that something stopped in the last letter to it. Earlier revisions
 * keep their verdict and what was missing. Which sheets they had is no longer known.
 */
export async function toRevisions(db: Kysely<never>): Promise<void> {
  await lettersInLanes(db);
  await newTables(db);
  await newColumns(db);
  // SQLite's own words read a record that was made before; one on PostgreSQL begins with nothing to carry over.
  if (!isPostgres(db)) await fillRevisions(db);
  await lettersOfOrders(db);
  await keysWithoutWords(db);
  await fillNumbers(db);
  await dropOldColumns(db);
  await eventsWithActors(db);
}

async function lettersInLanes(db: Kysely<never>): Promise<void> {
  const letters = db.schema.alterTable("letters");
  await letters.addColumn("dated_at", "text").execute();
  // Whose turn it is among letters of one sender.
  await letters.addColumn("lane", "text").execute();
  await db.schema
    .createIndex("letters_by_lane")
    .on("letters")
    .columns(["lane", "state", "received_at"])
    .execute();
}

async function newTables(db: Kysely<never>): Promise<void> {
  await db.schema
    .createTable("buyers")
    .addColumn("buyer", "text", (c) => c.primaryKey())
    .addColumn("version", "integer", (c) => c.notNull())
    .execute();
  await db.schema
    .createTable("numbers")
    .addColumn("key", "text", (c) => c.primaryKey())
    .addColumn("buyer", "text", (c) => c.notNull())
    .addColumn("domain", "text")
    .execute();
  await db.schema
    .createTable("revisions")
    .addColumn("id", "integer", counted(db))
    .addColumn("order_id", "integer", (c) => c.notNull().references("orders.id"))
    .addColumn("number", "integer", (c) => c.notNull())
    .addColumn("at", "text", (c) => c.notNull())
    .addColumn("cause", "text", (c) => c.notNull())
    .addColumn("letter", "integer", (c) => c.references("letters.id"))
    .addColumn("verdict", "text")
    .addColumn("missing", "text", (c) => c.notNull())
    .addColumn("carried", "text", (c) => c.notNull())
    .addColumn("shape", "integer", (c) => c.notNull())
    .addColumn("problems", "text", (c) => c.notNull())
    .addUniqueConstraint("revisions_once", ["order_id", "number"])
    .execute();
  await db.schema.createIndex("revisions_by_letter").on("revisions").column("letter").execute();
  await db.schema
    .createTable("revision_sheets")
    .addColumn("revision", "integer", (c) => c.notNull().references("revisions.id"))
    .addColumn("sheet", "text", (c) => c.notNull().references("sheets.id"))
    .addPrimaryKeyConstraint("revision_sheets_once", ["revision", "sheet"])
    .execute();
  await db.schema
    .createTable("questions")
    .addColumn("id", "integer", counted(db))
    .addColumn("order_id", "integer", (c) => c.notNull().references("orders.id"))
    .addColumn("key", "text", (c) => c.notNull())
    .addColumn("shape", "integer", (c) => c.notNull())
    .addColumn("problem", "text", (c) => c.notNull())
    .addColumn("station", "text")
    .addColumn("position", "integer")
    .addColumn("opened_at", "text", (c) => c.notNull())
    .addColumn("opened_by", "integer", (c) => c.notNull().references("revisions.id"))
    .addColumn("closed_at", "text")
    .addColumn("closed_by", "integer", (c) => c.references("revisions.id"))
    .execute();
  await db.schema
    .createTable("lines")
    .addColumn("sender", "text", (c) => c.notNull())
    .addColumn("line", "text", (c) => c.notNull())
    .addPrimaryKeyConstraint("lines_once", ["sender", "line"])
    .execute();
  await db.schema.createIndex("questions_by_order").on("questions").columns(["order_id", "key"]).execute();
}

async function newColumns(db: Kysely<never>): Promise<void> {
  await db.schema
    .alterTable("sheets")
    .addColumn("shape", "integer", (c) => c.notNull().defaultTo(1))
    .execute();
  await db.schema
    .alterTable("problems")
    .addColumn("shape", "integer", (c) => c.notNull().defaultTo(1))
    .execute();
  // Orders know their latest revision; the rest of what they say follows from it.
  await db.schema.alterTable("orders").addColumn("latest", "integer").execute();
}

/** What orders consist of now, as the first revisions, and the questions that are open in them. */
async function fillRevisions(db: Kysely<never>): Promise<void> {
  await sql`INSERT INTO buyers (buyer, version) SELECT DISTINCT buyer, 1 FROM orders`.execute(db);
  await sql`INSERT INTO revisions (order_id, number, at, cause, letter, verdict, missing, carried, shape, problems)
    SELECT order_id, row_number() OVER (PARTITION BY order_id ORDER BY letter), letters.received_at, 'letter',
      letter, order_letters.verdict, order_letters.missing, '[]', 1, '[]'
    FROM order_letters JOIN letters ON letters.id = letter WHERE changes = 1`.execute(db);
  await sql`UPDATE orders SET latest = (SELECT max(id) FROM revisions WHERE order_id = orders.id)`.execute(
    db,
  );
  await sql`INSERT OR IGNORE INTO revision_sheets (revision, sheet)
    SELECT latest, sheets.id FROM orders JOIN sheets
      ON sheets.buyer = orders.buyer AND sheets.order_key = orders.key AND sheets.counts = 1
    WHERE latest IS NOT NULL`.execute(db);
  await sql`INSERT OR IGNORE INTO revision_sheets (revision, sheet)
    SELECT latest, sheets.id FROM orders
      JOIN revisions ON revisions.id = latest
      JOIN problems ON problems.letter = revisions.letter AND problems.severity = 'stops'
      JOIN json_each(problems.spots) AS spot
      JOIN sheets ON sheets.id = spot.value ->> 'file' AND sheets.buyer = orders.buyer
        AND sheets.order_key = orders.key`.execute(db);
  await sql`UPDATE revisions SET problems = (
      SELECT json_group_array(json_object('check', "check", 'wording', wording, 'severity', severity,
        'verdict', verdict, 'facts', json(facts), 'spots', json(spots)))
      FROM problems WHERE problems.letter = revisions.letter AND problems.verdict <> 'pass'
        AND problems.order_key = (SELECT key FROM orders WHERE orders.id = order_id))
    WHERE id IN (SELECT latest FROM orders)`.execute(db);
  await sql`INSERT INTO questions (order_id, key, shape, problem, station, position, opened_at, opened_by)
    SELECT revisions.order_id, asked.value, 1, asked.value, NULL, NULL, revisions.at, revisions.id
    FROM revisions JOIN orders ON orders.latest = revisions.id JOIN json_each(revisions.problems) AS asked
    WHERE asked.value ->> 'severity' = 'asks'`.execute(db);
}

/** Keeps which letters are about an order. What it came to stands in the revisions. */
async function lettersOfOrders(db: Kysely<never>): Promise<void> {
  await sql`ALTER TABLE order_letters RENAME TO letters_of_orders`.execute(db);
  await db.schema
    .createTable("order_letters")
    .addColumn("order_id", "integer", (c) => c.notNull().references("orders.id"))
    .addColumn("letter", "integer", (c) => c.notNull().references("letters.id"))
    .addPrimaryKeyConstraint("order_letters_each", ["order_id", "letter"])
    .execute();
  await db.schema.createIndex("order_letters_by_letter").on("order_letters").column("letter").execute();
  await sql`INSERT INTO order_letters SELECT order_id, letter FROM letters_of_orders`.execute(db);
  await sql`DROP TABLE letters_of_orders`.execute(db);
}

async function fillNumbers(db: Kysely<never>): Promise<void> {
  await sql`INSERT INTO numbers (key, buyer, domain)
    SELECT key, buyer, domain FROM orders
    WHERE key <> '' AND id IN (SELECT min(id) FROM orders GROUP BY key)`.execute(db);
}

async function dropOldColumns(db: Kysely<never>): Promise<void> {
  for (const column of ["verdict", "missing", "changed_at", "domain"])
    await db.schema.alterTable("orders").dropColumn(column).execute();
  await db.schema.alterTable("sheets").dropColumn("counts").execute();
}

/** "PO EG-500" and "EG-500" are one number, and "TBD" is none. If a buyer has orders under both, they stay two. */
async function keysWithoutWords(db: Kysely<never>): Promise<void> {
  const { rows } = await sql<{ id: number; number: string }>`SELECT id, number FROM orders`.execute(db);
  for (const { id, number } of rows)
    await sql`UPDATE OR IGNORE orders SET key = ${orderKey(number)} WHERE id = ${id}`.execute(db);
}

/** Events say who did what to which thing; they need no letter. */
async function eventsWithActors(db: Kysely<never>): Promise<void> {
  await sql`ALTER TABLE events RENAME TO events_of_letters`.execute(db);
  await db.schema
    .createTable("events")
    .addColumn("id", "integer", counted(db))
    .addColumn("at", "text", (c) => c.notNull())
    .addColumn("actor", "text", (c) => c.notNull())
    .addColumn("subject", "text", (c) => c.notNull())
    .addColumn("subject_id", "integer")
    .addColumn("what", "text", (c) => c.notNull())
    .addColumn("words", "text", (c) => c.notNull())
    .execute();
  await sql`INSERT INTO events (id, at, actor, subject, subject_id, what, words)
    SELECT id, at, 'burin', 'letter', letter, what, words FROM events_of_letters`.execute(db);
  await sql`DROP TABLE events_of_letters`.execute(db);
  await db.schema.createIndex("events_by_subject").on("events").columns(["subject", "subject_id"]).execute();
}
