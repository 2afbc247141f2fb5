import { spawnSync } from "node:child_process";
import { chmodSync, copyFileSync, mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { temporaryFolder } from "../make/desk.ts";

const launcher = resolve("src/burin.sh");

/** A checkout with nothing in it but the launcher and a program that says that it runs. */
function checkout(): string {
  const folder = temporaryFolder();
  mkdirSync(join(folder, "src"));
  copyFileSync(launcher, join(folder, "src/burin.sh"));
  writeFileSync(join(folder, "src/main.ts"), "console.log('runs');\n");
  return folder;
}

/** A Node.js that takes itself for another version. */
function nodeOf(version: string, path: string): void {
  mkdirSync(resolve(path, ".."), { recursive: true });
  writeFileSync(
    path,
    `#!/bin/sh\n[ "$1" = --version ] && echo v${version} && exit\nexec "${process.execPath}" "$@"\n`,
  );
  chmodSync(path, 0o755);
}

function start(folder: string, path = "/usr/bin:/bin") {
  const { status, stdout, stderr } = spawnSync(join(folder, "src/burin.sh"), [], {
    env: { PATH: path },
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

const sentence = (folder: string) => ({
  status: 2,
  stdout: "",
  stderr: `burin: Node.js 24 or its packages are missing; “npm ci” in ${folder} brings both, if its install scripts may run.\n`,
});
const runs = { status: 0, stdout: "runs\n", stderr: "" };

test("the Node.js of npm ci is taken, whatever the system's own is", () => {
  const folder = checkout();
  nodeOf("24.0.0", join(folder, "node_modules/.bin/node"));
  nodeOf("20.20.2", join(folder, "bin/node"));
  expect(start(folder, `${join(folder, "bin")}:/usr/bin:/bin`)).toEqual(runs);
});

test("where npm ci brought none, the system's own serves if it is new enough", () => {
  const folder = checkout();
  mkdirSync(join(folder, "node_modules"));
  const path = `${join(folder, "bin")}:/usr/bin:/bin`;
  nodeOf("26.1.0", join(folder, "bin/node"));
  expect(start(folder, path)).toEqual(runs);
  nodeOf("20.20.2", join(folder, "bin/node"));
  expect(start(folder, path)).toEqual(sentence(folder));
});

test("a Node.js that cannot run it, or none, or no packages, is told in one sentence", () => {
  const folder = checkout();
  expect(start(folder)).toEqual(sentence(folder));
  mkdirSync(join(folder, "node_modules"));
  mkdirSync(join(folder, "tools"));
  for (const tool of ["dirname", "readlink"]) symlinkSync(`/usr/bin/${tool}`, join(folder, "tools", tool));
  expect(start(folder, join(folder, "tools"))).toEqual(sentence(folder));
  nodeOf("22.1.0", join(folder, "node_modules/.bin/node"));
  expect(start(folder)).toEqual(sentence(folder));
});

test("it is started from elsewhere, by a link, by somebody who does not own the checkout", (context) => {
  const folder = temporaryFolder();
  symlinkSync(launcher, join(folder, "burin"));
  const other = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
  const mayRead = spawnSync("test", ["-r", launcher], other).status === 0;
  if (!mayRead) context.skip("another user may not read this checkout");
  chmodSync(folder, 0o755);
  const { status, stdout } = spawnSync(join(folder, "burin"), ["--help"], {
    ...other,
    cwd: folder,
    encoding: "utf8",
  });
  expect([status, stdout]).toEqual([0, expect.stringContaining("burin COMMAND --help tells more.")]);
});
