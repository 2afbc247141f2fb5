import { join } from "node:path";
import { expect, test } from "vitest";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryFolder, temporaryStore } from "../make/desk.ts";
import { storeContract } from "./contract.ts";

storeContract(temporaryStore);

test("a record is there when it is opened again", async () => {
  const folder = temporaryFolder();
  const open = () => openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
  const first = await open();
  const { letter } = await first.receive("k", new Uint8Array([1, 2, 3]), new Date(0));
  await first.close();
  const second = await open();
  expect(await second.bytesOf(letter)).toEqual(new Uint8Array([1, 2, 3]));
  await second.close();
});
