import type { TimeLeft } from "../ports/reader.ts";
import type { Limits } from "./limits.ts";
import type { Allowance } from "./processor-time.ts";

/** The part of the remaining time that one file may take, so that none takes it all. */
const part = 1 / 4;

/** Nothing can be opened in less than this, in milliseconds of the processor. */
const least = 100;

/** The time of a file counts so many times if a process was lost to it. */
const dear = 3;

/** What the next file may take; undefined if too little is left. */
export function shareOf(left: TimeLeft | undefined, { jobMs, patience }: Limits): Allowance | undefined {
  const processorMs = Math.min(jobMs, (left?.processorMs ?? Number.POSITIVE_INFINITY) * part);
  const clockMs = Math.min(jobMs * patience, left?.clockMs ?? Number.POSITIVE_INFINITY);
  return processorMs < Math.min(least, jobMs) || clockMs <= 0 ? undefined : { processorMs, clockMs };
}

/** Takes a file's time off what is left. */
export function takeOff(
  left: TimeLeft | undefined,
  { processorMs, clockMs }: Allowance,
  lost: boolean,
): void {
  if (left === undefined) return;
  left.processorMs -= lost ? processorMs * dear : processorMs;
  left.clockMs -= clockMs;
}
