import type { Kysely, Transaction } from "kysely";
import { projectKey } from "../lettering/glossary.ts";
import { plainWord } from "../lettering/slips.ts";
import type { Answered, Outcome } from "../ports/store.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { readLetters } from "./read.ts";
import { sheetFrom } from "./shapes.ts";
import type { Tables } from "./tables.ts";

/** The letters whose answers have these Message-IDs, oldest first. */
export async function readAnswered(
  db: Kysely<Tables>,
  messageIds: readonly string[],
): Promise<readonly Answered[]> {
  if (messageIds.length === 0) return [];
  const rows = await db
    .selectFrom("letters")
    .innerJoin("answers", "answers.letter", "letters.id")
    .selectAll("letters")
    .where("answers.message_id", "in", messageIds)
    .orderBy("letters.id")
    .execute();
  const letters = await readLetters(db, rows);
  return letters.map((letter, i) => ({ ...letter, buyer: rows[i]?.buyer ?? "" }));
}

export async function readSheets(db: Kysely<Tables>, ids: readonly FileId[]): Promise<readonly Sheet[]> {
  if (ids.length === 0) return [];
  const rows = await db.selectFrom("sheets").select(["content", "shape"]).where("id", "in", ids).execute();
  return rows.map(sheetFrom);
}

export function readKept(db: Kysely<Tables>, buyer: string): Promise<readonly KeptWord[]> {
  return db
    .selectFrom("kept_words")
    .select(["word", "project"])
    .distinct()
    .where("buyer", "=", buyer)
    .orderBy("project")
    .orderBy("word")
    .execute();
}

export async function writeKept(
  tx: Transaction<Tables>,
  letter: number,
  { buyer, kept = [] }: Pick<Outcome, "buyer" | "kept">,
  now: Date,
): Promise<void> {
  for (const { word, project } of kept)
    await tx
      .insertInto("kept_words")
      .values({
        buyer,
        project: projectKey(project),
        word: plainWord(word),
        letter,
        kept_at: now.toISOString(),
      })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
}
