import type { Kysely, Transaction } from "kysely";
import { projectKey } from "../lettering/glossary.ts";
import { plainWord } from "../lettering/slips.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Tables } from "./tables.ts";

/** The words that a buyer has confirmed, each once for each project. */
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

/** Keeps what a letter confirms. A word that is kept already stays as it is. */
export async function writeKept(
  tx: Transaction<Tables>,
  letter: number,
  { buyer, kept }: { readonly buyer: string; readonly kept: readonly KeptWord[] },
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
