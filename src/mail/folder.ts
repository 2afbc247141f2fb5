import { mkdir, readdir, readFile, rename, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { simpleParser } from "mailparser";
import type { Mailbox } from "../ports/mailbox.ts";
import type { Sender } from "../ports/sender.ts";

/** A folder of .eml files as a mailbox; a file's time of change is when it was received. */
export function folderMailbox(folder: string): Mailbox {
  return {
    async *letters() {
      const names = (await readdir(folder)).filter((name) => name.toLowerCase().endsWith(".eml"));
      const found = await Promise.all(
        names.map(async (name) => ({ name, receivedAt: (await stat(join(folder, name))).mtime })),
      );
      found.sort((a, b) => a.receivedAt.getTime() - b.receivedAt.getTime() || a.name.localeCompare(b.name));
      for (const { name, receivedAt } of found)
        yield { name, receivedAt, bytes: new Uint8Array(await readFile(join(folder, name))) };
    },
  };
}

/** Where an answer lies in its folder, without the ending. */
export function answerPath(folder: string, messageId: string): string {
  return join(folder, messageId.replaceAll(/[^A-Za-z0-9.-]/g, ""));
}

/** Puts answers into a folder: the letter as .eml, and its page as .html for a browser. */
export function folderSender(folder: string): Sender {
  return {
    async send({ messageId, bytes }) {
      await mkdir(folder, { recursive: true });
      const path = answerPath(folder, messageId);
      const { html } = await simpleParser(Buffer.from(bytes));
      if (typeof html === "string") await writeFile(`${path}.html`, html);
      // Renamed last: an .eml in this folder is a whole answer.
      await writeFile(`${path}.part`, bytes);
      await rename(`${path}.part`, `${path}.eml`);
      return { kind: "sent", words: `${path}.eml` };
    },
    find: async (messageId) =>
      (await stat(`${answerPath(folder, messageId)}.eml`).catch(() => undefined)) !== undefined,
  };
}
