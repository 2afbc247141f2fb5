import { createHash, randomBytes } from "node:crypto";
import type { Kysely, Selectable } from "kysely";
import type { ErasedEvents } from "../ports/store.ts";
import type { Tables } from "./tables.ts";

/** Something that happened, as the record keeps it. */
export interface Happening {
  readonly at: Date;
  /** "burin", or the name of one of our own people. */
  readonly actor: string;
  readonly subject: "letter" | "account" | "person" | "record";
  readonly subject_id: number | null;
  readonly what: string;
  readonly words: string;
  /** What the tables of orders follow from. */
  readonly content?: unknown;
}

type Row = Selectable<Tables["events"]>;

/** What an event says. It may be erased; that it happened, and when, may not. */
type Said = Pick<Row, "actor" | "words" | "content">;

/** Writes an event behind the last. Its hash takes in the hash of the one before, so that none can be changed. */
export async function writeHappening(
  db: Kysely<Tables>,
  { at, actor, words, content, ...rest }: Happening,
): Promise<number> {
  const last = await db.selectFrom("events").select("hash").orderBy("id", "desc").limit(1).executeTakeFirst();
  const event = { ...rest, at: at.toISOString() };
  const said = { actor, words, content: content === undefined ? null : JSON.stringify(content) };
  const salt = newSalt();
  const digest = digestOf(salt, said);
  const { id } = await db
    .insertInto("events")
    .values({ ...event, ...said, salt, digest, hash: chained(last?.hash ?? "", event, digest) })
    .returning("id")
    .executeTakeFirstOrThrow();
  return id;
}

export function newSalt(): string {
  return randomBytes(16).toString("hex");
}

/** What stands for an event's words in the chain. Without the salt nobody can tell from it what they were. */
export function digestOf(salt: string | null, { actor, words, content }: Said): string {
  return sha256([salt, actor, words, content]);
}

/** The hash of an event: over the hash before, what happened when, and the digest of what the event says. */
export function chained(
  before: string,
  { at, subject, subject_id, what }: Pick<Row, "at" | "subject" | "subject_id" | "what">,
  digest: string,
): string {
  return sha256([before, at, subject, subject_id, what, digest]);
}

/** What an erasing has left of some events, as one hash. The event of the erasing keeps it. */
export function leftOf(rows: readonly (Said & Pick<Row, "id">)[]): string {
  return sha256(rows.map(({ id, actor, words, content }) => [id, actor, words, content]));
}

/** SHA-256 (FIPS 180-4) over values as JSON. */
function sha256(values: readonly unknown[]): string {
  return createHash("sha256").update(JSON.stringify(values)).digest("hex");
}

/** What recounting the events came to. Events are counted from 1. */
interface Recounted {
  readonly events: number;
  /** The first that somebody has changed. */
  readonly broken?: number;
  /** Erasings, and of how many events each took what they said. */
  readonly erased: readonly ErasedEvents[];
}

export async function recountEvents(db: Kysely<Tables>): Promise<Recounted> {
  const rows = await db.selectFrom("events").selectAll().orderBy("id").execute();
  const groups = Map.groupBy(rows, ({ erased_by }) => erased_by);
  groups.delete(null);
  const erasings = rows.filter(({ id }) => groups.has(id));
  const sound = new Set(
    erasings.flatMap(({ id, content }) => (keptIn(content) === leftOf(groups.get(id) ?? []) ? id : [])),
  );
  let before = "";
  const at = rows.findIndex((event) => {
    const isSaid =
      event.erased_by === null
        ? event.digest === digestOf(event.salt, event)
        : sound.has(event.erased_by) && event.salt === null;
    const fits = isSaid && event.hash === chained(before, event, event.digest);
    before = event.hash;
    return !fits;
  });
  return {
    events: rows.length,
    ...(at === -1 ? {} : { broken: at + 1 }),
    erased: erasings.map(({ id, at: when, actor }) => ({
      at: new Date(when),
      by: actor,
      events: groups.get(id)?.length ?? 0,
    })),
  };
}

/** The hash that an erasing keeps of what it has left. */
function keptIn(content: string | null): string | undefined {
  return (JSON.parse(content ?? "{}") as { readonly left?: string }).left;
}
