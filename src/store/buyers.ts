import type { Kysely } from "kysely";
import { orderKey } from "../judging/state.ts";
import type { Buyers } from "../ports/store.ts";
import { readKept } from "./kept-words.ts";
import { readLines } from "./lines.ts";
import { isProved, numbersKnown } from "./senders.ts";
import { readState } from "./state.ts";
import type { Tables } from "./tables.ts";

/** What is known of buyers and senders. */
export function buyersOver(db: Kysely<Tables>): Buyers {
  return {
    stateOf: (buyer, numbers) => readState(db, buyer, numbers),
    keptWords: (buyer) => readKept(db, buyer),
    linesSeen: (senders, lines) => readLines(db, senders, lines),
    lettersOfNoOrder: async (buyer) => {
      const rows = await db
        .selectFrom("letters")
        .select("id")
        .where("buyer", "=", buyer)
        .where((eb) =>
          eb.exists(
            eb
              .selectFrom("problems")
              .select("letter")
              .whereRef("problems.letter", "=", "letters.id")
              .where("problems.verdict", "=", "person"),
          ),
        )
        // Held letters and letters of machines say nothing of the buyer's orders.
        .where("why", "is", null)
        .where((eb) =>
          eb.not(
            eb.exists(
              eb
                .selectFrom("order_letters")
                .select("letter")
                .whereRef("order_letters.letter", "=", "letters.id"),
            ),
          ),
        )
        .orderBy("id", "desc")
        .limit(30)
        .execute();
      return rows.map(({ id }) => id).toReversed();
    },
    ownerOf: async (number) => {
      const owner = await db
        .selectFrom("numbers")
        .select(["buyer", "domain"])
        .where("key", "=", orderKey(number))
        .executeTakeFirst();
      if (owner === undefined) return undefined;
      return { buyer: owner.buyer, ...(owner.domain === null ? {} : { domain: owner.domain }) };
    },
    numbersKnown: (keys) => numbersKnown(db, keys),
    knows: async (sender) =>
      (await db
        .selectFrom("answers")
        .innerJoin("letters", "letters.id", "answers.letter")
        .select("letters.id")
        .where("letters.sender", "=", sender)
        .where("sent_at", "is not", null)
        .executeTakeFirst()) !== undefined,
    proved: (sender) => isProved(db, sender),
  };
}
