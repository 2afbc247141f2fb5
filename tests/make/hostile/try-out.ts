import { readdirSync, readFileSync } from "node:fs";
import type { Opened, Reader } from "../../../src/ports/reader.ts";
import type { FileFacts } from "../../../src/reading/facts.ts";
import type { OpenedLetter } from "../../../src/reading/letter/letter.ts";
import { processorTime } from "../../../src/sandbox/processor-time.ts";
import type { Hostile } from "./all.ts";

/** What became of a hostile file. */
export interface TriedOut {
  readonly name: string;
  readonly opened: Opened<FileFacts | OpenedLetter>;
  /** Processor time that the busiest of its processes took. */
  readonly seconds: number;
  /** The most resident memory that any process of the reader has held since it started. */
  readonly peakMb: number;
}

export async function tryOut(reader: Reader, { name, op, make }: Hostile): Promise<TriedOut> {
  const bytes = make();
  let peak = 0;
  const spans = new Map<string, { readonly first: number; last: number }>();
  const look = (): void => {
    for (const pid of children()) {
      peak = Math.max(peak, peakOf(pid));
      const now = processorTime(Number(pid));
      if (now === undefined) continue;
      const span = spans.get(pid) ?? { first: now, last: now };
      spans.set(pid, span);
      span.last = now;
    }
  };
  look();
  const watch = setInterval(look, 5);
  try {
    const opened = await reader[op](bytes);
    look();
    const seconds = Math.max(0, ...[...spans.values()].map(({ first, last }) => last - first)) / 1000;
    return { name, opened, seconds, peakMb: peak / 1024 };
  } finally {
    clearInterval(watch);
  }
}

/** Ids of the processes that this one has started. */
export function children(): string[] {
  return readdirSync("/proc/self/task").flatMap((task) =>
    readFileSync(`/proc/self/task/${task}/children`, "utf8").split(" ").filter(Boolean),
  );
}

/** In kilobytes. proc(5) */
function peakOf(pid: string): number {
  try {
    return Number(/^VmHWM:\s*(\d+)/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? 0);
  } catch {
    return 0; // gone since
  }
}

/** One line a file: what became of it, how long it took, how much memory. */
export function tableOf(tried: readonly TriedOut[]): string {
  const line = ({ name, opened, seconds, peakMb }: TriedOut): string =>
    `${name.padEnd(72)} ${outcomeOf(opened).padEnd(36)} ${seconds.toFixed(1).padStart(5)} s ${peakMb.toFixed(0).padStart(5)} MB`;
  return tried.map(line).join("\n");
}

function outcomeOf(opened: TriedOut["opened"]): string {
  if (!opened.ok) return opened.why;
  const { value } = opened;
  if (!("kind" in value)) return `letter, ${value.parts.length} parts`;
  if (value.kind === "archive") return `archive, ${value.files.length} files, ${value.left.length} left`;
  if (value.kind !== "pdf") return value.kind;
  return `pdf, ${value.fields.length} fields${value.pages === undefined ? ", pages unseen" : ""}`;
}
