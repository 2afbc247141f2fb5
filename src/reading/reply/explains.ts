import { tongue } from "./clause-words.ts";
import { isDangerous } from "./danger.ts";
import { speaksAgainst } from "./doubt.ts";
import { tokensOf } from "./word-bag.ts";

/** In characters. */
const longestReason = 120;

const thing = String.raw`(?:the|our|their|his|her|my|an? approved|approved) (?!old|other|new|last|next|draft|former|first|second)\p{L}+(?: (?:schedule|list|drawings?|plans?|team|office|spec|specs|specification|standard))?`;
const it = String.raw`(?:(?:it|that|this|they|these|both)(?: is|['’]s| are|['’]re)? )?(?:(?:already|all|quite|really|exactly|just|indeed) )*`;
/** What says once more that it is meant so, and who said it. */
const settled = new RegExp(
  `^(?:${[
    String.raw`${it}(?:(?:confirmed|approved|checked|double[- ]?checked|verified)(?: (?:with|by|against) ${thing})?|intentional|deliberate|on purpose|by design|as (?:specified|designed|drawn|scheduled))`,
    `(?:as )?per ${thing}`,
    String.raw`${it}(?:how|what) (?:he|she|they|we|i|${thing}) (?:wants?|wanted|likes?|calls?|spells?|spelled|spelt|writes?|wrote|asked for|ordered|drew)(?: it)?(?: (?:on|for) (?:it|there|them))?`,
    String.raw`(?:i|we) (?:(?:did|have|just|also) )*(?:ask(?:ed)?|check(?:ed)?|double[- ]?checked|called|phoned|rang|confirmed|spoke|talked|verified)(?: (?:it|this|that))?(?: (?:twice|again|him|her|them|(?:(?:with|to) )?${thing}))?(?: (?:today|yesterday|this morning|just now|on the phone|by phone))*`,
    String.raw`(?:just )?(?:asked|checked|double[- ]?checked|called|phoned|rang|confirmed|spoke|talked|verified)(?: (?:it|this|that))?(?: (?:him|her|them|(?:(?:with|to) )?${thing}))(?: (?:today|yesterday|this morning|this am|this afternoon|earlier|just now|on the phone|by phone))*`,
    String.raw`${thing} (?:(?:has|have|just|also) )*(?:confirmed|approved|checked|insists?|insisted)(?: (?:it|this|that|on (?:it|this|that)))?(?: (?:today|yesterday|this morning|just now|on the phone|by phone))*`,
    String.raw`(?:spelled|spelt|written|named|called) (?:(?:just|exactly) )?(?:that way|this way|like that|like this|so)(?: (?:on|in) ${thing})?(?: (?:too|as well|out front))*`,
    "lol|haha|thanks?|thank you|cheers|sorry for (?:the|any) confusion",
  ].join("|")})$`,
  "iu",
);
/** "It is Czech", "these are the owners' dogs": somebody tells what something is. */
const tells =
  /^(?:(?:it|that|this)(?: is|['’]?s)|(?:these|those|they)(?: are|['’]re))(?: (?:really|just|actually|indeed|simply|always))* (?!to |as |for |in |on |from |with )(?=\p{L})/iu;
/** What something is: the words behind "it is the". No word for another one stands in them. */
const what = String.raw`(?!.*(?<!\p{L})(?:old|new|other|another|wrong|last|next|second|former|previous|left|right|top|bottom|upper|lower|same|not|now|one|ones|as|with|without|version|form|so|then|please)(?!\p{L}))\p{L}[\p{L}'’-]*(?:[ ,]+\p{L}[\p{L}'’-]*){0,11}`;
const subject =
  "(?:it|that|this|these|those|they|both|which|the (?:words?|names?)|(?:this|that) (?:one|word|name))";
const tellsThing = new RegExp(
  `^(?:and |yes |because |since |as )*${subject}(?: is| are| was| were|['’]?s|['’]re| means| (?:is|are) (?:called|named)(?: (?:after|for))?)(?: (?:really|just|actually|indeed|simply|always|also|in fact))* (?:the|an?|our|his|her|their|my|what (?:the|our|his|her|their|my|we|they|he|she|people|everyone|everybody)) ${what}$`,
  "iu",
);
/** "It stands for physical therapy", "Italian for a cupboard". */
const meaning = new RegExp(
  `^(?:and |yes |because |since )*(?:${subject} )?(?:stands for|(?:(?:is|are|['’]s) )?(?:an? )?(?:short|shorthand|abbreviation|acronym|abbrev)(?: for| of)|(?:is|are|['’]s)? ?(?:the |an? )?${tongue}(?: (?:word|name|term|expression))?(?: for| meaning)) ${what}$`,
  "iu",
);
/** Places and people, and what words are called. Nothing of them is asked for by saying what something is. */
const neutral =
  /(?<!\p{L})(?:rooms?|lobby|foyer|kitchen|den|pantry|cellar|basement|attic|garage|shed|hall|hallway|lounge|salon|bath\p{L}*|bed\p{L}*|closet|porch|patio|study|library|wing|floors?|doors?|walls?|windows?|snug|parlou?r|nursery|studio|bar|gym|annexe?|front|back|bit|words?|things?|terms?|names?|spellings?|abbreviations?|acronyms?|sites?|house|home|building|pool|theat(?:re|er)|shop|store|school|church|chapel|hotel|clinic|hospital|boat|yacht|barn|cabin|cottage|tower|restaurant|owners?|clients?|customers?|landlord|tenants?|architects?|stone|side|end)(?!\p{L})/giu;
