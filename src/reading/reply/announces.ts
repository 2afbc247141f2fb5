import type { Letter } from "../../trade/letter.ts";
import { takeApart } from "./own-text.ts";
import { paragraphsOf } from "./sentences.ts";

const rest =
  "(?:rest|others?|remaining|remainder|balance|(?:second|next|other|last|final|third) (?:half|parts?|batch|set|sheets?|devices?|plates?|stations?|e-?mail|letter|ones?)|more(?: sheets| devices| plates| stations)?)";

/** More is to come: in English as people write it, and in the usual words of French, Spanish and German. */
const follows = new RegExp(
  [
    String.raw`\b${rest}\b[^.!?]{0,40}?\b(?:will (?:follow|come|be (?:sent|along|there))|to (?:follow|come)|follows?|following|coming|comes|on (?:its|their|the) way)\b`,
    String.raw`\b(?:i|we)(?:'ll| will|'m going to|'re going to| am going to| are going to)? (?:send|e-?mail|forward)(?: you)?(?: the| some)? ${rest}\b`,
    String.raw`\b(?:first|1st) (?:half|part|batch|round)\b|\bpart (?:one|1)\b(?! of)`,
    String.raw`\b(?:the rest|(?:the )?others?|the remaining \p{L}+|more(?: of (?:them|these))?)\b(?: (?:come|coming|are coming))? (?:tomorrow|later|soon|shortly|next week|in (?:a bit|an hour)|this (?:afternoon|evening|week)|on (?:mon|tues|wednes|thurs|fri)day)\b`,
    String.raw`\b(?:first|second|third) of (?:two|three|four|five|six|several) (?:e-?mails?|mails?|letters|messages|batches|sheets|parts|files)\b`,
    String.raw`\ble reste (?:suit|suivra|viendra|arrive)|\bla suite (?:suit|suivra|viendra)|\bel resto (?:sigue|seguirá|irá|va|viene)|\bder rest (?:folgt|kommt)|\bweitere (?:folgen|kommen)`,
  ].join("|"),
  "iu",
);
const isAll = /\b(?:no|nothing|none|not|isn't|aren't|won't|without|keine?|pas|ningun\p{L}*|nada)\b/iu;
/** "part 1 of 2", "e-mail (1/3)", "(1 of 2)", "2 of 5 attached"; "(11/27)" is a day. */
const numbered =
  /(?:\b(?:part|e-?mail|mail|letter|message|batch|set|sheet|file|teil|partie|parte)\s+\(?(\d+)\s?(?:of|\/|von|de|sur)|\((\d+)\s?(?:of|von|de|sur))\s?(\d{1,2})\b|\b(\d{1,2}) of (\d{1,2})(?: sheets| files)? (?:are |is )?(?:attached|enclosed)\b/giu;

/** The first sentence in which a letter tells that more sheets are to come; quotations do not count. */
export function announcedIn({ subject, text }: Pick<Letter, "subject" | "text">): string | undefined {
  const sentences = [subject, ...paragraphsOf(takeApart(text, "").own).flat()];
  const parts = sentences.flatMap((sentence) =>
    [...sentence.matchAll(numbered)].map(([, named, bare, of, some, all]) => ({
      sentence,
      number: Number(named ?? bare ?? some),
      of: Number(of ?? all),
    })),
  );
  return (
    sentences.find((sentence) => follows.test(sentence) && !isAll.test(sentence)) ??
    // "Sheet 1 of 2" and "sheet 2 of 2" are all there is.
    parts.find((part) => parts.every(({ number, of }) => of !== part.of || number < of))?.sentence
  );
}
