import { createHash, randomUUID } from "node:crypto";
import { mkdir, open, readdir, readFile, rename, rm, stat, statfs } from "node:fs/promises";
import { dirname, join } from "node:path";

/** Bytes kept under their own SHA-256; the same bytes are kept once. */
export interface Blobs {
  readonly put: (bytes: Uint8Array) => Promise<string>;
  /** Throws when there are none of that hash. */
  readonly get: (sha: string) => Promise<Uint8Array>;
  /** Deletes the bytes of that hash, and what a death has left of them half written. */
  readonly remove: (sha: string) => Promise<void>;
  /** Bytes that the disk still takes. */
  readonly room: () => Promise<number>;
}

export function openBlobs(folder: string): Blobs {
  const pathOf = (sha: string): string => join(folder, sha.slice(0, 2), sha);
  return {
    async put(bytes) {
      const sha = createHash("sha256").update(bytes).digest("hex");
      const path = pathOf(sha);
      if (await stat(path).catch(() => undefined)) return sha;
      await mkdir(dirname(path), { recursive: true });
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
      return sha;
    },
    get: async (sha) => new Uint8Array(await readFile(pathOf(sha))),
    async remove(sha) {
      const beside = dirname(pathOf(sha));
      const names = await readdir(beside).catch(() => []);
      for (const name of names) if (name.startsWith(sha)) await rm(join(beside, name), { force: true });
    },
    async room() {
      await mkdir(folder, { recursive: true });
      const { bavail, bsize } = await statfs(folder);
      return bavail * bsize;
    },
  };
}