/** "It is what the staff call the front room". */
const called = new RegExp(
  `^${subject}(?: is|['’]?s) what (?:the |our |his |her |their |my )?\\p{L}+ (?:all |always )?(?:calls?|names?)(?= the | our )`,
  "iu",
);
/** What "it is" may ask for or take back. */
const turns =
  /(?<!\p{L})(?:joke|gamble|bet|risk|compromise|had|bad|being|temp|trial|lie|test|trick|prank|placeholder|question|problem|pity|shame|mess|rush|must|need|wish|change|revision|option|idea|request|order|matter|way|reason|point|sample|draft|temporary|please|should|would|could|want\p{L}*|like\p{L}*|prefer\p{L}*)(?!\p{L})/iu;

const tellsWhat = (said: string): boolean =>
  !turns.test(said) &&
  ((meaning.test(said) && !speaksAgainst(said)) ||
    (tellsThing.test(said) &&
      !isDangerous(
        said
          .replace(called, "it is a")
          .replace(neutral, "cat")
          .replace(/ (?:by|beside) (?=(?:the|our|their|his|her|my) )/gu, " near "),
      )));

/** Whether a word of a reason is of no danger. Places and people are not. */
export const tellsOnly = (word: string): boolean =>
  word.length === 1 || (!turns.test(word) && !isDangerous(word.replace(neutral, "cat")));

/** "Or a cuddle", behind what something is. */
function isOr(said: string): boolean {
  const [, what = ""] = /^or ((?:an?|the) .*)$/iu.exec(said) ?? [];
  return what !== "" && !isDangerous(what) && tellsWhat(`it is ${what}`);
}

/** Whether what stands behind a yes, or in a sentence below it, tells only why. */
export function explains(tail: string): boolean {
  if (tail.length > longestReason) return false;
  return tail
    .replace(/:-?\)$/u, "")
    .replace(/,? (?:sadly|unfortunately|lol|honestly|believe it or not|of all things)[.!]*$/iu, "")
    .split(/[.,!;()[\]]+\s*|\s[–—-]+\s|\s+(?:and|because|since) (?=(?:it|that|this|they|these)(?:['’]|\s))/u)
    .map((one) => one.trim())
    .every(
      (one, i) =>
        one === "" ||
        settled.test(one) ||
        (i > 0 && isOr(one)) ||
        (tells.test(one) && !turns.test(one) && !isDangerous(one)) ||
        tellsWhat(one),
    );
}

/** "Its", "it stands for", "the word is short for", "=". */
const leads =
  /^(?:(?:and|because|yes) )*(?:(?:it|that|this|the word)(?: is|['’]?s)?|is)? ?(?:=|stands for|means|for|(?:just )?(?:an? )?(?:short|abbreviation|acronym)(?: for| of)?)? ?(?:the )?(?=\p{L})/iu;

/** In letters. */
const shortestPart = 3;

/**
 * "Mezzanine" for MEZZ, in small letters: a word that goes on where the one in question was cut off. "For phlebotomy"
 * may tell where it belongs.
 */
function isWrittenOut(said: string, asked: readonly string[]): boolean {
  const [, word = ""] =
    /^[^\p{L}]*(\p{Ll}{6,20})[^\p{L}\d?]*$/u.exec(
      /\bfor\b(?<!\b(?:stands|short) for)/iu.test(said) ? "" : said.replace(leads, ""),
    ) ?? [];
  return writesOut(word, asked);
}

/** Whether a word goes on where one in question was cut off. */
export function writesOut(word: string, asked: readonly string[]): boolean {
  return asked.some(
    (one) => one.length >= shortestPart && word.startsWith(one) && word.length - one.length >= shortestPart,
  );
}

/** Whether words only spell out a word that was asked about: "high intensity interval training" for HIIT. */
export function spellsOut(said: string, asked: readonly string[]): boolean {
  const tokens = tokensOf(said.replace(leads, ""));
  const initials = tokens.map(([first = ""]) => first).join("");
  return (tokens.length > 2 && asked.includes(initials)) || isWrittenOut(said, asked);
}

/** "Tack room", where TACK is in question: the very word, which may read "the word", and what kind of place it names. */
export function namesMore(said: string, asked: readonly string[]): boolean {
  const tokens = tokensOf(said.replace(/^(?:the )?the word(?!\p{L})/u, "word"));
  const isAsked = (token: string): boolean =>
    (token === "word" && asked.length > 0) ||
    asked.some((one) => [one, `${one}s`].includes(token) || one === `${token}s`);
  const isPlace = (token: string): boolean =>
    /^light(?:s|ing)?$|^lamps?$/u.test(token) || token.replace(neutral, "") === "";
  return (
    /^[\p{Ll} '’-]+$/u.test(said.trim()) &&
    tokens.length > 1 &&
    tokens.length <= mostAround &&
    tokens.some(isAsked) &&
    tokens.every((token) => isAsked(token) || isPlace(token))
  );
}

/** In words. */
const mostAround = 3;
