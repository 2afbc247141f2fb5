import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { release } from "../../src/commands/release.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryDesk } from "../make/desk.ts";
import { settingsFile } from "../make/settings-file.ts";
import { post } from "../make/thread.ts";

async function run(...args: readonly string[]): Promise<string> {
  const told: string[] = [];
  const tell = (text: string) => told.push(text);
  const code = await release.run(args, { out: tell, err: tell, progress: () => undefined });
  return `${code}: ${told.join("\n")}`;
}

test("an order whose package is not written, since it is there, is told to be released", async () => {
  const { folder, file } = settingsFile();
  const record = join(folder, "record");
  mkdirSync(record);
  const store = await openStore(openSqlite(join(record, "record.sqlite")), openBlobs(join(record, "blobs")));
  await post(await temporaryDesk({ store }), {
    sheets: [{ mark: "P-1", legend: ["READING"], fill: { order: "FM-80" } }],
  });
  await store.close();
  const again = ["FM-80", "--by", "Ada", "--out", join(folder, "released"), "--settings", file] as const;
  const [code, path] = (await run(...again)).split(": ");
  expect(code).toBe("0");
  expect(await run(...again)).toBe(
    `1: Order FM-80 is released; its package was not written:\n  ${path} is there already`,
  );
});
