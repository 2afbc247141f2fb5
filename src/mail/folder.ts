import { mkdir, readdir, readFile, rename, stat, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { simpleParser } from "mailparser";
import type { Mail, Mailbox } from "../ports/mailbox.ts";
import type { Sender } from "../ports/sender.ts";

/** How often a folder is looked at, in milliseconds. */
const pollEvery = 2000;

/** A folder of .eml files as a mailbox. A file's time of change is when the letter was received. */
export function folderMailbox(folder: string): Mailbox {
  return {
    name: folder,
    async *letters({ once, signal, looked }) {
      const seen = new Set<string>();
      for (;;) {
        for (const mail of await lettersIn(folder)) {
          if (signal.aborted) return;
          const key = `${mail.name} ${mail.receivedAt.getTime()}`;
          if (!seen.has(key)) yield mail;
          seen.add(key);
        }
        looked?.();
        if (once) return;
        await wait(pollEvery, undefined, { signal }).catch(() => undefined);
        if (signal.aborted) return;
      }
    },
    close: () => Promise.resolve(),
  };
}

async function lettersIn(folder: string): Promise<Mail[]> {
  const names = (await readdir(folder)).filter((name) => name.toLowerCase().endsWith(".eml"));
  const found = await Promise.all(
    names.map(async (name): Promise<Mail> => {
      const path = join(folder, name);
      const { mtime, size } = await stat(path);
      return {
        name,
        size,
        receivedAt: mtime,
        bytes: async () => new Uint8Array(await readFile(path)),
        shelve: () => Promise.resolve(), // the folder belongs to whoever fills it
      };
    }),
  );
  return found.toSorted(
    (a, b) => a.receivedAt.getTime() - b.receivedAt.getTime() || a.name.localeCompare(b.name),
  );
}

/** Puts answers into a folder, each under its Message-ID. */
export function folderSender(folder: string): Sender {
  const pathOf = (messageId: string): string => join(folder, messageId.replaceAll(/[^A-Za-z0-9.-]/g, ""));
  return {
    async send({ messageId, bytes }) {
      await mkdir(folder, { recursive: true });
      await putAnswer(pathOf(messageId), bytes);
      return { kind: "sent", words: `${pathOf(messageId)}.eml` };
    },
    find: async (messageId) => (await stat(`${pathOf(messageId)}.eml`).catch(() => undefined)) !== undefined,
  };
}

/**
 * Puts an answer where it is told: the letter as .eml, its page as .html for a browser, its enclosures in a folder of
 * their own.
 */
export async function putAnswer(path: string, bytes: Uint8Array): Promise<void> {
  const { html, attachments } = await simpleParser(Buffer.from(bytes));
  if (typeof html === "string") await writeFile(`${path}.html`, html);
  if (attachments.length > 0) await mkdir(path, { recursive: true });
  for (const { filename, content } of attachments)
    await writeFile(join(path, basename(filename ?? "unnamed")), content);
  // The rename comes last, so that an .eml in this folder is always a whole answer.
  await writeFile(`${path}.part`, bytes);
  await rename(`${path}.part`, `${path}.eml`);
}
