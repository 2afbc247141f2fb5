import type { Goods } from "./counts.ts";
import { speaksAgainst } from "./doubt.ts";
import { type Ordered, orderedOtherwise } from "./order-lines.ts";
import { paragraphsOf } from "./sentences.ts";
import { type LetterFacts, patternOf } from "./tallies.ts";

/** In characters. A note that somebody printed as a PDF is shorter. */
const longestNote = 1200;
/** In characters. So much of a paper is looked through. */
const most = 100_000;

const titles =
  /(?<!\p{L})(?:purchase order|p\.?o\.? (?:number|no|#)|order confirmation|quot(?:e|ation)|invoice|packing (?:list|slip)|terms|drawing|sheet (?:title|no|number)|drawn by|scale|floor plan|specifications?|section \d|submittal|schedule|data ?sheet|catalogu?e|brochure|certificate|tax|bestellung|angebot|rechnung|zeichnung|commande|devis|facture|plan|pedido|factura|plano)(?!\p{L})/iu;

/** Whether pages are a drawing, a purchase order or their kind, which have words enough of their own, rather than a note. */
export function isPaper(text: string): boolean {
  return text.length > longestNote || titles.test(text);
}

/** "Hold all items", "this order is cancelled". What may be, under terms, is none. */
const stops =
  /(?<!\p{L})(?:(?:hold|cancel|void|stop|disregard|do not (?:make|cut|engrave|start|process|release|proceed with)) (?:all|everything|this|the|our|these|both)(?!\p{L})|(?:(?:order|p\.?o\.?)[^.;]{0,60}|(?:items?|stations?|sheets|everything|all)[^.;]{0,20}) (?:is|are|on|has been|have been|was|were) (?:now )?(?:on )?(?:hold|cancell?ed|void(?:ed)?|superseded|replaced|withdrawn|not (?:yet )?(?:released|approved|final))|do not (?:make|engrave|process|release)|^\W*(?:on )?hold(?=\W*$|\s*[:!]|\s[–—-]\s))(?!\p{L})/iu;
const terms = /(?<!\p{L})(?:may|shall|if|unless|right|reserves?|except|liable|party|seller|buyer)(?!\p{L})/iu;

/**
 * What such a paper says against the order or a station of it: "B-2: on hold", or what a purchase order has otherwise
 * than the sheets. Everything else in it is the buyer's own affair.
 */
export function wordsAgainst(text: string, facts: PaperFacts, goods: Goods): Ordered[] {
  const against = spokenAgainst(text, facts);
  const told = new Set(against.map(({ words }) => words));
  const ordered = orderedOtherwise(text.slice(0, most), facts, goods);
  return [...against, ...ordered.filter(({ words }) => !told.has(words))];
}

type PaperFacts = Pick<LetterFacts, "marks" | "numbers" | "sheets" | "earlier">;

function spokenAgainst(text: string, { marks }: PaperFacts): Ordered[] {
  const patterns = marks.flatMap((mark) => patternOf(mark) ?? []);
  const names = (line: string): boolean => patterns.some((pattern) => line.search(pattern) >= 0);
  return paragraphsOf(text.slice(0, most).split("\n"))
    .flat()
    .filter(
      (sentence) =>
        (names(sentence) && speaksAgainst(sentence)) || (stops.test(sentence) && !terms.test(sentence)),
    )
    .map((words) => ({ words }));
}
