import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { promisify } from "node:util";

const onLinux = process.platform === "linux";

/** How often a process at work is looked at, in milliseconds. Starting `ps` for it is costly. */
const pause = onLinux ? 20 : 200;

/** Resident memory of a process in bytes; 0 when it is gone, or on systems that have no way to tell. */
export async function residentMemory(pid: number): Promise<number> {
  return onLinux ? fromProc(pid) : fromPs(pid);
}

/** proc(5): "VmRSS: 123456 kB". Read synchronously, so that no other reading delays the watch. */
function fromProc(pid: number): number {
  try {
    return bytesIn(/^VmRSS:\s*(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, "latin1")));
  } catch {
    return 0;
  }
}

/** In kilobytes, on every system but Windows. */
export async function fromPs(pid: number): Promise<number> {
  try {
    const { stdout } = await promisify(execFile)("ps", ["-o", "rss=", "-p", String(pid)]);
    return bytesIn(/^\s*(\d+)\s*$/.exec(stdout));
  } catch {
    return 0;
  }
}

function bytesIn(match: RegExpExecArray | null): number {
  return Number(match?.[1] ?? 0) * 1024;
}

/** Watches a process until stopped. Calls `tooMuch` when it holds more than `most` bytes. */
export function watchMemory(
  pid: number,
  most: number,
  tooMuch: () => void,
): { readonly peak: () => number; readonly stop: () => void } {
  let peak = 0;
  let looking = false;
  const look = async (): Promise<void> => {
    if (looking) return;
    looking = true;
    const now = await residentMemory(pid);
    looking = false;
    peak = Math.max(peak, now);
    if (now > most) tooMuch();
  };
  const timer = setInterval(() => void look(), pause);
  return { peak: () => peak, stop: () => clearInterval(timer) };
}
