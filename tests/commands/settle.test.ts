import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { settle } from "../../src/commands/settle.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { post } from "../make/thread.ts";

/** A folder with settings, and its record. */
async function configured() {
  const folder = temporaryFolder();
  cpSync("fixtures/trade", folder, { recursive: true });
  cpSync("config/glossary.txt", join(folder, "glossary.txt"));
  const file = join(folder, "burin.yaml");
  writeFileSync(file, readFileSync("config/burin.yaml", "utf8").replaceAll("../out/", ""));
  const record = join(folder, "record");
  mkdirSync(record);
  const store = await openStore(openSqlite(join(record, "record.sqlite")), openBlobs(join(record, "blobs")));
  return { file, store };
}

async function run(...args: readonly string[]): Promise<string> {
  const told: string[] = [];
  const tell = (text: string) => told.push(text);
  const code = await settle.run(args, { out: tell, err: tell, progress: () => undefined });
  return `${code}: ${told.join("\n")}`;
}

test("a YES over somebody's NO needs a word of its own, and says so", async () => {
  const { file, store } = await configured();
  const desk = await temporaryDesk({ store });
  const sheets = [{ mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } }];
  const asked = await post(desk, { sheets });
  const { letter } = await post(desk, { to: asked, text: "1 NO" });
  await store.close();
  const yes = (...more: string[]) =>
    run("FM-80", "1", "--yes", ...more, "--by", "Ada", "--why", "a name", "--settings", file);
  expect(await yes()).toBe(
    `1: Nothing is settled: letter ${letter} has answered 1 with NO. If it is meant so all the same, add --despite-no.`,
  );
  expect(await yes("--despite-no")).toMatch(
    new RegExp(
      `^0: Order FM-80: pass\\..* That is despite a NO: letter ${letter} has answered 1 with NO\\.$`,
    ),
  );
});
