/**
 * Whether the memory of a desk grows with the letters that it answers. `burin work --once` answers so many letters of
 * two sheets each, every one of another buyer. Linux tells what its processes hold (proc(5): the Pss of each, in which
 * what they share counts once). Prints that after each twentieth of the letters, and the slope of the second half by
 * least squares, for the worker and for its readers together. V8 collects late where it has room, so the worker gets
 * little, and what grows is what it holds. A reader that has grown is replaced, so that theirs goes up and down.
 *
 *     npx node tests/bench/memory-slope.ts [--letters 20000]
 *
 * --letters  letters that are answered; twenty thousand take half an hour on two cores
 */
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { stringify } from "yaml";
import { configure, projectFile } from "../../src/commands/configuration.ts";
import { lettersOf } from "./desk-for.ts";
import { childrenOf } from "./processes.ts";
import { told } from "./told.ts";

const { letters: count } = told(import.meta.filename, { letters: 20_000 });
const folder = mkdtempSync(join(tmpdir(), "burin-slope-"));
const { settings } = await configure();
const ours = (path: string): string => projectFile("config", path);
writeFileSync(
  join(folder, "burin.yaml"),
  stringify({
    ...settings,
    catalogue: ours(settings.catalogue),
    editions: ours(settings.editions),
    glossary: ours(settings.glossary ?? "glossary.txt"),
    record: "record",
    folders: ["letters"],
    answers: { ...settings.answers, folder: "answers", most_per_hour: { to_one: 1e6, to_all: 1e6 } },
    release: undefined,
  }),
);
// Of ordersOf's letters each third has two sheets of devices that stand alone.
const kinds = (await lettersOf(60, 60))
  .filter((_, i) => i % 3 === 0)
  .map((bytes) => bytes.toString("latin1"));
mkdirSync(join(folder, "letters"));
for (let n = 0; n < count; n++)
  writeFileSync(
    join(folder, "letters", `${String(n).padStart(6, "0")}.eml`),
    (kinds[n % kinds.length] ?? "").replaceAll(/@buyer\d+\.example>/g, `@firm${n}.example>`),
    "latin1",
  );

/** Megabytes that a process holds; 0 when it is gone. */
function heldBy(pid: number): number {
  try {
    return (
      Number(/^Pss:\s*(\d+) kB/m.exec(readFileSync(`/proc/${pid}/smaps_rollup`, "latin1"))?.[1] ?? 0) / 1024
    );
  } catch {
    return 0;
  }
}

interface Held {
  readonly answered: number;
  readonly worker: number;
  readonly readers: number;
}

/** Megabytes a letter, by least squares. */
function slopeOf(held: readonly Held[], whose: "worker" | "readers"): number {
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [x, y] = [mean(held.map(({ answered }) => answered)), mean(held.map((one) => one[whose]))];
  const sum = (of: (one: Held) => number): number => held.reduce((all, one) => all + of(one), 0);
  return sum((one) => (one.answered - x) * (one[whose] - y)) / sum(({ answered }) => (answered - x) ** 2);
}

const worker = spawn(
  process.execPath,
  ["--max-old-space-size=256", "src/main.ts", "work", "--once", "--settings", join(folder, "burin.yaml")],
  { stdio: ["ignore", "ignore", "pipe"] },
);
const pid = worker.pid ?? 0;
const held: Held[] = [];
let answered = 0;
for await (const line of createInterface(worker.stderr)) {
  if (!line.includes("answer handed over")) continue;
  answered++;
  if (answered % 20 !== 0) continue;
  const readers = childrenOf(pid).reduce((sum, child) => sum + heldBy(child), 0);
  held.push({ answered, worker: heldBy(pid), readers });
  if (answered % Math.ceil(count / 20) !== 0) continue;
  const { worker: most = 0 } = held.at(-1) ?? {};
  console.log(`${answered} answered: worker ${most.toFixed(0)} MB, readers ${readers.toFixed(0)} MB`);
}
const half = held.slice(held.length / 2);
for (const whose of ["worker", "readers"] as const)
  console.log(`${whose}: ${(1024 * slopeOf(half, whose)).toFixed(2)} kB a letter over the second half`);
console.log(`${answered} of ${count} letters answered`);
rmSync(folder, { recursive: true });
