import { randomUUID } from "node:crypto";
import { mkdir, open, readdir, rename, rm, stat } from "node:fs/promises";
import { dirname, isAbsolute, join, sep } from "node:path";
import type { Put } from "../intake/release.ts";
import { plainText } from "../orders/keys.ts";
import type { PackageFile } from "../release/release.ts";
import { makeDurable } from "./durable.ts";

type Files = Iterable<Pick<PackageFile, "path" | "bytes">>;

/** Thrown when something of that name is there already. It stays as it is. */
export class PackageThere extends Error {}

/**
 * Writes a package into a folder, as a folder of its own: whole and durable, or not at all. It is written under a hidden
 * name and then renamed, so a death on the way leaves nothing of its name. Gives where it is.
 */
export async function writePackage(folder: string, name: string, files: Files): Promise<string> {
  const target = within(folder, name);
  await refuseIfThere(target);
  const beside = await writtenBeside(folder, files);
  try {
    await refuseIfThere(target);
    await renameTo(beside, target);
  } catch (cause) {
    await rm(beside, { recursive: true, force: true });
    throw cause;
  }
  await makeDurable(folder);
  return target;
}

/** Writes packages into a folder, or tries whether that can be done. */
export function packagesIn(folder: string): Put {
  return Object.assign((name: string, files: Files) => writePackage(folder, name, files), {
    try: async (files: Files) => rm(await writtenBeside(folder, files), { recursive: true }),
  });
}

/** Writes the files of a package under a hidden name, and gives where they are. */
async function writtenBeside(folder: string, files: Files): Promise<string> {
  await mkdir(folder, { recursive: true });
  await removeLeft(folder);
  const beside = join(folder, `.${randomUUID()}.part`);
  try {
    const folders = new Set([beside]);
    for (const { path, bytes } of files) {
      const file = within(beside, path);
      await mkdir(dirname(file), { recursive: true });
      folders.add(dirname(file));
      await writeDurably(file, bytes);
    }
    for (const one of folders) await makeDurable(one);
    return beside;
  } catch (cause) {
    await rm(beside, { recursive: true, force: true });
    throw cause;
  }
}

/** Deletes a package, whichever capitals and blanks its name has; whether it was there. */
export async function removePackage(folder: string, name: string): Promise<boolean> {
  const names = (await readdir(folder).catch(() => [])).filter((one) => plainText(one) === plainText(name));
  for (const one of names) await rm(within(folder, one), { recursive: true, force: true });
  return names.length > 0;
}

/** After so long nobody writes at a package any more, in milliseconds. */
const longest = 86_400_000;

/** Removes what a death on the way has left. */
async function removeLeft(folder: string): Promise<void> {
  const left = (await readdir(folder)).filter((name) => /^\.[0-9a-f-]{36}\.part$/.test(name));
  for (const name of left) {
    const path = join(folder, name);
    const { mtimeMs = Number.POSITIVE_INFINITY } = (await stat(path).catch(() => undefined)) ?? {};
    if (mtimeMs < Date.now() - longest) await rm(path, { recursive: true, force: true });
  }
}

/** A path in a folder. Throws for one that leads out of it. */
function within(folder: string, path: string): string {
  const inside = join(folder, path);
  if (isAbsolute(path) || !inside.startsWith(join(folder, sep)))
    throw new Error(`${path} leads out of ${folder}`);
  return inside;
}

async function refuseIfThere(target: string): Promise<void> {
  if (await stat(target).catch(() => undefined)) throw new PackageThere(`${target} is there already`);
}

/** POSIX rename(): a folder that has something in it is never replaced. */
async function renameTo(beside: string, target: string): Promise<void> {
  try {
    await rename(beside, target);
  } catch (cause) {
    await refuseIfThere(target);
    throw cause;
  }
}

async function writeDurably(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, "wx");
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}
