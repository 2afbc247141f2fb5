import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { childrenOf } from "./processes.ts";

// Has a desk answer the letters of the demonstration, each so many times (memory.ts [times]), and prints how much memory
// its processes held at most while it did, as Linux counts it (proc(5): VmHWM of each process; the sum of Pss at one
// moment, in which what they share counts once).

const times = Number(process.argv[2] ?? 1);
const folder = mkdtempSync(join(tmpdir(), "burin-memory-"));
const MB = (kB: number): string => `${Math.round(kB / 1024)} MB`;

function burin(...args: readonly string[]) {
  return spawn(process.execPath, ["src/main.ts", ...args], { stdio: "ignore" });
}

/** A number of kilobytes that the system tells of a process; 0 when it is gone. */
function told(pid: number, file: string, name: string): number {
  try {
    return Number(
      new RegExp(`^${name}:\\s*(\\d+) kB`, "m").exec(readFileSync(`/proc/${pid}/${file}`, "latin1"))?.[1] ??
        0,
    );
  } catch {
    return 0;
  }
}

await once(burin("demo", folder), "exit");
for (const part of ["record", "answers"]) rmSync(join(folder, part), { recursive: true });
const letters = join(folder, "letters");
for (const name of readdirSync(letters)) {
  const text = readFileSync(join(letters, name), "latin1");
  for (let again = 1; again < times; again++)
    writeFileSync(
      join(letters, `again-${again}-${name}`),
      text.replace(/^Message-ID: </im, `Message-ID: <again-${again}-`),
      "latin1",
    );
}

const worker = burin("work", "--once", "--settings", join(folder, "burin.yaml"));
const pid = worker.pid ?? 0;
const most = new Map<number, number>();
let together = 0;
let readers = 0;
while (worker.exitCode === null) {
  const children = childrenOf(pid);
  const all = [pid, ...children];
  for (const one of all) most.set(one, Math.max(most.get(one) ?? 0, told(one, "status", "VmHWM")));
  together = Math.max(
    together,
    all.reduce((sum, one) => sum + told(one, "smaps_rollup", "Pss"), 0),
  );
  readers = Math.max(readers, children.length);
  await sleep(50);
}
const [first = 0, ...others] = most.values();
console.log(
  `worker ${MB(first)}; ${readers} readers at once, the largest ${MB(Math.max(...others))}; all together ${MB(together)}`,
);
rmSync(folder, { recursive: true });
