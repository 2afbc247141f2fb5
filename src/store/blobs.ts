import { createHash, randomUUID } from "node:crypto";
import { existsSync, readdirSync, rmSync } from "node:fs";
import { mkdir, open, readFile, rename, stat, statfs } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Kysely } from "kysely";
import { makeDurable } from "./durable.ts";
import type { Tables } from "./tables.ts";

/** Bytes kept under their own SHA-256; the same bytes are kept once. */
export interface Blobs {
  readonly put: (bytes: Uint8Array) => Promise<string>;
  /** Throws when there are none of that hash. */
  readonly get: (sha: string) => Promise<Uint8Array>;
  /** Whether there are bytes of that hash, as a transaction sees it. */
  readonly has: (sha: string, tx: Kysely<Tables>) => Promise<boolean>;
  /** Deletes the bytes of that hash, within a transaction, and what a death has left of them half written. */
  readonly remove: (sha: string, tx: Kysely<Tables>) => Promise<void>;
  /** Bytes that the disk still takes. */
  readonly room: () => Promise<number>;
}

/** The name of bytes. */
export function shaOf(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/** Bytes as files of a folder. */
export function openBlobs(folder: string): Blobs {
  const pathOf = (sha: string): string => join(folder, sha.slice(0, 2), sha);
  return {
    async put(bytes) {
      const sha = shaOf(bytes);
      const path = pathOf(sha);
      if (await stat(path).catch(() => undefined)) return sha;
      const isNew = await mkdir(dirname(path), { recursive: true });
      // Written under another name, made durable, then renamed. A file under its own name is always whole.
      const beside = `${path}.${randomUUID()}.part`;
      const file = await open(beside, "w");
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(beside, path);
      await makeDurable(dirname(path));
      if (isNew !== undefined) await makeDurable(folder);
      return sha;
    },
    get: async (sha) => new Uint8Array(await readFile(pathOf(sha))),
    has: (sha) => Promise.resolve(existsSync(pathOf(sha))),
    // At once: in one program a second connection that waits for the transaction would stop the first.
    async remove(sha) {
      const beside = dirname(pathOf(sha));
      const names = existsSync(beside) ? readdirSync(beside) : [];
      for (const name of names) if (name.startsWith(sha)) rmSync(join(beside, name), { force: true });
    },
    async room() {
      await mkdir(folder, { recursive: true });
      const { bavail, bsize } = await statfs(folder);
      return bavail * bsize;
    },
  };
}
