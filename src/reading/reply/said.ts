import { withoutAsIs } from "./as-is.ts";
import { isDangerous } from "./danger.ts";
import type { OwnLine } from "./own-lines.ts";
import { plain, tokensIn } from "./tokens.ts";
import { keyOf, type Points, type Said, type Way, waysIn } from "./ways.ts";

/** In characters. Nobody answers in so long a line. */
const longestAnswer = 320;
/** It may be a joke, or the number a size. */
const unclear = /[;:]-?[(DPpO/]|;-?\)|(?<![“"'‘\d])\d{1,4}["″′'](?!\p{L})/u;
/** In “typ of 4” a number is no size. */
const quoted = /(?<=^|[\s(])"(?=\p{L})[^"]{2,40}"/gu;
/** "Yes, I got your question" answers nothing, where no number stands beside it. */
const acknowledges =
  /\b(?:got|received|saw|seen|see|read|know|understand|asked|told|looked|(?<!\b(?:to|for|on) (?:the|your) )questions?)\b|^\W*(?:oh|ah|aha)\b/iu;
const plainly =
  /\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|first|second|third|fourth|fifth|last|both|all|each|everything|right|correct|correctly|fine|intended|intentional|meant|stands|typed)\b/iu;
/** Who is sorry, and not for a delay, may agree that the word is wrong. */
export const regrets =
  /\b(?:sorry|apolog\p{L}+|excuse|pardon|forgive)\b(?!.*\b(?:delay|late|wait|long|slow|missed|confusion|trouble|inconvenience|bother\p{L}*|short)\b)/iu;

/** "2 correct please" may ask to have it corrected. "Yeah right" is said of what nobody believes. */
const eitherWay =
  /\b(?:right|correct|proper|real|true|actual) (?:words?|names?|spellings?|legends?|ones?) (?:is|are|stands?) (?:on|in|at|with)\b|\bto be (?:checked|verified|cleared|discussed|agreed|confirmed|approved|decided|reviewed)\b|\byes\b.*\byes\b.*\bx ?\d|\bsame as (?:its?|it's|that|this)\b|(?<!\b(?:is|are|'?s|both|all|yes|as|still|quite|just|absolutely|perfectly) )\b(?:correct|right),? (?:pls|plz|please)\b|\b(?:yeah|yea|ya|yep),? right\b/iu;

/** "No 2 yes, 3", "3 yes 2": of the last nobody knows what it is, and the first of the former may be number 2. */
const leftOpen =
  /^\W*\d{1,3} (?:yes|yep|yeah|yup) \d{1,3}\W*$|\bno\.? ?\d{1,3}[:,]? (?:yes|yep|yeah|yup|ok|okay|correct|right),? (?:and |& )?\d{1,3}(?=\s*(?:[.,;!]|$))/iu;

