import { spawnSync } from "node:child_process";

/** Whether a program that is not ours is installed; says so when it is not, since its tests are skipped. */
export function hasProgram(name: string, ask = "--version"): boolean {
  const found = spawnSync(name, [ask]).status === 0;
  if (!found) console.warn(`${name} is not installed: what it would show is not tested here`);
  return found;
}

/** Runs a program. Throws, with what it said, when it fails. */
export function run(name: string, ...args: readonly string[]): void {
  const { status, stderr, error } = spawnSync(name, args, { encoding: "utf8", timeout: 60_000 });
  if (status !== 0) throw new Error(`${name} failed: ${stderr ?? ""}`, { cause: error });
}

/** Whether Debian's Python has a library; says so when it has not. */
export function hasLibrary(name: string): boolean {
  const found = spawnSync("/usr/bin/python3", ["-c", `import ${name}`]).status === 0;
  if (!found) console.warn(`Python has no ${name}: what it would show is not tested here`);
  return found;
}
