import { mkdir, readdir, readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { AwsClient } from "aws4fetch";
import { expect, test } from "vitest";
import { openBlobs } from "../../src/store/blobs.ts";
import { openS3Blobs } from "../../src/store/s3-blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { temporaryFolder } from "../make/desk.ts";
import { s3Server } from "../make/s3.ts";

// SHA-256 of "abc": FIPS 180-2, appendix B.1; the source is named from memory.
const abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
const bytes = new TextEncoder().encode("abc");
/** Nothing of these places is in a database. */
const db = openSqlite(":memory:");

test("bytes stand under their SHA-256, in a folder of its first two characters", async () => {
  const folder = temporaryFolder();
  const blobs = openBlobs(join(folder, "blobs"));
  const path = join(folder, "blobs", "ba", abc);
  expect(await blobs.put(bytes)).toBe(abc);
  const { ino } = await stat(path);
  expect(await blobs.put(bytes)).toBe(abc);
  expect([(await stat(path)).ino, await readdir(join(folder, "blobs", "ba"))]).toEqual([ino, [abc]]);
  expect(await readFile(path, "utf8")).toBe("abc");
  expect(await blobs.get(abc)).toEqual(bytes);
});

test("bytes of a record that was made before are found", async () => {
  const folder = temporaryFolder();
  await mkdir(join(folder, "ba"));
  await writeFile(join(folder, "ba", abc), bytes);
  expect(await openBlobs(folder).get(abc)).toEqual(bytes);
  await expect(openBlobs(folder).get(abc.replace("ba", "bb"))).rejects.toThrow();
});

test("with bytes goes what a death has left of them, and nothing of others in their folder", async () => {
  const folder = temporaryFolder();
  const blobs = openBlobs(folder);
  await blobs.put(bytes);
  const other = abc.replace("ba78", "ba79");
  for (const name of [`${abc}.0001.part`, other, `${other}.0001.part`])
    await writeFile(join(folder, "ba", name), "");
  await blobs.remove(abc, db);
  expect((await readdir(join(folder, "ba"))).toSorted()).toEqual([other, `${other}.0001.part`]);
});

test("on an S3 server bytes stand under the first two characters of their name, however the address ends", async () => {
  const place = await s3Server();
  await openS3Blobs({ ...place, address: `${place.address}//` }).put(bytes);
  const { address, region, accessKey: accessKeyId, secretKey: secretAccessKey } = place;
  const client = new AwsClient({ service: "s3", region, accessKeyId, secretAccessKey });
  expect(await (await client.fetch(`${address}/ba/${abc}`)).text()).toBe("abc");
});

const places = {
  "a folder": async () => openBlobs(join(temporaryFolder(), "blobs")),
  "an S3 server": async () => openS3Blobs(await s3Server()),
};

test.each(Object.entries(places))(
  "bytes come back from %s as they went in, until they are removed",
  async (_, open) => {
    const blobs = await open();
    await blobs.remove(abc, db);
    expect(await blobs.has(abc, db)).toBe(false);
    await expect(blobs.get(abc)).rejects.toThrow();
    expect(await Promise.all([blobs.put(bytes), blobs.put(bytes)])).toEqual([abc, abc]);
    expect(await blobs.put(bytes)).toBe(abc);
    expect(await blobs.has(abc, db)).toBe(true);
    expect(await blobs.get(abc)).toEqual(bytes);
    const large = new Uint8Array(3_000_000).map((_, i) => i * 7);
    const empty = new Uint8Array();
    expect(await blobs.get(await blobs.put(large))).toEqual(large);
    expect(await blobs.get(await blobs.put(empty))).toEqual(empty);
    await blobs.remove(abc, db);
    await blobs.remove(abc, db);
    expect(await blobs.has(abc, db)).toBe(false);
    expect(await blobs.room()).toBeGreaterThan(1_000_000);
  },
);

test("a store of bytes that refuses, or has no such bucket, says so, and without its key", async () => {
  const place = await s3Server();
  const wrong = openS3Blobs({ ...place, secretKey: "not-the-key" });
  await expect(wrong.put(bytes)).rejects.toThrow("says 403 no code");
  await expect(wrong.get(abc)).rejects.toThrow("says 403 SignatureDoesNotMatch");
  await expect(wrong.get(abc)).rejects.not.toThrow(/not-the-key|S3RVER/);
  const nowhere = openS3Blobs({ ...place, address: place.address.replace("burin", "elsewhere") });
  await expect(nowhere.put(bytes)).rejects.toThrow("no such bucket");
});
