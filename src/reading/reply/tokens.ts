import { memoized } from "../../trade/memoized.ts";
import { friendly } from "./harmless.ts";
import { type Kind, kindOf, longestPhrase } from "./lexicon.ts";
import { isSomebody } from "./somebody.ts";

/** A word or phrase of a sentence, or what separates such. `from` and `to` are its place in the sentence. */
export interface Token {
  readonly kind: Kind;
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

export const counts: readonly string[] =
  "one two three four five six seven eight nine ten eleven twelve".split(" ");
export const ordinals: readonly string[] = "first second third fourth fifth".split(" ");
const ordinal = /^(?:first|second|third|fourth|fifth|last|former|latter|[1-5](?:st|nd|rd|th))$/u;
const smile = new RegExp(`^(?:${friendly}|[:;]-?\\)|<3)$`, "u");
const piece = new RegExp(
  `\\d+(?:\\.\\d+)+|\\d{1,2}(?:st|nd|rd|th)(?!\\p{L})|\\d+\\p{L}*|'s(?!\\p{L})|'n(?!\\p{L})|\\p{L}[\\p{L}\\p{M}]*(?:[-'.]\\p{L}+)*|${friendly}|:-?\\)|[=-]+>|\\.{2,}|[.!]+|\\S`,
  "gu",
);

/** A line without short forms, its bullet, and signs that only stress. What is left is read word by word. */
export const plain = memoized((line: string): string => {
  return (
    line
      .replace(/^\W*(?:point|question|no\.?|number|item)\W+(?:answer|reply|yes\/no)\W*$/iu, "answers")
      .replace(/^(?:✅|✔|☑)\uFE0F?\s*(?=\d)/u, "")
      .replace(/\bn[º°] ?(?=\d)|№ ?/giu, "number ")
      // Before the next step, which makes a blank and an accent of ´.
      .replace(/[’`´‘]/gu, "'")
      .normalize("NFKC")
      .replace(/[\uFE0F\u20E3]/gu, "")
      .replace(/["“”„«»*_]+/gu, " ")
      .replace(/^\s*(?:[-•·–^]|[=-]+>|→|⇒)\s+/u, "")
      .replace(/^\s*\[\p{Lu}{2,4}\]:?\s+/u, "")
      .replace(/^[a-d][).]\s+/iu, "")
      .replace(/\bw\/ ?(?=\p{L})/giu, "with ")
      .replace(/^re ?[:.] ?/iu, "re ")
      .replace(
        /\b(?:s\.? ?no|s\.? ?nr|s\/n|sr\.?(?: ?no)?|sl\.?(?: ?no)?)\.? ?(?=\d{1,3}(?!\d))/giu,
        "number ",
      )
      .replace(/^(that|it)(?:'d| would) be (?=(?:an? )?(?:yes|no)\b)/iu, "$1 is ")
      .replace(
        /\b(?:nos?|nrs?|n|num|qs?|ques|quest|pts?|pkt|ad|punkt|question|point|item|ref|itm)\.\s?(?=[#([]?\d)/giu,
        "number ",
      )
      .replace(/(?<=\d) n (?=\d{1,3} (?:both|are)(?!\p{L}))/giu, " and ")
      // "2 NO typo" denies, "no typo" may not.
      .replace(
        /(?<=(?:^|[\s(#])\d{1,3}\W{0,3}NO) (?=(?:typo|mistake|error|misspel\p{L}*|slip)(?!\p{L}))/gu,
        ", ",
      )
      .replace(/\b(?:q|no|nr|pkt)(?=\d)/giu, "number ")
      .replace(/(?<=\d)\.(?=:)/gu, "")
      .replace(
        /^yes ?(?:x|×|times) ?(?:3|three)[.!]*$|^(?:3 ?(?:x|×|times)|three times|triple) yes[.!]*$/iu,
        "all three yes",
      )
      .replace(/^(?:a|punto|ponto) ?(?=\d{1,3}\b)/iu, "number ")
      .replace(/(?<=^|[.;,/]\s*)no (?=\d{1,3} ?[:=)-] ?(?:yes|no)\b)/giu, "number ")
      .replace(/^no (?=\d{1,3} (?:is|are) )/iu, "number ")
      .replace(/(?<=s)'(?=\s)/giu, "")
      .replace(/(?<=\d)'?s (?=an? )/giu, " is ")
      .replace(/(?<=\d)(?=(?:yes|no|ja|oui|s[ií]|[yn])\b)/giu, " ")
      .replace(/\bsince (?:the )?(?:1[4-9]|20)\d\ds?\b/giu, "for generations")
      .replace(/\b(?:[Dd]r|[Mm]rs?|[Mm]s|[Mm]iss|[Pp]rof|[Ss]t)\.? \p{Lu}\p{Ll}+/gu, "the owner")
      .replace(/\by+e+s+s+\b|\byes+\b/giu, "yes")
      .replace(/\bno{2,}\b/giu, "no")
      .replace(/\b(it|that|this|he|she|what|there|here)'?s(?= )/giu, "$1 is")
      .replace(/(?<=\p{L})'s\b/gu, " 's")
      .replace(/\bi ?'?m\b(?! text)/giu, "i am")
      .replace(/\b(?:you're|youre)\b/giu, "you are")
      .replace(/\b(?:they're|theyre)\b/giu, "they are")
      .replace(/\bwe're\b/giu, "we are")
      .replace(/\b(i|we|you|they)'?ve\b/giu, "$1 have")
      .replace(/\bdon'?t\b/giu, "do not")
      .replace(/\b(is|are)n'?t\b/giu, "$1 not")
      .replace(/(?<=\p{L}) x+[.!]*$/u, "")
      .replace(/^(morning|afternoon|evening)(?=[,.! ])/iu, "hello")
      .replace(/\s+/gu, " ")
      .trim()
  );
});

/** The words of a plain line. Every sign, and every word of no known kind, is a token of its own. */
export function tokensIn(line: string, names: ReadonlySet<string>): Token[] {
  const found = [...line.matchAll(piece)].map(({ 0: text, index }) => ({
    low: text.toLowerCase(),
    from: index,
    to: index + text.length,
  }));
  const tokens: Token[] = [];
  for (let at = 0; at < found.length; ) {
    let [kind, size] = kindAt(
      found.slice(at, at + longestPhrase()).map(({ low }) => low),
      names,
    );
    const before = tokens.findLast((one) => one.kind !== "Mark");
    const word = line.slice(found[at]?.from, found[at]?.to);
    if (kind === "Other" && isSomebody(word)) {
      if (before?.kind === "Polite") kind = "Sender";
      // "My colleague Marta", "I spoke with Marcus". Who only says something may be a machine.
      else if (/^(?:Person|Asked|With)$/u.test(tokens.at(-1)?.kind ?? "")) kind = "Person";
    }
    const [from, to] = [found[at]?.from ?? 0, found[at + size - 1]?.to ?? 0];
    const last = tokens.at(-1);
    // Marks that follow each other separate no more than one.
    if (kind === "Mark" && last?.kind === "Mark") tokens.pop();
    tokens.push({ kind, text: line.slice(from, to).toLowerCase(), from, to });
    at += size;
  }
  return tokens;
}

/** The kind of the longest phrase that some words begin with, and how many words it has. */
function kindAt(words: readonly string[], names: ReadonlySet<string>): readonly [Kind, number] {
  for (let size = words.length; size > 0; size--) {
    const kind = kindOf(words.slice(0, size).join(" "));
    if (kind !== undefined) return [kind, size];
  }
  const [word = ""] = words;
  return [names.has(word) ? "Sender" : kindOfOne(word), 1];
}

function kindOfOne(word: string): Kind {
  if (/^\d{1,4}$/u.test(word)) return "Num";
  if (counts.includes(word)) return "Count";
  if (ordinal.test(word)) return "Nth";
  if (smile.test(word)) return "Smile";
  const one = word.endsWith("s") ? kindOf(word.slice(0, -1)) : undefined;
  if (one === "Person" || one === "Thing") return one;
  if (/^[.!;]$|^!+$/u.test(word)) return "Stop";
  if (/^(?:[,:=|•·~()[\]{}<>【】〈〉–—→⇒➜➡/…-]|[=-]+>|\.{2,})$/u.test(word)) return "Mark";
  return "Other";
}
