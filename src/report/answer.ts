import type { Catalogue } from "../catalogue/catalogue.ts";
import { answerHtml } from "./html.ts";
import { outlineOf } from "./make-outline.ts";
import type { Report } from "./report.ts";
import { answerText } from "./text.ts";

/** What the sender reads: the same words as text and as HTML, under a subject of one line. */
export interface Answer {
  readonly subject: string;
  readonly text: string;
  readonly html: string;
}

/** Puts a report into the words of an answer; `enclosed` names the proofs that go with it. */
export function composeAnswer(
  report: Report,
  catalogue: Catalogue,
  enclosed: readonly string[] = [],
): Answer {
  const outline = outlineOf(report, catalogue);
  const told = { ...outline, next: [...outline.next, ...proofWords(enclosed)] };
  return { subject: outline.subject, text: answerText(told), html: answerHtml(told) };
}

function proofWords(enclosed: readonly string[]): string[] {
  if (enclosed.length === 0) return [];
  return [
    `Enclosed: ${enclosed.join(", ")}. It shows what would be cut, at true size when printed at 100 %.`,
  ];
}
