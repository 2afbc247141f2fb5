/**
 * How much of the logic the tests hold. Changes one place after another of the files named (a bound, a constant, a
 * negation, one side of an `&&`, a condition that decides on leaving early) and runs the tests each time, until one
 * fails. Prints every change that none noticed, and the share noticed. The file on the disk is left alone, so programs
 * that tests start do not see the change.
 *
 *     npx node tests/bench/mutations.ts src/orders/near.ts… [--tests tests/orders…] [--every N]
 *
 * Without --tests it runs all tests that import the file, however far; --every 3 tries every third change only.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { globSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, resolve } from "node:path";
import { parseArgs } from "node:util";
import { API, type Program } from "typescript/unstable/sync";
import { changesOf } from "../make/changes.ts";

/** What a file reads as while a change in it is tried. */
const changed = new Map<string, string>();

/** Whether a test fails while the file reads so. A change that never ends is noticed too. */
async function isNoticed(path: string, text: string, longest: number): Promise<boolean> {
  const copy = join(folder, "changed.ts");
  writeFileSync(copy, text);
  const runner = join(import.meta.dirname, "../make/run-changed.ts");
  // In a process group of its own, so that its workers end with it.
  const run = spawn(process.execPath, [runner, path, copy, ...(options.tests ?? [])], {
    detached: true,
    stdio: "ignore",
  });
  const timer = setTimeout(() => process.kill(-(run.pid ?? process.pid), "SIGKILL"), longest);
  const [code] = (await once(run, "exit")) as [number | null];
  clearTimeout(timer);
  return code !== 0;
}

const { positionals, values: options } = parseArgs({
  allowPositionals: true,
  options: { tests: { type: "string", multiple: true }, every: { type: "string", default: "1" } },
});
const folder = mkdtempSync(join(tmpdir(), "changed-"));
const files = positionals.flatMap((path) =>
  statSync(path).isDirectory() ? globSync(`${path}/**/*.ts`) : [path],
);
const api = new API({ cwd: process.cwd(), fs: { readFile: (path) => changed.get(path) } });

/** The program as it reads with the change that is being tried. */
function programWith(path?: string): Program {
  const [project] = api
    .updateSnapshot({
      openProjects: [resolve("tsconfig.json")],
      fileChanges: { changed: path === undefined ? [] : [path] },
    })
    .getProjects();
  if (project === undefined) throw new Error("tsconfig.json is no project");
  return project.program;
}

/** TypeScript's complaints of names that a change leaves unused. */
const unused = new Set([6133, 6192, 6196, 6198]);

const total = { tried: 0, noticed: 0 };
const program = programWith();
for (const path of files.map((file) => resolve(file))) {
  const file = program.getSourceFile(path);
  if (file === undefined) throw new Error(`${path} is no file of the project`);
  const began = Date.now();
  if (await isNoticed(path, file.text, 3_600_000))
    throw new Error(`${path}: a test fails before anything is changed`);
  const longest = 30_000 + 3 * (Date.now() - began);
  const own = { tried: 0, noticed: 0 };
  for (const [i, { from, to, text }] of changesOf(file).entries()) {
    if (i % Number(options.every) !== 0) continue;
    const whole = file.text.slice(0, from) + text + file.text.slice(to);
    changed.set(path, whole);
    // What does not compile needs no test.
    const faults = programWith(path).getSemanticDiagnostics(path);
    if (faults.some(({ code }) => !unused.has(code))) continue;
    own.tried++;
    if (await isNoticed(path, whole, longest)) own.noticed++;
    else {
      const line = file.text.slice(0, from).split("\n").length;
      const [was, is] = [file.text.slice(from, to), text].map((one) => one.replaceAll(/\s+/g, " "));
      console.log(`${relative(".", path)}:${line}  ${was}  →  ${is || "left out"}`);
    }
  }
  changed.delete(path);
  programWith(path);
  console.log(`${relative(".", path)}: ${own.noticed} of ${own.tried} noticed`);
  total.tried += own.tried;
  total.noticed += own.noticed;
}
console.log(`${total.noticed} of ${total.tried} changes noticed`);
rmSync(folder, { recursive: true });
api.close();
