import { spawnSync } from "node:child_process";

/** Seconds by the clock, and of the processor, of all processes together. */
export interface Timed {
  readonly clock: number;
  readonly processor: number;
}

/** Runs a program to its end. Throws if it ends with another code than expected. */
export function timed(name: string, command: readonly string[], expected: readonly number[] = [0]): Timed {
  const began = performance.now();
  const { stdout, stderr, status } = spawnSync(
    "bash",
    ["-c", '"$@" >/dev/null; code=$?; times; exit $code', "-", ...command],
    { encoding: "utf8" },
  );
  const clock = (performance.now() - began) / 1000;
  if (!expected.includes(status ?? -1)) throw new Error(`${name} ended with ${status}: ${stderr}`);
  // POSIX: the second line is of the shell's children, user and system time.
  const [user = 0, system = 0] = [...(stdout.trim().split("\n")[1] ?? "").matchAll(/(\d+)m([\d.]+)s/g)].map(
    ([, minutes, seconds]) => Number(minutes) * 60 + Number(seconds),
  );
  return { clock, processor: user + system };
}
