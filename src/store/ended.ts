import type { Ending } from "../trade/audited.ts";
import type { Problem } from "../trade/problem.ts";
import type { FileId } from "../trade/sheet.ts";

/** A question as the tables have it, with what the revision withdrew that no longer asked it. */
export interface EndedRow {
  readonly settled_at: string | null;
  readonly decided_by: string | null;
  readonly closed_at: string | null;
  readonly withdrawn: string | null;
  /** "letter" or "person": who made that revision. */
  readonly cause: string | null;
  /** It was decided by its own sender, on the page that an answer leads to. */
  readonly isSenders: boolean;
}

/** How a question had ended at a moment. Whatever came later is left out. */
export function endingOf(row: EndedRow, problem: Problem, moment: string): Ending {
  if (row.settled_at !== null && row.settled_at < moment)
    return row.decided_by === null || row.isSenders ? "yes" : "decided";
  if (row.closed_at === null || row.closed_at >= moment) return "open";
  // One of our own people has put a sheet elsewhere.
  if (row.cause === "person") return "decided";
  const gone = withdrawnIn(row);
  const isGone = problem.spots.length === 0 || problem.spots.some(({ file }) => gone.has(file));
  return gone.size > 0 && isGone ? "withdrawn" : "corrected";
}

/** Sheets that were withdrawn by the revision that closed a question. */
export function withdrawnIn({ withdrawn }: { readonly withdrawn: string | null }): ReadonlySet<FileId> {
  return new Set(JSON.parse(withdrawn ?? "[]") as FileId[]);
}
