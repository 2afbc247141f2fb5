import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { openBlobs } from "../../src/store/blobs.ts";
import { temporaryFolder } from "../make/desk.ts";

// SHA-256 of "abc": FIPS 180-2, appendix B.1; the source is named from memory.
const abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
const bytes = new TextEncoder().encode("abc");

test("bytes stand under their SHA-256, in a folder of its first two characters", async () => {
  const folder = temporaryFolder();
  const blobs = openBlobs(join(folder, "blobs"));
  expect(await blobs.put(bytes)).toBe(abc);
  expect(await blobs.put(bytes)).toBe(abc);
  expect(await readdir(join(folder, "blobs", "ba"))).toEqual([abc]);
  expect(await readFile(join(folder, "blobs", "ba", abc), "utf8")).toBe("abc");
  expect(await blobs.get(abc)).toEqual(bytes);
});

test("bytes of a record that was made before are found", async () => {
  const folder = temporaryFolder();
  await mkdir(join(folder, "ba"));
  await writeFile(join(folder, "ba", abc), bytes);
  expect(await openBlobs(folder).get(abc)).toEqual(bytes);
  await expect(openBlobs(folder).get(abc.replace("ba", "bb"))).rejects.toThrow();
});
