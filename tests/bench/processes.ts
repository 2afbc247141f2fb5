import { readdirSync, readFileSync } from "node:fs";

/** proc(5) counts times in ticks of the clock. A tick is a hundredth of a second wherever Linux runs. */
const tickMs = 10;

/** What proc(5) tells of a process in `stat`, from its third field on; none when it is gone. */
function statOf(pid: number): readonly number[] {
  try {
    const line = readFileSync(`/proc/${pid}/stat`, "latin1");
    // The second field is the name of the program, which may hold blanks and brackets.
    return line
      .slice(line.lastIndexOf(")") + 2)
      .split(" ")
      .map(Number);
  } catch {
    return [];
  }
}

export function childrenOf(pid: number): number[] {
  return readdirSync("/proc")
    .map(Number)
    .filter((one) => one > 0 && statOf(one)[1] === pid);
}

/**
 * Milliseconds of the processor that a process has taken since it began, together with the processes that it started,
 * those that have ended included. It counts in steps of ten.
 */
export function processorOf(pid: number): number {
  const [user = 0, system = 0, ofEnded = 0, systemOfEnded = 0] = statOf(pid).slice(11, 15);
  const own = (user + system + ofEnded + systemOfEnded) * tickMs;
  return childrenOf(pid).reduce((sum, child) => sum + processorOf(child), own);
}

/** Milliseconds of the processor that its readers and other children have taken. */
export function processorOfChildren(pid: number): number {
  const [, , ofEnded = 0, systemOfEnded = 0] = statOf(pid).slice(11, 15);
  return childrenOf(pid).reduce((sum, child) => sum + processorOf(child), (ofEnded + systemOfEnded) * tickMs);
}
