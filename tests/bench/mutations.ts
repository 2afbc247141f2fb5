/**
 * How much of the logic the tests hold. Changes one place after another of the files named (a bound, a constant, a
 * negation, one side of an `&&`, a condition that decides on leaving early) and runs the tests each time, until one
 * fails. Prints every change that none noticed, and the share noticed. No file on the disk is touched, so programs that
 * tests start do not see the change.
 *
 *     npx node tests/bench/mutations.ts src/orders/near.ts… [--tests tests/orders…] [--every N]
 *
 * Without --tests it runs all tests that import the file, however far; --every 3 tries every third change only.
 */
import { globSync, statSync } from "node:fs";
import { relative, resolve } from "node:path";
import { setTimeout } from "node:timers/promises";
import { parseArgs } from "node:util";
import { API, type Program } from "typescript/unstable/sync";
import { createVitest, type TestSpecification, type Vitest } from "vitest/node";
import { changesOf } from "../make/changes.ts";

/** What a file reads as while a change in it is tried. */
const changed = new Map<string, string>();

function openVitest(): Promise<Vitest> {
  const set = { config: "tests/vitest.config.ts", root: ".", watch: false, bail: 1, reporters: [] };
  return createVitest(
    "test",
    // A cache on the disk would keep the changes; and what never ends shall not take the machine's memory.
    { ...set, fsModuleCache: false, isolate: false, execArgv: ["--max-old-space-size=1024"] },
    { plugins: [{ name: "mutations", enforce: "pre", load: (id) => changed.get(id) }] },
  );
}

/** Whether a test fails. A change that never ends is noticed too, and the runner that is lost with it opened again. */
async function isNoticed(path: string, longest: number): Promise<boolean> {
  const ends = new AbortController();
  const late = setTimeout(longest, undefined, { signal: ends.signal }).catch(() => undefined);
  const run = await Promise.race([vitest.rerunTestSpecifications(await testsOf(path)), late]);
  ends.abort();
  if (run !== undefined)
    return run.testModules.some((module) => !module.ok()) || run.unhandledErrors.length > 0;
  await vitest.close();
  vitest = await openVitest();
  return true;
}

async function testsOf(file: string): Promise<TestSpecification[]> {
  const all = await vitest.globTestSpecifications(options.tests);
  if (options.tests !== undefined) return all;
  vitest.config.related = [file];
  return vitest.getRelevantTestSpecifications();
}

const { positionals, values: options } = parseArgs({
  allowPositionals: true,
  options: { tests: { type: "string", multiple: true }, every: { type: "string", default: "1" } },
});
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

let vitest = await openVitest();
const total = { tried: 0, noticed: 0 };
const program = programWith();
for (const path of files.map((file) => resolve(file))) {
  const file = program.getSourceFile(path);
  if (file === undefined) throw new Error(`${path} is no file of the project`);
  const began = Date.now();
  if (await isNoticed(path, 3_600_000)) throw new Error(`${path}: a test fails before anything is changed`);
  const longest = 30_000 + 3 * (Date.now() - began);
  const own = { tried: 0, noticed: 0 };
  for (const [i, { from, to, text }] of changesOf(file).entries()) {
    if (i % Number(options.every) !== 0) continue;
    changed.set(path, file.text.slice(0, from) + text + file.text.slice(to));
    // What does not compile needs no test.
    const faults = programWith(path).getSemanticDiagnostics(path);
    if (faults.some(({ code }) => !unused.has(code))) continue;
    vitest.invalidateFile(path);
    own.tried++;
    if (await isNoticed(path, longest)) own.noticed++;
    else {
      const line = file.text.slice(0, from).split("\n").length;
      const [was, is] = [file.text.slice(from, to), text].map((one) => one.replaceAll(/\s+/g, " "));
      console.log(`${relative(".", path)}:${line}  ${was}  →  ${is || "left out"}`);
    }
  }
  changed.delete(path);
  vitest.invalidateFile(path);
  programWith(path);
  console.log(`${relative(".", path)}: ${own.noticed} of ${own.tried} noticed`);
  total.tried += own.tried;
  total.noticed += own.noticed;
}
console.log(`${total.noticed} of ${total.tried} changes noticed`);
await vitest.close();
api.close();
