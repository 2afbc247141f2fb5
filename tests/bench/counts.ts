import { readFileSync } from "node:fs";
import type { Count } from "../../src/trade/count.ts";

/*
 * Sentences and lists written for this project before anything read them. At first sight 28 of 30 sentences were
 * counted, and 27 of the 30 set aside; nothing was counted in the 36 and 35 sentences that count nothing, and all 16
 * lists were read as they should be. The misses have been looked at since: a person reads two sentences.
 */

/** What somebody writes, and what it counts: "12 device; 3 plate 4 OAT". "" for nothing. */
export interface CountCase {
  readonly text: string;
  readonly counts: string;
  /** Set aside before anything was tuned: every second one. */
  readonly aside: boolean;
}

const read = (file: string): string => readFileSync(`tests/bench/counts/${file}.txt`, "utf8");

/** Sentences of a file, one a line. */
export function sentencesIn(file: "told" | "none"): CountCase[] {
  const lines = read(file).split("\n").filter(Boolean);
  return lines.map((line, i) => {
    const [text = "", counts = ""] = line.replaceAll("\\n", "\n").split(" => ");
    return { text, counts, aside: i % 2 === 1 };
  });
}

/** Texts that are attached. Each begins with a line such as `=== 12 device; 3 plate`. */
export function listsIn(): CountCase[] {
  const lists = read("lists").split(/^=== /m).slice(1);
  return lists.map((list, i) => {
    const [counts = "", ...lines] = list.trimEnd().split("\n");
    return { text: lines.join("\n"), counts: counts === "none" ? "" : counts, aside: i % 2 === 1 };
  });
}

/** Counts as these files write them. */
export function written(counts: readonly Count[]): string {
  return counts
    .map(({ number, of, layout, gangs, finish }) =>
      [number, of, layout, gangs, finish].filter((part) => part !== undefined).join(" "),
    )
    .join("; ");
}
