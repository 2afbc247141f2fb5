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

/** Puts a report into the words of an answer. */
export function composeAnswer(report: Report, catalogue: Catalogue): Answer {
  const outline = outlineOf(report, catalogue);
  return { subject: outline.subject, text: answerText(outline), html: answerHtml(outline) };
}
