import { readFileSync } from "node:fs";

/** proc(5) counts times in ticks of the clock. A tick is a hundredth of a second wherever Linux runs. */
const tickMs = 10;

/**
 * Processor time that a process has taken since it began, in milliseconds, threads included. Undefined when the
 * process is gone, or on systems that cannot tell.
 */
export function processorTime(pid: number): number | undefined {
  try {
    const line = readFileSync(`/proc/${pid}/stat`, "latin1");
    // The second field is the name of the program, which may hold blanks and brackets.
    const fields = line.slice(line.lastIndexOf(")") + 2).split(" ");
    const [user, system] = [fields[11], fields[12]].map(Number);
    return user === undefined || system === undefined ? undefined : (user + system) * tickMs;
  } catch {
    return undefined;
  }
}

/**
 * How long a process was ready to work and had to wait for its turn, in milliseconds since it began. 0 where that
 * cannot be told. Linux, Documentation/scheduler/sched-stats: the second number of `schedstat`, in nanoseconds. It is
 * that of the first thread, which does the work.
 */
export function waitingTime(pid: number): number {
  try {
    return Number(readFileSync(`/proc/${pid}/schedstat`, "latin1").split(" ")[1] ?? 0) / 1e6;
  } catch {
    return 0;
  }
}

/**
 * How much time something may take, in milliseconds: of the processor, and by the clock. The clock stands while it
 * waits for its turn.
 */
export interface Allowance {
  readonly processorMs: number;
  readonly clockMs: number;
}

/** How often a process at work is looked at, in milliseconds. */
const pause = 20;

export interface TimeWatch {
  /** What it has taken so far. Where processor time cannot be told, time by the clock stands for it. */
  readonly taken: () => Allowance;
  /** From now on it may take no more than this. If less is left of what it was allowed before, that holds. */
  readonly allow: (more: Allowance) => void;
  readonly stop: () => void;
}

/**
 * Watches a process until stopped. Calls `tooSlow` when it takes more time than it may. The processor is what counts:
 * on a busy machine the clock runs on while the process waits for its turn. The clock ends only a process that does
 * nothing, or that waits for something else.
 */
export function watchTime(pid: number, most: Allowance, tooSlow: () => void): TimeWatch {
  const [begun, before, waitedBefore] = [performance.now(), processorTime(pid), waitingTime(pid)];
  let processor = 0;
  let waited = 0;
  let end = most;
  const taken = (): Allowance => {
    // The last look counts for a process that is gone.
    waited = Math.max(waited, waitingTime(pid) - waitedBefore);
    const clockMs = performance.now() - begun - waited;
    const now = processorTime(pid);
    if (now !== undefined) processor = now - (before ?? 0);
    return { processorMs: before === undefined ? clockMs : processor, clockMs };
  };
  const isOver = (): boolean => {
    const { processorMs, clockMs } = taken();
    return clockMs > end.clockMs || (before !== undefined && processorMs > end.processorMs);
  };
  const timer = setInterval(() => {
    if (isOver()) tooSlow();
  }, pause);
  return {
    taken,
    allow: (more) => {
      const { processorMs, clockMs } = taken();
      end = {
        processorMs: Math.min(end.processorMs, processorMs + more.processorMs),
        clockMs: Math.min(end.clockMs, clockMs + more.clockMs),
      };
    },
    stop: () => clearInterval(timer),
  };
}
