import type { Kysely } from "kysely";
import type { Blobs } from "./blobs.ts";
import type { Tables } from "./tables.ts";

/** Thrown within a transaction: an erasing has deleted bytes since they were put. */
class BytesGone extends Error {}

/** Puts bytes, then writes the rows that name them; both once more where an erasing came in between. */
export async function bytesFirst<Shas, T>(
  put: () => Promise<Shas>,
  write: (shas: Shas) => Promise<T>,
): Promise<T> {
  for (;;) {
    try {
      return await write(await put());
    } catch (cause) {
      if (!(cause instanceof BytesGone)) throw cause;
    }
  }
}

/** Makes sure that bytes are there. A transaction asks after its first change, since nobody erases from then on. */
export async function stillThere(
  tx: Kysely<Tables>,
  { has }: Pick<Blobs, "has">,
  shas: Iterable<string>,
): Promise<void> {
  for (const sha of shas) if (!(await has(sha, tx))) throw new BytesGone(`the bytes ${sha} are erased`);
}
