import { openImap } from "./imap-connection.ts";
import type { Server } from "./server.ts";

/** A folder in which copies of our answers lie. */
export interface CopyFolder {
  readonly mailbox: Server;
  readonly folder: string;
}

/** Whether a letter with this Message-ID lies there. Rejects when that cannot be seen. */
export async function holdsLetter({ mailbox, folder }: CopyFolder, messageId: string): Promise<boolean> {
  const client = await openImap(mailbox);
  try {
    await client.mailboxOpen(folder, { readOnly: true });
    const found = await client.search({ header: { "Message-ID": messageId } }, { uid: true });
    if (!Array.isArray(found)) throw new Error("the server refused to search the folder");
    return found.length > 0;
  } finally {
    client.close();
  }
}

/** Puts a copy there, marked as read. */
export async function appendLetter({ mailbox, folder }: CopyFolder, bytes: Uint8Array): Promise<void> {
  const client = await openImap(mailbox);
  try {
    await client.append(folder, Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), ["\\Seen"]);
  } finally {
    client.close();
  }
}
