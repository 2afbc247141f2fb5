import { no, yes } from "./yes-no.ts";

const spelt = [
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];
const word = `(?:${spelt.join("|")})`;
const ordinals = ["first", "second", "third", "fourth", "fifth"];
const answer = `(?:an? )?(?:${yes}|${no})`;

/** "Three: yes", "four and five are a yes", and "yes to three". */
const before = new RegExp(
  `(?<=^|[,;.] |\\band |\\bnumber )${word}(?:(?:,? and |, | ?& ?)${word})*(?= ?(?:[:=.,–-]|is|are)* ?${answer}(?![\\p{L}\\p{N}]))`,
  "giu",
);
const after = new RegExp(
  `(?<=\\b(?:yes|no) (?:to|for|on) )${word}(?:(?:,? and |, | ?& ?)${word})*(?=$|[,;.]| and (?:yes|no)\\b)`,
  "giu",
);
const ordinal = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:the )?(?:${ordinals.join("|")}|last|former|latter)(?: (?:one|question|point))?(?![\\p{L}\\p{N}])(?! (?:name|of|sheet|row|line|word|button)s?\\b)`,
  "giu",
);
/**
 * Words with figures where they name points in words: "three yes", "yes to the first". A point is the first of those
 * asked only where nothing else stood beside them.
 */
export function withNumbers(words: string, open: readonly number[], others: number): string {
  const figures = (list: string): string =>
    list.replace(new RegExp(`\\b${word}\\b`, "giu"), (one) => String(spelt.indexOf(one.toLowerCase()) + 1));
  const plain = words.replace(before, figures).replace(after, figures);
  return plain.replace(ordinal, (whole) => {
    const [, said = ""] = /(first|second|third|fourth|fifth|last|former|latter)/iu.exec(whole) ?? [];
    const which = said.toLowerCase();
    if (others > 0 || open.length < 2) {
      // "Your second question" is 2 where no other one can be the second.
      const numbered = ordinals.indexOf(which) + 1;
      const isSure =
        /question/iu.test(whole) && open.includes(numbered) && (open[numbered - 1] ?? numbered) === numbered;
      return isSure ? String(numbered) : whole;
    }
    if (/former|latter/.test(which))
      return open.length === 2 ? String(open[which === "former" ? 0 : 1]) : whole;
    const number = which === "last" ? open.at(-1) : open[ordinals.indexOf(which)];
    return number === undefined ? whole : String(number);
  });
}

/** "Yes and yes" says the same of as many questions as there are. "Yes and no" may be neither. */
export function isOfEach(words: string, open: readonly number[]): boolean {
  const each = words
    .toLowerCase()
    .replace(/(?<=\b(?:no|nope)),? sorry$/u, "")
    .split(/(?:,? and| n|,|;| ?\/| ?\+) ?/iu);
  const isPlain = each.every((one) => /^(?:yes|no|yep|nope|ja|nein|oui|non)$/iu.test(one));
  return isPlain && open.length > 1 && each.length === open.length && new Set(each).size === 1;
}
