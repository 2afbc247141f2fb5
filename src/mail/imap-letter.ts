import { createWriteStream } from "node:fs";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import type { ImapFlow } from "imapflow";

/** Letters up to this size are asked for whole. Larger ones come in pieces of this size. In bytes. */
const pieceSize = 1024 * 1024;

/**
 * Milliseconds that a letter of so many bytes may take: two minutes, and more for what 10 kB a second do not bring in
 * that time.
 */
export function transferLimit(size: number): number {
  return 120_000 + size / 10;
}

/** The letter's bytes; undefined when it is gone. `size` is what the mailbox says, which is only a hint. */
export async function fetchLetter(
  client: ImapFlow,
  uid: number,
  size: number,
): Promise<Uint8Array | undefined> {
  let failure: unknown;
  try {
    const bytes = size <= pieceSize ? await whole(client, uid) : await throughDisk(client, uid);
    if (bytes !== undefined) return bytes;
  } catch (error) {
    if (!client.usable) throw error;
    failure = error;
  }
  // An empty answer alone does not count: a letter that is taken for gone is never asked for again.
  if (!(await lies(client, uid))) return undefined;
  throw failure ?? new Error("the server lists a letter and does not give it");
}

async function whole(client: ImapFlow, uid: number): Promise<Uint8Array | undefined> {
  const found = await client.fetchOne(String(uid), { source: true }, { uid: true });
  return found === false ? undefined : found.source;
}

/** Gathers a big letter on disk and reads it in one piece, so that memory holds one copy of it. */
async function throughDisk(client: ImapFlow, uid: number): Promise<Uint8Array | undefined> {
  const { content } = await client.download(String(uid), undefined, { uid: true, chunkSize: pieceSize });
  if (content === undefined) return undefined;
  const folder = await mkdtemp(join(tmpdir(), "burin-letter-"));
  try {
    const path = join(folder, "letter.eml");
    await pipeline(content, createWriteStream(path));
    return await readFile(path);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function lies(client: ImapFlow, uid: number): Promise<boolean> {
  // The server tells what others have removed only when it is spoken to.
  await client.noop();
  const found = await client.search({ uid: String(uid) }, { uid: true });
  return !Array.isArray(found) || found.includes(uid);
}
