/**
 * How much of the logic the tests hold. Changes one place after another of the files named (a bound, a constant, a
 * negation, one side of an `&&`, a condition that decides on leaving early) and runs the tests each time, until one
 * fails. Prints every change that none noticed, and the share noticed. The file on the disk is left alone, so programs
 * that tests start do not see the change.
 *
 *     npx node tests/bench/mutations.ts src/orders/near.ts… [--tests tests/orders…] [--slow FILE]
 *         [--every N] [--offset K]
 *
 * The tests that mirror the file run first: those of its name, or else those of its folder. If they notice nothing,
 * those of --tests run, or without it all tests that import the file, however far. With --tests those of the folder do
 * not run unless named. Those of --slow run last, where nothing else has noticed the change. Of all changes --every 30
 * tries each thirtieth, and --offset 15 begins with another.
 */
import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { existsSync, globSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { setTimeout } from "node:timers/promises";
import { parseArgs } from "node:util";
import { API, type Program } from "typescript/unstable/sync";
import { changesOf } from "../make/changes.ts";
import type { Trial } from "../make/run-changed.ts";

/** What a file reads as while a change in it is tried. */
const changed = new Map<string, string>();

/** The nearest tests of a file: those of its name, or those of its folder. */
function mirrorOf(path: string): string {
  let tests = path.replace(/^src/, "tests").replace(/\.ts$/, ".test.ts");
  while (!existsSync(tests)) tests = dirname(tests);
  return tests;
}

/** The tests of a file, in the turn in which they run. None stands for all that import it. */
function turnsOf(path: string): (readonly string[])[] {
  const [near, { tests = [], slow = [] }] = [mirrorOf(relative(".", path)), options];
  const last = slow.length === 0 ? [] : [slow];
  if (tests.length > 0 && (!near.endsWith(".ts") || tests.every((one) => one === near)))
    return [tests, ...last];
  return [[near], tests, ...last];
}

/** How long tests take while nothing is changed. */
const lengths = new Map<string, number>();

async function lengthOf(path: string, text: string, tests: readonly string[]): Promise<number> {
  const key = tests.join(" ") || path;
  const began = Date.now();
  if (!lengths.has(key) && (await fails(path, text, 3_600_000, tests)))
    throw new Error(`${path}: a test fails before anything is changed`);
  const length = lengths.get(key) ?? Date.now() - began;
  lengths.set(key, length);
  return length;
}

/** Whether a test fails while the file reads so. A change that never ends is noticed too. */
async function isNoticed(path: string, was: string, is: string): Promise<boolean> {
  for (const tests of turnsOf(path)) {
    const longest = 30_000 + 3 * (await lengthOf(path, was, tests));
    if (await fails(path, is, longest, tests)) return true;
  }
  return false;
}

/** The program that runs tests; started anew where a change has ended it. */
let runner: ChildProcess | undefined;

async function fails(
  file: string,
  text: string,
  longest: number,
  tests: readonly string[],
): Promise<boolean> {
  // In a process group of its own, so that its workers end with it.
  runner ??= fork(join(import.meta.dirname, "../make/run-changed.ts"), { detached: true, stdio: "ignore" });
  const end = new AbortController();
  const { signal } = end;
  runner.send({ file, text, tests } satisfies Trial);
  const said: unknown = await Promise.race([
    once(runner, "message", { signal }).then(([passed]: unknown[]) => passed),
    once(runner, "exit", { signal }),
    setTimeout(longest, undefined, { signal }),
  ]);
  end.abort();
  if (typeof said === "boolean") return !said;
  stop();
  return true;
}

function stop(): void {
  if (runner?.pid !== undefined && runner.exitCode === null) process.kill(-runner.pid, "SIGKILL");
  runner = undefined;
}

const { positionals, values: options } = parseArgs({
  allowPositionals: true,
  options: {
    tests: { type: "string", multiple: true },
    slow: { type: "string", multiple: true },
    every: { type: "string", default: "1" },
    offset: { type: "string", default: "0" },
  },
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

const total = { found: 0, tried: 0, noticed: 0 };
const program = programWith();
for (const path of files.map((file) => resolve(file))) {
  const file = program.getSourceFile(path);
  if (file === undefined) throw new Error(`${path} is no file of the project`);
  const changes = changesOf(file).filter(
    () => total.found++ % Number(options.every) === Number(options.offset),
  );
  if (changes.length === 0) continue;
  const own = { tried: 0, noticed: 0 };
  for (const { from, to, text } of changes) {
    const whole = file.text.slice(0, from) + text + file.text.slice(to);
    changed.set(path, whole);
    // What does not compile needs no test.
    const faults = programWith(path).getSemanticDiagnostics(path);
    if (faults.some(({ code }) => !unused.has(code))) continue;
    own.tried++;
    if (await isNoticed(path, file.text, whole)) own.noticed++;
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
stop();
api.close();
