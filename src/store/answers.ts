import type { Kysely } from "kysely";
import type { Answered, Answers } from "../ports/store.ts";
import type { Blobs } from "./blobs.ts";
import { readLetters } from "./read.ts";
import { recentAnswers, secretOf, threadOf } from "./senders.ts";
import type { Tables } from "./tables.ts";

/** Answers, and what is needed to make and to find them. */
export function answersOver(db: Kysely<Tables>, blobs: Blobs): Answers {
  return {
    of: async (letter) => {
      const row = await db.selectFrom("answers").selectAll().where("letter", "=", letter).executeTakeFirst();
      if (row === undefined) return undefined;
      return {
        letter,
        messageId: row.message_id,
        recipient: row.recipient,
        copies: JSON.parse(row.copies) as string[],
        bytes: await blobs.get(row.bytes_sha),
      };
    },
    answered: (messageIds) => readAnswered(db, messageIds),
    since: (moment, sender, thread, most) => recentAnswers(db, moment, sender, thread, most),
    threadOf: (messageIds) => threadOf(db, messageIds),
    secret: () => secretOf(db, "message-id"),
  };
}

/** The letters whose answers have these Message-IDs, oldest first. */
async function readAnswered(db: Kysely<Tables>, messageIds: readonly string[]): Promise<readonly Answered[]> {
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