/** "3 no, leave it like it is" may mean that nothing is wrong with it. */
const noThatKeeps =
  /\b(?:no|nope|nah)\b(?:(?!\b(?:sheets?|forms?|attach\p{L}*|enclos\p{L}*|was|had)\b|[\d;]).){0,30}?\b(?:as (?:it )?(?:is|typed|written|stands)|like it is|keep it|stays?|leave it|it'?s? (?:is )?(?:right|correct|fine|ok|okay|good)|(?:(?<!(?:^|[.,;:!–-] |\bno )(?:i|we) )(?:meant|intended)|(?:meant|intended)(?= (?:it|so|that|this|exactly|just|as|like|for|to)\b))(?! to (?:be|say|read|type|write|put) (?!like|so|this|that|there|as|it))|intentional|(?:family|last|proper|brand|trade) name|sur ?name)\b/iu;

/** Whether a line can be read in two ways, or may be a joke. */
export function isUnclear(line: string): boolean {
  return [unclear, eitherWay, leftOpen, noThatKeeps].some((either) => either.test(line.replace(quoted, " ")));
}

const odd =
  "(?:a bit |a little |very |really |so |kind of |rather |pretty |quite )?(?:odd|strange|funny|weird|unusual|misspelt|misspelled|curious|peculiar|like (?:a |an )?(?:typo|mistake|error|misprint|misspelling))";
const looks = `(?:looks?|sounds?|reads?|seems?|(?:is|are)|(?:does|do|may|might) (?:look|sound|seem))`;
const oddWord = `(?:odd|strange|funny|weird|unusual|curious|peculiar|crazy|silly) (?:name|word|spelling|one|legend)s?`;
/** What somebody grants before a "but". What follows the "but" holds. */
const concession = new RegExp(
  `(?<=^|[.!;,]\\s*)(?:${[
    `(?:(?:yes|yeah),? )?(?:(?:i|we) (?:know|agree|see|admit|understand|get|grant)(?: that)?,? )?(?:it|they|this|that|these|both) ${looks} ${odd}(?: to (?:us|me|you)(?: too| as well)?)?(?:,? (?:i|we) (?:know|agree|admit)|,? i'?ll give you that)?`,
    `(?:looks?|sounds?) ${odd}(?:,? (?:i|we) (?:know|agree|admit))?`,
    `(?:(?:i|we) (?:know|agree),? )?(?:(?:it|this|that) is )?(?:a |an )?(?:very |really )?${oddWord}(?:,? (?:i|we) (?:know|agree|admit))?`,
    `(?:(?:very |really )?(?:good|nice|great|sharp) (?:catch|spot|eyes?|question|thinking|one|find)|well (?:spotted|caught|seen)|fair (?:question|enough|point))(?: (?:there|on (?:that|those|it|this)(?: one)?))?`,
    `(?:thanks|thank you)(?: very much| so much)? for (?:checking|asking|double[- ]?checking|catching|noticing|spotting|looking|the check|the careful (?:check|look))(?: (?:it|that|this|them|those|us))?`,
    `(?:i |we )?(?:know|understand|see|get) why you (?:ask|asked|are asking|wonder|check|checked|think so)|(?:i|we) (?:can )?(?:see|understand) (?:the (?:question|doubt)|your (?:question|point|doubt))`,
    `(?:i am |we are )?(?:so |very )?(?:sorry|apologies) (?:for|about) (?:the |my |our )?(?:delay|late (?:reply|answer|response)|wait|slow (?:reply|answer))`,
    `hard to believe|believe it or not|i thought (?:so|the same)(?: too)?|(?:it is |it'?s )?(?:not|no) (?:common|usual|everyday)(?: word| name)?`,
  ].join(
    "|",
  )}),? ?(?:[-–—] ?)?(?:but|though|yet|still|however|although)(?: (?:yes|yeah|indeed|really|still|all the same|nevertheless))?,? (?=\\S)`,
  "iu",
);

/** When somebody was asked, behind a report that names no number. */
const asOfThen = new RegExp(
  String.raw`(?<=^|[.!]\s*)((?:(?!\byes\b)[^.!\d])*?\b(?:confirmed|checked|told|said|asked|talked|spoke|called|phoned|agreed)\b(?:(?!\byes\b)[^.!\d])*?),? when (?:i|we) (?:was|were|got|went|came|stopped|drove|met|saw|called|phoned|spoke|talked|visited)(?: (?:there|him|her|them|at|on|to|by|in|over|back|your|the|my|our|a|with|from|house|home|site|job|office|shop|e-?mail|mail|message|letter|note|questions?|client|customer|owner|this morning|today|yesterday|last night|last week|lunch|meeting|place|phone))*(?=\s*(?:[.,;!]|$))`,
  "giu",
);
/** "It looks like a typo but it is not." */
const noTypo =
  /(?:it |that |this )?(?:looks?|sounds?|reads?) like (?:a |an )?(?:typo|mistake|error|slip),?(?: i know)?,? but (?:it|that|this)(?: is|'s) (?:not|no)(?: one| a typo| a mistake)?(?=\s*(?:[.,;!]|$))/giu;

/** The same where no "but" follows. "It looks like a typo" may mean that it is one. */
const alone = new RegExp(
  `(?<=^|[.!;,]\\s*)(?:and (?:yes,? )?)?(?:(?:i|we) (?:know|agree|admit)(?: that)?,? )?(?:it|they|this|that|these) (?:looks?|sounds?|(?:does|do|may|might) (?:look|sound)) (?:a bit |a little |very |really |so |kind of |rather |pretty |quite )?(?:odd|strange|funny|weird|unusual|curious|peculiar)(?: (?:too|also|as well|to us|to me))*(?:,? (?:(?:i|we) (?:know|agree|admit)|(?:i'?ll|i will) give you that))?(?=\\s*(?:[.,;!]|$))`,
  "giu",
);

/** "I just got off the phone with the owner and he confirmed that questions 2 and 3 are both YES." */
const reported =
  /^([^.!?;:\d]{0,120}?)(?:(?<!\p{L})(?:and|who) )?(?<!\p{L})(?:(?:he|she|they|who|(?:the|our|my) (?:owner|client|customer|homeowner|boss|architect|designer))) (?:(?:has|have|just|also|again) )*(?:confirms?|confirmed|says?|said|tells me|told me|tells us|told us|agrees?|agreed)(?: (?:to me|to us|today|by phone|just now))?(?: that)?[,:]? (?=(?:the )?(?:questions?|points?|items?|numbers?|#) ?\d|#?\d)/iu;

/** "Confirm 1, 2 and 3 all YES." "Per the contractor everything is correct." */
const told =
  /^(?:confirm(?:ed|ing)?[:,]? (?=[#\d][^.;!]*\byes\b[.!]?$)|(?:as )?per (?:the|our|my) (?:owner|client|customer|homeowner|boss|architect|designer|contractor|engineer|gc|pm)[,:]? (?=(?:both|all|everything|they|these)\b))/iu;

/** "The architect confirms 1 and 2." "Owner signed off on both." "Confirmed both as shown." */
const granted =
  /^(?:(?:(?:(?:the|our|my) )?(?:home ?owner|owner|client|customer|boss|architect|designer|contractor|engineer|gc|pm) (?:(?:has|have|just) )*)(?:confirms?|confirmed|approves?|approved|ok'?s|ok'?d|okayed|signed off on)|(?:we |i )?confirm(?:ed|ing)?:?)(?: that)? (?<of>both|all(?: (?:of them|(?:of )?(?:the )?(?:two|three|four|five)))?|#?\d{1,3}(?:(?:,| and|, and| &) #?\d{1,3})*)(?: (?:of )?(?:the )?(?:spellings?|names?|words?|wordings?|legends?))?(?: as (?:shown|typed|written|submitted|drawn|is|they are|they stand))?[.!]*$/iu;

function withoutReport(line: string): string {
  return line
    .replace(granted, (_, of: string) => `${of} correct`)
    .replace(told, "")
    .replace(reported, (whole, before: string) =>
      !isDangerous(before.replace(/(?<!\p{L})off (?=the phone|a call)/u, "").replace(ofPeople, "her"))
        ? ""
        : whole,
    );
}
const ofPeople =
  /(?<!\p{L})(?:the|our|my) (?:owner|client|customer|homeowner|boss|architect|designer)(?!\p{L})/giu;

/** A line without what is granted before a "but", and with "it" where people of India write "the same". */
function withoutGranted(line: string): string {
  return withoutAsIs(line)
    .replace(noTypo, "it is not a typo")
    .replace(concession, "")
    .replace(alone, "thanks")
    .replace(asOfThen, "$1")
    .replace(
      /(?<=^|[.!;,:–—-]\s*)(?:the )?same (?=(?:is|has been|was|stands|are)\b(?! (?:as|for|with|to|in|true|again|here|too)\b))/giu,
      "it ",
    );
}

/**
 * What a line answers. Undefined if a word of it may say anything else, or if it can be read in two ways. `isIdle`:
 * whether a sentence beside an answer says nothing.
 */
export function saidIn(
  own: OwnLine,
  points: Points,
  isIdle: (sentence: string) => boolean,
): readonly Said[] | undefined {
  if (own.line.length > longestAnswer || own.line.includes("?") || isUnclear(own.line)) return undefined;
  const line = withLetters(withoutReport(withoutGranted(plain(own.line))));
  const ways = waysIn(line, own, points, isIdle).filter(isWhole);
  const [way, ...more] = new Map(ways.map((one) => [keyOf(one.said), one])).values();
  if (way === undefined || more.length > 0 || way.said.length === 0 || contradicts(way.said))
    return undefined;
  if (own.under === undefined && acknowledges.test(line) && !plainly.test(line)) return undefined;
  const isSorry = regrets.test(line) && !tokensIn(line, new Set()).some(({ kind }) => kind === "Yes");
  return isSorry && way.said.some(({ is }) => is) ? undefined : way.said;
}

/** Whether something is said to be so, and not so. */
export function contradicts(said: readonly Said[]): boolean {
  return said.some(({ number, is }) => said.some((other) => other.number === number && other.is !== is));
}

/**
 * Whether a line answers nothing new and binds nothing. `last`: what the last answer above it was. Below a yes it may
 * tell the reason, or say once more that it is right.
 */
export function bindsNothing(line: string, names: readonly string[], last: boolean | undefined): boolean {
  if (line.length > longestAnswer || line.includes("?")) return false;
  const none = { open: [0], others: 0, names };
  const ways = waysIn(withoutGranted(plain(line)), { line, afterSeveral: false }, none, () => false);
  return ways.some(({ said, reason }) => said.length === 0 && (last !== undefined || !reason));
}

/** Whether each part of a line stands beside what it needs: a reason beside a yes, and so on. */
function isWhole({ said, bare, reason }: Way): boolean {
  const hasYes = said.some(({ is }) => is);
  return (!reason || hasYes) && bare.every((is) => said.length > 0 && said.every((one) => one.is === is));
}

/** "2y 3n". */
function withLetters(line: string): string {
  const rest = line
    .replace(/^[^:\d]{0,60}:/u, "")
    .replace(/\b(?:number|q|question|thanks|thank you)\b/giu, "");
  return /^(?:[\s(#]*\d{1,3}\)?[\s:.=-]*[yn](?![\p{L}\p{N}])[\s,;.|/]*)+$|^[yn][.!]?$/iu.test(rest)
    ? line.replace(/(?<![\p{L}\p{N}])[yn](?![\p{L}\p{N}])/giu, (letter) =>
        /y/iu.test(letter) ? " yes" : " no",
      )
    : line;
}
