import type { Mark } from "../ports/mailbox.ts";
import type { View } from "./imap-line.ts";

/** Letters not seen yet, by UID in rising order. That is the order in which they arrived. */
export interface Found {
  readonly uids: readonly number[];
  /** How far the folder is known once these are handled. */
  readonly upTo: number;
}

export interface Listed {
  readonly uid: number;
  readonly size: number;
  readonly receivedAt: Date;
}

/**
 * The letters after `mark`. Without a mark, or with one of another UIDVALIDITY, they are all that arrived on or after
 * the day of `from`. The cost depends on what is new, not on what is there.
 */
export async function scan({ client, validity }: View, mark: Mark | undefined, from: Date): Promise<Found> {
  if (mark?.validity === validity) {
    const found = await client.search({ uid: `${mark.uid + 1}:*` }, { uid: true });
    // RFC 9051 §9: `*` is the last letter even if it lies before the first number of the range.
    const uids = numbers(found).filter((uid) => uid > mark.uid);
    return { uids, upTo: uids.at(-1) ?? mark.uid };
  }
  // The last letter is asked for first. A letter that arrives meanwhile is found by this search or by the next.
  const last = await client.fetchOne("*", { uid: true });
  const uids = numbers(await client.search({ since: from }, { uid: true }));
  return { uids, upTo: Math.max(last === false ? 0 : last.uid, uids.at(-1) ?? 0) };
}

/**
 * Size and arrival of these letters. A letter that the server says nothing about is listed too: it may be gone, which
 * shows when its bytes are asked for. A letter left out here would never be seen again.
 */
export async function list({ client }: View, uids: readonly number[]): Promise<readonly Listed[]> {
  // All are fetched before the next command. A command during a running FETCH would wait for ever.
  const rows = await client.fetchAll(
    uids.join(","),
    { uid: true, size: true, internalDate: true },
    { uid: true },
  );
  const described = new Map(rows.map((row) => [row.uid, row]));
  return uids.map((uid) => {
    const { size, internalDate } = described.get(uid) ?? {};
    return { uid, size: size ?? 0, receivedAt: new Date(internalDate ?? 0) };
  });
}

function numbers(found: number[] | false | undefined): readonly number[] {
  if (!Array.isArray(found)) throw new Error("the server refused to search the folder");
  return found;
}
