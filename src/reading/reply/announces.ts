import type { Announced } from "../../trade/carried.ts";
import type { Letter } from "../../trade/letter.ts";
import { isDayNear } from "./day-near.ts";
import { isBoilerplate } from "./furniture.ts";
import { saysNone, several, tellsOfMore } from "./more-to-come.ts";
import { takeApart } from "./own-text.ts";
import { paragraphsOf } from "./sentences.ts";

/** "part 1 of 2", "e-mail (1/3)", "(1 of 2)", "2 of 5 attached", "1 of 2" alone; "(11/27)" is a day. */
const numbered =
  /(?:(?:\b(?:part|page|e-?mail|mail|letter|message|batch|set|sheet|file|number|no\.|teil|partie|parte)\s+|#)\(?(\d+)\s?(?:of|\/|von|de|sur)|\((\d+)\s?(?:of|von|de|sur))\s?(\d{1,2})\b|\b(\d{1,2}) of (\d{1,2})(?: sheets| files)? (?:are |is )?(?:attached|enclosed)\b|^(?:this is )?(\d) of (\d)[.!]*$/giu;

const paper = "(?:sheets?|forms?|pdfs?|files?|versions?|cop(?:y|ies)|pages?)";
const mended =
  "(?:corrected|revised|fixed|updated|amended|mended|modified|new|replacement|right|correct|final)";
/** "A corrected sheet", "the new B-2", "revised sheets for B-1 and B-2". */
const mendedOne = String.raw`\b${mended} (?:(?!and\b)\p{L}+ ){0,2}?(?:${paper}|ones?|plates?|devices?|stations?|\p{L}{1,4}-?\d{1,4})(?![\p{L}\p{N}])`;
const comes = String.raw`(?:to (?:follow|come)|(?:will|shall|['’]ll) (?:follow|come|be sent)|follows?|following|coming|comes|on (?:its|their|the) way|tomorrow|later|soon|shortly|tonight|next week|this (?:afternoon|evening|week)|(?:on|by) (?:mon|tues|wednes|thurs|fri)day)`;

const will = String.raw`(?:\b(?:will|shall|going to)|['’]ll) (?:(?:then|just|also) )?`;
const soon = String.raw`(?:tomorrow|tonight|later|soon|shortly|today|in the morning|(?:this|next) (?:morning|afternoon|evening|week)|(?:mon|tues|wednes|thurs|fri)day)`;

/** A sheet is to come in the place of another. */
const mends = new RegExp(
  [
    String.raw`${will}(?:send|e-?mail|get|make out|fill (?:in|out))(?: you)? (?:(?:all|the) )?(?:${several} (?:\p{L}+ )?|a separate |one )(?:sheets?|forms?)\b`,
    String.raw`(?:${will}(?:send|e-?mail|get)(?: you)?|\byou (?:will|['’]ll) (?:have|get|receive)) (?:the |a )(?:\p{L}+ )?${paper}\b[^.!?,]{0,30}?\b${soon}\b`,
    String.raw`${will}(?:re-?)?(?:send|e-?mail) [^\s]+\.pdf\b`,
    String.raw`${mendedOne}[^.!?]{0,40}?\b${comes}\b`,
    String.raw`\b(?:sheets?|forms?) (?:follows?|coming|comes|to (?:follow|come)|(?:will|shall) (?:follow|come))\b`,
    String.raw`(?:\b(?:will|shall|going to)|['’]ll) (?:(?:then|just|also) )?(?:re-?)?(?:send|e-?mail|submit|forward|do|get)\b[^.!?]{0,30}?${mendedOne}`,
    String.raw`(?:\b(?:will|shall|going to)|['’]ll) (?:then |just |also )?(?:re-?(?:send|submit|do|issue|fill)|(?:send|fill|do) (?:it|them|that|this|the ${paper}) (?:in )?again|(?:correct|fix|change|revise|amend|mend) (?:it|them|that|this|the ${paper}))\b`,
  ].join("|"),
  "iu",
);
/** When, or by another letter: it is not among those that came. */
const isLater = new RegExp(
  String.raw`\b(?:${soon}|on (?:mon|tues|wednes|thurs|fri)day|next week|this (?:afternoon|evening|week))\b|\b(?:(?:will|shall|to) (?:follow|come|be sent)|(?<!\bas )follows?|coming|on (?:its|their|the) way)(?= *(?:$|[.,;!)]))`,
  "iu",
);
/** A sheet is said to be another than before, or one more. */
const isMended = new RegExp(
  [
    mendedOne,
    String.raw`\b(?:it|both|all|they|this|that|these|${paper}|\p{L}{1,4}-?\d{1,4}) (?:(?:is|are|has been|have been|was|were|now) ){0,2}(?:corrected|revised|fixed|updated|amended|mended)\b`,
    String.raw`\bwith (?:the|all|my|our) (?:fix(?:es)?|corrections?|changes?)\b`,
    String.raw`(?:\b(?:i|we)(?: have|['’]ve)? (?:now )?|^)(?:corrected|fixed|revised|amended|updated)\b`,
    String.raw`\breplacements? (?:sheets? )?(?:for|of)\b|\bmix-?up\b`,
    String.raw`\b(?:additional|another|extra|one more|forgot(?:ten)?) (?:this |the )?(?:ones?|stations?|devices?|plates?|sheets?)\b`,
  ].join("|"),
  "iu",
);
const attaches = new RegExp(
  String.raw`\b(?:attached|attaching|enclosed|enclosing|herewith)\b|\bsee (?:the )?attach(?:ments?)?\b|^(?:hi|hello|hey)?[, ]*here(?:['’]s| is| are| comes?)\b[^.!?]{0,40}\b${paper}\b`,
  "iu",
);
/** "Revised sheet for the sauna." */
const isBare = new RegExp(
  String.raw`^(?:(?:the|a|my|our|please|see|find) )*${mended} (?:\p{L}+ ){0,2}?${paper}\b`,
  "iu",
);
/** It was told earlier, is asked, or may be. */
const elsewhen =
  /[?]|\b(?:if|whether|unless|yesterday|earlier|already|(?<!be )sent|went|got|received|have you|did you|last (?:week|time|month)|you(?:r)? attach\p{L}*|you enclosed|lost|bounced|in case)\b/iu;

/** In characters. Who tells of sheets is brief. */
const longestTelling = 200;

/**
 * The first sentence of a letter in which it tells of sheets that may not be here; quotations do not count. `brings`:
 * files came with it.
 */
export function announcedIn(
  { subject, text, date }: Pick<Letter, "subject" | "text" | "date">,
  brings: boolean,
): Announced | undefined {
  const sentences = [subject, ...paragraphsOf(takeApart(text, "").own).flat()];
  const more = moreIn(sentences) ?? (isFirstPart(subject) && !isDayNear(subject, date) ? subject : undefined);
  if (more !== undefined) return { words: more, tells: "more" };
  const own = sentences.slice(1).filter(tellsNow);
  const isHere = brings && own.some((sentence) => attaches.test(sentence));
  const telling = (tells: Announced["tells"], ...patterns: readonly RegExp[]): Announced[] =>
    own
      .filter((sentence) => patterns.some((pattern) => pattern.test(sentence)))
      .map((words) => ({ words, tells }));
  return [
    ...telling("later", mends).filter(({ words }) => !isHere || isLater.test(words)),
    ...(brings ? telling("mended", isMended) : telling("attached", attaches, isBare)),
  ][0];
}

/** "FM-72 (1/2)". */
function isFirstPart(subject: string): boolean {
  const [, number, of] = /(?<=\S )\((\d)\/(\d)\)$/.exec(subject) ?? [];
  return Number(number) > 0 && Number(number) < Number(of);
}

/** Whether a sentence may tell of sheets of this letter, or of ones to come. */
function tellsNow(sentence: string): boolean {
  return (
    sentence.length <= longestTelling &&
    !saysNone.test(sentence) &&
    !elsewhen.test(sentence) &&
    !isBoilerplate(sentence)
  );
}

/** The first sentence that tells that more sheets are to come. */
function moreIn(sentences: readonly string[]): string | undefined {
  const parts = sentences.flatMap((sentence) =>
    [...sentence.matchAll(numbered)].map(([, named, bare, of, some, all, alone, ofAlone]) => ({
      sentence,
      number: Number(named ?? bare ?? some ?? alone),
      of: Number(of ?? all ?? ofAlone),
    })),
  );
  return (
    sentences.find(tellsOfMore) ??
    // "Sheet 1 of 2" and "sheet 2 of 2" are all there is.
    parts.find((part) => parts.every(({ number, of }) => of !== part.of || number < of))?.sentence
  );
}
