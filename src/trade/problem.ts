import type { Place } from "./place.ts";
import type { FileId, Seen } from "./sheet.ts";

/** `stops`: must be fixed. `asks`: somebody must confirm. `notes`: worth knowing. */
export type Severity = "stops" | "asks" | "notes";

export type Fact = string | number | readonly string[];

/** Where a problem shows: a file, and the place on its sheet, or where it was seen on the page. */
export interface Spot {
  readonly file: FileId;
  readonly place?: Place;
  readonly seen?: Seen;
}

/** One thing wrong. It keeps its key and facts, not prose, so that it can be rendered, compared and counted. */
export interface Problem {
  readonly check: string;
  /** Which of the check's wordings says it. */
  readonly wording: string;
  readonly severity: Severity;
  /** What this problem alone would make of the letter. */
  readonly verdict: Verdict;
  readonly facts: Readonly<Record<string, Fact>>;
  readonly spots: readonly Spot[];
}

/** From the least to the gravest. */
const grave = ["pass", "waiting", "confirm", "person", "fail"] as const;

/**
 * `pass`. `waiting`: all good so far, sheets still to come. `confirm`: nothing wrong, questions to be answered first.
 * `person`: needs a person. `fail`: something stops it.
 */
export type Verdict = (typeof grave)[number];

export function isVerdict(text: string): text is Verdict {
  return grave.some((one) => one === text);
}

/** The gravest of some verdicts; `pass` of none. */
export function gravest(verdicts: Iterable<Verdict>): Verdict {
  let worst = 0;
  for (const verdict of verdicts) worst = Math.max(worst, grave.indexOf(verdict));
  return grave[worst] ?? "pass";
}

/** What some problems together make of a sheet, an order or a letter. */
export function verdictOf(problems: Iterable<Problem>): Verdict {
  return gravest([...problems].map((problem) => problem.verdict));
}
