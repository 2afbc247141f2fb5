import type { AuditedLetter } from "../trade/audited.ts";
import { isVerdict } from "../trade/problem.ts";

/** Events that say what became of a letter. */
export const judgings = ["ready", "held", "silent"];

/** What an event says that became of a letter. One that is not taken may be answered too, and the event says why. */
export function becameBy(what: string, words: string): AuditedLetter["became"] {
  if (what === "held" || what === "silent") return what;
  if (what === "ready") return isVerdict(words) ? "answered" : "held";
  return undefined;
}
