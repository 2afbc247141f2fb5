import type { ImapFlow } from "imapflow";
import type { Log } from "../ports/log.ts";
import type { Shelf } from "../ports/mailbox.ts";

/** What people see at the letter in their own mail program. RFC 5788 leaves names without `$` to everybody. */
export const keywords = {
  passed: "BurinPassed",
  "to-correct": "BurinToCorrect",
  waiting: "BurinWaiting",
  person: "BurinPerson",
  silent: "BurinSilent",
} as const satisfies Record<Shelf, string>;

/**
 * Marks the letter, and moves it to `folder` if one is given. Nothing happens to a letter that is gone. A server
 * without keywords leaves it unmarked. A server that cannot move one letter alone leaves it where it is.
 */
export async function shelveLetter(
  client: ImapFlow,
  uid: number,
  shelf: Shelf,
  folder: string | undefined,
  log: Log,
): Promise<void> {
  const range = String(uid);
  const letter = await client.fetchOne(range, { flags: true }, { uid: true });
  if (letter === false) return;
  const flags = letter.flags ?? new Set<string>();
  const outdated = Object.values(keywords).filter((word) => word !== keywords[shelf] && flags.has(word));
  if (outdated.length > 0) await client.messageFlagsRemove(range, outdated, { uid: true });
  // The library leaves out a keyword that the folder does not take.
  if (!flags.has(keywords[shelf])) await client.messageFlagsAdd(range, [keywords[shelf]], { uid: true });
  if (folder === undefined) return;
  if (!canMoveOne(client) || !(await moved(client, range, folder)))
    log.warn({ shelf }, "a letter could not be moved to its folder; it stays where it is");
}

/**
 * Whether the server can move one letter alone. Without MOVE (RFC 6851) a letter is copied, marked deleted and
 * expunged. Only UIDPLUS (RFC 4315) can then expunge this letter and spare those that somebody else marked deleted.
 * IMAP4rev2 has both.
 */
function canMoveOne({ capabilities }: ImapFlow): boolean {
  return ["MOVE", "UIDPLUS", "IMAP4rev2"].some((name) => capabilities.has(name));
}

async function moved(client: ImapFlow, range: string, folder: string): Promise<boolean> {
  if ((await client.messageMove(range, folder, { uid: true })) !== false) return true;
  // The folder is probably missing.
  await client.mailboxCreate(folder).catch(() => undefined);
  return (await client.messageMove(range, folder, { uid: true })) !== false;
}
