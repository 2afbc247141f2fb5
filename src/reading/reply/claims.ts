import type { Claim } from "../../trade/carried.ts";
import type { Letter } from "../../trade/letter.ts";
import { isDayNear } from "./day-near.ts";
import { isBoilerplate } from "./furniture.ts";
import { saysNone } from "./more-to-come.ts";
import { takeApart } from "./own-text.ts";
import { paragraphsOf } from "./sentences.ts";

const mark = String.raw`\p{L}{0,4}[- ]?\d{1,4}`;
/** "Here is B-2", "B-2 attached", "B-2 again", "B-2, corrected". */
const isHere = new RegExp(
  [
    String.raw`\b(?:attached|attaching|enclosed|enclosing|herewith)\b`,
    String.raw`^(?:hi|hello|hey)?[, ]*(?:and |so )?here(?:['’]s| is| are| comes?)\b`,
    String.raw`\b${mark},? (?:(?:is|are|now) )*(?:again|corrected|revised|fixed|updated|amended|mended)\b`,
    String.raw`\b(?:corrected|revised|fixed|updated|amended|mended|new) (?:sheets? (?:for|of) )?${mark}(?![\p{L}\p{N}])`,
  ].join("|"),
  "iu",
);
/** Words by which a sentence speaks of a station whose sheet is elsewhere, or came before. */
const elsewhere =
  /[?]|\b(?:like|as|same|beside|next to|except|besides|than|instead|from|goes?|stays?|unchanged|remains?|before|after|but|if|unless|earlier|already|sent|yesterday|last (?:week|time|month)|later|tomorrow|follows?|following|will|copied)\b/iu;
const set = "(?:set|order|package|lot|bundle)";
const whole = new RegExp(
  [
    String.raw`\b(?:complete|full|whole|entire) (?:new |revised |corrected )?${set}\b`,
    String.raw`\ball (?:of )?(?:the )?sheets (?:of|in|for) (?:the|this|our) order\b`,
  ].join("|"),
  "iu",
);
/** "Part 3 of 3", "e-mail (2/2)". */
const part =
  /(?:\b(?:part|e-?mail|mail|letter|message|batch)\s+\(?(\d)\s?(?:of|\/)\s?(\d)|^\(?(\d) of (\d))\)?(?!\d)/iu;

/** A subject that ends so: "FM-72 (2/2)". */
const partOfSubject = /\((\d)\s?(?:of|\/)\s?(\d)\)$|(?<=\s)(\d) of (\d)$/iu;

/** In characters. Who tells of sheets is brief. */
const longest = 200;

/** What a letter's own words and its subject say of the sheets that it brings. */
export function claimsIn({ subject, text, date }: Pick<Letter, "subject" | "text" | "date">): Claim[] {
  const own = paragraphsOf(takeApart(text, "").own)
    .flat()
    .filter((words) => words.length <= longest && !saysNone.test(words) && !isBoilerplate(words));
  const parts = [subject, ...own].flatMap((words): Claim[] => {
    const isSubject = words === subject && !isDayNear(words, date);
    const [, named, ofNamed, bare, ofBare] =
      part.exec(words) ?? (isSubject ? partOfSubject.exec(words) : undefined) ?? [];
    const [number, of] = [Number(named ?? bare), Number(ofNamed ?? ofBare)];
    return number === of && of > 1 ? [{ words, claims: "last", of }] : [];
  });
  const here = own.filter((words) => !elsewhere.test(words));
  return [
    ...parts,
    ...here.flatMap((words): Claim[] => {
      if (whole.test(words)) return /\d/.test(words) ? [] : [{ words, claims: "whole" }];
      return /\d/.test(words) && isHere.test(words) ? [{ words, claims: "named" }] : [];
    }),
  ];
}
