import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { temporaryFolder } from "../make/desk.ts";

/** Has a command run whose user keeps caches there. */
function runWith(caches: string): void {
  const env = { ...process.env, XDG_CACHE_HOME: caches };
  const { status } = spawnSync(process.execPath, ["src/main.ts", "explain"], { env });
  expect(status).toBe(0);
}

test("what Node.js has compiled is kept in a folder that is the user's alone", () => {
  const caches = temporaryFolder();
  runWith(caches);
  const folder = join(caches, "burin");
  expect(statSync(folder).mode & 0o777).toBe(0o700);
  expect(readdirSync(folder)).toHaveLength(1);
});

test.each([0o777, 0o750, 0o701])("nothing is kept in a folder with the rights %o", (mode) => {
  const caches = temporaryFolder();
  const folder = join(caches, "burin");
  mkdirSync(folder);
  chmodSync(folder, mode);
  runWith(caches);
  expect(readdirSync(folder)).toEqual([]);
});

test("a cache that cannot be had stops nothing", () => {
  runWith("/proc/none");
});
