import { tokensOf } from "./word-bag.ts";

/** "Will fix", "Corrected sheets on the way", "New sheet for 5 to follow, along with 1 and 2". */
const does = new Set(
  tokensOf(
    "fix fixing correct correcting redo mend shorten resend resending resubmit send sending sort follow follows reissue issue address deal revise update come coming comes way",
  ),
);
const around = new Set(
  tokensOf(
    `i we ll will am m re are is going to can and the a an you it them that those these my our your new corrected revised
    updated fixed other others rest two three remaining one ones both sheet sheets pdf pdfs file files form forms point
    points number numbers item items question questions again over out on in for with along its their back soon
    shortly later tonight tonite today tomorrow this morning afternoon evening asap right away shall week separately form`,
  ),
);

/** The numbers for which a sentence promises a sheet, and nothing else. Undefined if it says anything else. */
export function sheetsPromisedIn(sentence: string): number[] | undefined {
  const tokens = tokensOf(
    sentence
      .replace(/\bno\.? ?(?=\d)/giu, "")
      .replace(/(?<=\d )was (?:my|our) (?:mistake|typo|slip|error)\b/giu, ""),
  );
  const isPromise =
    !sentence.includes("?") &&
    /\b(?:i|we|will|sheets?|ones?|files?|pdfs?)\b/iu.test(sentence) &&
    /\b(?:i|we|will|shall|to follow|follows|com(?:es|ing)|way)\b/iu.test(sentence) &&
    tokens.some((token) => does.has(token)) &&
    tokens.every((token) => does.has(token) || around.has(token) || /^\d{1,4}$/.test(token));
  return isPromise ? tokens.filter((token) => /^\d/.test(token)).map(Number) : undefined;
}
