import type { TimeLeft } from "../ports/reader.ts";
import type { Limits } from "./limits.ts";
import type { Allowance } from "./processor-time.ts";

/** Of what is left for all files of a letter, the part that the next may take, so that none takes it all. */
const part = 1 / 4;

/** With less than this nothing can be opened, in milliseconds of the processor. */
const least = 100;

/** How often the time of a file counts that a process was lost to. */
const dear = 3;

/** What the next file may take; undefined where there is too little left. */
export function shareOf(left: TimeLeft | undefined, { jobMs, patience }: Limits): Allowance | undefined {
  const processorMs = Math.min(jobMs, (left?.processorMs ?? Number.POSITIVE_INFINITY) * part);
  const clockMs = Math.min(jobMs * patience, left?.clockMs ?? Number.POSITIVE_INFINITY);
  return processorMs < Math.min(least, jobMs) || clockMs <= 0 ? undefined : { processorMs, clockMs };
}

/** Takes off what a file has taken. */
export function takeOff(
  left: TimeLeft | undefined,
  { processorMs, clockMs }: Allowance,
  lost: boolean,
): void {
  if (left === undefined) return;
  left.processorMs -= lost ? processorMs * dear : processorMs;
  left.clockMs -= clockMs;
}
