import type { Kysely, Transaction } from "kysely";
import type { Outcome } from "../ports/store.ts";
import type { Tables } from "./tables.ts";

/** How many lines of one letter are remembered, or looked for. */
const most = 400;

export async function readLines(
  db: Kysely<Tables>,
  senders: readonly string[],
  lines: readonly string[],
): Promise<ReadonlySet<string>> {
  if (senders.length === 0 || lines.length === 0) return new Set();
  const rows = await db
    .selectFrom("lines")
    .select("line")
    .where("sender", "in", senders)
    .where("line", "in", lines.slice(0, most))
    .execute();
  return new Set(rows.map(({ line }) => line));
}

export async function writeLines(tx: Transaction<Tables>, { lines }: Outcome): Promise<void> {
  const rows = (lines?.senders ?? []).flatMap((sender) =>
    (lines?.keys ?? []).slice(0, most).map((line) => ({ sender, line })),
  );
  if (rows.length === 0) return;
  await tx
    .insertInto("lines")
    .values(rows)
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}
