import type { Catalogue } from "../catalogue/catalogue.ts";
import { answerHtml } from "./html.ts";
import { outlineOf } from "./make-outline.ts";
import type { Enclosure } from "./message.ts";
import { counted, listed, oneLine } from "./one-line.ts";
import type { Report } from "./report.ts";
import { answerText } from "./text.ts";

/** What the sender reads: the same words as text and as HTML, under a subject of one line. */
export interface Answer {
  readonly subject: string;
  readonly text: string;
  readonly html: string;
}

/** The files that go with an answer. */
export interface Enclosed {
  readonly proofs: readonly Enclosure[];
  readonly marked: readonly Enclosure[];
  /** Sheets with problems of which no copy was made, since the letter would become too large or too late. */
  readonly left: number;
}

/** Files named in one line. */
const mostNames = 6;

/** Puts a report into the words of an answer, with a word on what goes with it. */
export function composeAnswer(
  report: Report,
  catalogue: Catalogue,
  enclosed: Enclosed = { proofs: [], marked: [], left: 0 },
): Answer {
  const outline = outlineOf(report, catalogue);
  const told = { ...outline, next: [...outline.next, ...enclosedWords(enclosed)] };
  return { subject: outline.subject, text: answerText(told), html: answerHtml(told) };
}

function enclosedWords({ proofs, marked, left }: Enclosed): string[] {
  const names = (files: readonly Enclosure[]): string =>
    listed(
      files.map(({ file }) => oneLine(file, 90)),
      mostNames,
    );
  return [
    ...(marked.length === 0
      ? []
      : [
          `Enclosed: ${names(marked)}. ${marked.length === 1 ? "It is your own sheet" : "They are your own sheets"} with the numbers of this letter beside the fields: correct them there, save, and send ${marked.length === 1 ? "it" : "them"} back.`,
        ]),
    ...(left === 0
      ? []
      : [
          `${counted(left, "sheet")} ${left === 1 ? "has" : "have"} no marked copy: with it this letter would be too large.`,
        ]),
    ...(proofs.length === 0
      ? []
      : [`Enclosed: ${names(proofs)}. It shows what would be cut, at true size when printed at 100 %.`]),
  ];
}
