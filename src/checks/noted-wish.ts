import { undoes } from "../reading/reply/undoes.ts";
import { marksIn } from "./several.ts";

/** Words by which somebody asks for something, or names what no field holds. */
const requests = new RegExp(
  `\\b(${[
    "please|pls|must|need(s|ed)?|want(s|ed)?|require[sd]?|make sure|do not|don't|not|no|without|except",
    "engrave[ds]?|etch|cut|print|paint|fill(ed)?|change[ds]?|instead|rather|add|extra|additional|spares?|more",
    "omit|delete|remove|replace|swap|move|leave|skip|cancel|hold|wait|stop|rush|urgent|asap|expedite|before",
    "ship|deliver|delivery|send|pick ?up|call|phone|ring|quote|price|confirm|match(es|ing)?|same as|like",
    "colou?r|black|white|red|green|blue|amber|led|backlit|font|typeface|size|bold|italic|larger|bigger|smaller",
    "upper ?case|lower ?case|capitals|cent(er|re)(ed|d)?|symbols?|logos?|icons?|arrows?|braille|custom|special",
    "gold|silver|bronze|brass|chrome|nickel|steel|stainless|glass|wood|satin|polished|brushed|big|small|large",
    "double|triple|pairs?|both|same|also|ditto|or|either|if|when|until|unless|later|temp(orary)?|pending|tb[acd]",
    "copy of|duplicate|option(al)?|alternate|old|draft|void|obsolete|dummy|example",
    "make|made|buttons?|rows?|lines|with|only|portrait|landscape|open|check|verify|review|sample|test|change|key|sign|stop|reverse[ds]?|owner to|arch(itect)? to",
  ].join("|")})\\b`,
  "i",
);
/** 48", 5'-0", 1200 mm: inches are no quotation marks. */
const measure = /(?<!\d)\d+(?:[.,/]\d+)?\s{0,3}(?:"|''|[”″'’′])/gu;
/** An old plate that stays, a legend behind its number, and a drawing that has the rest. */
const hidden = [
  /(?<!\b(?:replac(?:es|ing|e)|over|behind|beside|near|by|below|above|(?:next|adj(?:acent)?) to|of) (?:the )?)\b(?:existing|exist\.?|old|w\/o|w\/out) (?:a |the )?(?:wall ?|cover ?|face ?)?plates?\b/i,
  /[\p{L}\p{N}]\s*=\s*\p{L}/u,
  /^\W*(?:see|refer to|per) (?:the )?(?:attached )?(?:drawing|dwg|plan|schedule|sketch)s?\W*$/i,
  /\b(?:see|refer to) (?:sheet|page|pg) \d{1,2}\b/i,
];
/** What asks for nothing of ours: whom to call, what others bring, which paper tells the place, and one of a kind. */
const idle = [
  /\b(?:(?:please|pls) )?(?:call|ring|phone|e-?mail|text)(?: me| us)? (?:w\/|with|for|if)(?: you have)?(?: any)? ?(?:questions?|problems?|issues?)\b/giu,
  /\b(?:dimmers?|wiring|conduit|back ?box(?:es)?|fixtures?|power|install(?:ation)?) by others\b/giu,
  /\b(?:see|refer to) (?:the )?(?:[A-Z]-?)?(?:sheets?|dwgs?|drawings?|plans?) for (?:exact )?locations?\b/giu,
  /\btyp(?:ical|\.)? ?(?:of|for) (?:1|one)\b/giu,
];
const quoted = /["“”«»]|(?<!\p{L})'[^']+'/u;

/** The sheets that come with a plate's: "device sheets attached", "devices 1-4 attached". */
const attached =
  /\bdevices?(?: sheets?)?(?: 1 ?(?:-|–|to|thru|through) ?(\d{1,2}))? (?:are |all )?attached\b/giu;

/** What notes say besides measures and words that ask for nothing of ours. The plate has so many `gangs`. */
export function withoutIdleWords(notes: string, gangs?: number): string {
  return idle.reduce(
    (text, words) => text.replace(words, ""),
    notes
      .replace(measure, "0 in")
      .replace(/\b(?:to|on) cent(?:er|re)\b/gi, "")
      .replace(attached, (words, last) => (last === undefined || Number(last) === gangs ? "" : words)),
  );
}

/** Whether notes ask for something, take something back, quote a legend or name several stations. */
export function asksForSomething(notes: string): boolean {
  return (
    requests.test(notes) ||
    undoes(notes) ||
    [quoted, ...hidden].some((sign) => sign.test(notes)) ||
    marksIn(notes).length > 1
  );
}
