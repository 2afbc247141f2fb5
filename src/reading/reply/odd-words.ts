import { slips } from "../../lettering/slips.ts";
import { isPlain, plainWords } from "./courtesy.ts";
import { tokensOf } from "./word-bag.ts";

/** Sentences that speak of sending something, of a place or of what is known: a name in them says what it is for. */
const frame =
  /[◆◇○]|\b(?:attach\w*|attch\w*|enclos\w*|sheets?|forms?|files?|pdfs?|pfa|here (?:is|are|you|we)|here'?s|forward(?:ed|ing)|send(?:ing)?|sent|resend(?:ing)?|orders?|plates?|devices?|stations?|follow(?:s|ing)?)\b/iu;

/** What stands behind the name of a place, or before it. */
const places = new Set(
  tokensOf(
    `room rooms hall halls office offices suite suites area areas side desk booth floor wing building house lobby entrance
    door stairs corridor station stations center lounge bar closet lab shop unit`,
  ),
);
const before = new Set(["for", "at", "in", "of", "from", "by", "near"]);

/** One odd word in so many is none: somebody mistyped one that this program does not know. */
const tolerated = 14;

/**
 * Whether a sentence has words that no cover note has. `rest` is what is left of it without facts and courtesies;
 * `named` are words of the subject and of people's names.
 */
export function hasOddWords(sentence: string, rest: string, named: ReadonlySet<string>): boolean {
  const tokens = rest.match(/[\p{L}\p{N}][\p{L}\p{N}'’]*/gu) ?? [];
  const words = tokens.map((token) => token.toLowerCase().replace("’", "'").replace(/'s$/, ""));
  const framed = frame.test(sentence) || frame.test(rest) || words.some((word) => places.has(word));
  const odd = words.filter((word, i) => {
    if (isPlain(word) || named.has(word)) return false;
    // In capitals it may be a legend.
    const isName = (framed || i > 0) && /^\p{Lu}[\p{Ll}\p{N}'’]/u.test(tokens[i] ?? "") && !isNearVerb(word);
    if (!framed) return !isName;
    const isPlace =
      words.slice(Math.max(0, i - 3), i).some((one) => before.has(one)) || places.has(words[i + 1] ?? "");
    return !isName && !isPlace && !isSlip(word);
  });
  return odd.length > Math.floor(tokens.length / tolerated);
}

/** Verbs that nobody may overlook where they are mistyped. */
const verbs = tokensOf("cancel engrave change replace remove delete please ignore switch urgent");

function isNearVerb(word: string): boolean {
  return word.length > 4 && verbs.some((verb) => slips(word, verb) < 3);
}

/** Whether a word is one of a cover note, mistyped. */
function isSlip(word: string): boolean {
  return (
    word.length > 4 &&
    !isNearVerb(word) &&
    plainWords.some((plain) => plain.length > 4 && slips(word, plain) === 1)
  );
}
