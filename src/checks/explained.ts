import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Severity } from "../trade/problem.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "./catalogue.ts";
import type { Check } from "./check.ts";
import { wordsOf } from "./run.ts";

/** A check in words, for people. */
export interface Explained {
  readonly id: string;
  readonly title: string;
  readonly severity: Severity;
  readonly why: string;
  readonly source: string;
  /** Its failing examples, each with what it says of them. */
  readonly finds: readonly { readonly shows: string; readonly says: string; readonly fix: string }[];
  readonly passes: readonly string[];
}

/** A check by its id, with what it finds in things of this maker; undefined if there is none. */
export function explained(id: string, catalogue: Catalogue): Explained | undefined {
  return (
    explainedIn(fileChecks, id, catalogue) ??
    explainedIn(sheetChecks, id, catalogue) ??
    explainedIn(orderChecks, id, catalogue) ??
    explainedIn(letterChecks, id, catalogue)
  );
}

function explainedIn<Subject>(
  checks: readonly Check<Subject>[],
  id: string,
  catalogue: Catalogue,
): Explained | undefined {
  const check = checks.find((one) => one.id === id);
  if (check === undefined) return undefined;
  const { title, severity, why, source, failing, passing } = check;
  const finds = failing.flatMap(({ shows, given, wording }) => {
    const subject = given(catalogue);
    const found = subject === undefined ? [] : [...check.find(subject, catalogue)];
    const problem = found.find((one) => one.wording === wording);
    return problem === undefined ? [] : { shows, ...wordsOf(problem) };
  });
  return {
    id,
    title,
    severity,
    why,
    source: source.kind === "standard" ? source.name : source.kind,
    finds,
    passes: passing.map(({ shows }) => shows),
  };
}
