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
 * Marks the letter and moves it to `folder`, if one is given. Nothing happens to a letter that is gone, and a
 * server that keeps no keywords or cannot move one letter alone leaves it as it is.
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
  // the library leaves out a keyword that the folder does not take
  if (!flags.has(keywords[shelf])) await client.messageFlagsAdd(range, [keywords[shelf]], { uid: true });
  if (folder === undefined) return;
  if (!canMoveOne(client) || !(await moved(client, range, folder)))
    log.warn({ shelf }, "a letter could not be moved to its folder; it stays where it is");
}

/**
 * Without MOVE (RFC 6851) a letter is copied, marked deleted and expunged, and only UIDPLUS (RFC 4315) can
 * expunge this letter and none that somebody else has marked deleted. IMAP4rev2 has both.
 */
function canMoveOne({ capabilities }: ImapFlow): boolean {
  return ["MOVE", "UIDPLUS", "IMAP4rev2"].some((name) => capabilities.has(name));
}

async function moved(client: ImapFlow, range: string, folder: string): Promise<boolean> {
  if ((await client.messageMove(range, folder, { uid: true })) !== false) return true;
  // most likely the folder is not there yet
  await client.mailboxCreate(folder).catch(() => undefined);
  return (await client.messageMove(range, folder, { uid: true })) !== false;
}
