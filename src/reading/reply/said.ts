import { isAmends } from "./amends.ts";
import { bared, isCourtesy } from "./bare-line.ts";
import { isOfEach, withNumbers } from "./named-points.ts";
import type { OwnLine } from "./own-lines.ts";
import { introducesAnswers, plainlySaid } from "./plain-words.ts";
import { sheetsPromisedIn } from "./promises.ts";
import { isReason, somebody, vouched } from "./reasons.ts";
import { isChatter, isThanks } from "./small-talk.ts";
import { besides, good, list, no, unasked, yes } from "./yes-no.ts";

/** The numbers that a line may answer: those that are open, and how many other points there are. */
export interface Points {
  readonly open: readonly number[];
  readonly others: number;
}

/** Longer lines are sentences. */
export const longestLine = 160;

const group = new RegExp(
  `^(?:(?<list>${list}) ?(?:[.):=,–—-]|is(?: an?)?|are|=?>|->|→|,? ?(?:my|our|the) answer is)* ?(?<word>${yes}|${no}|n(?! ?\\d)|(?:too|also|as well|likewise))|(?:leave|keep|engrave|cut) (?<left>${list}) (?:exactly |just )?as (?:it is|is|they are|it stands|they stand|typed|written|shown|drawn|submitted|ordered)|(?:please )?(?:treat|take|count|mark|put) (?<put>${list}) (?:down )?as (?:an? )?(?<as>yes|no)|(?<before>${yes}|${no}) ?(?:to|for|on|pour|zu|:|,|-|=)? ?(?<after>${list})(?: (?:is|are|-|both|all) (?<also>${yes}|${no}))?)(?=$|[\\s,;.])`,
  "iu",
);
const sets =
  "(?:all|both|everything|beides|beide|alle|all of them|both of them|(?:all|both)(?: the| your)? questions|both (?:of )?(?:the |these )?(?:words|names|spellings)|all (?:the )?(?:\\d+|three|four|five|points))";
const everything = new RegExp(
  `^(?:(?<before>${yes}|${no}),? (?:(?:to|for|on) )?(?<set>${sets})(?:${besides}|${unasked})|(?<those>${sets})[:,]? (?:are |is )?(?<word>${yes}|${good}|${no}))$`,
  "iu",
);
/** Where one question is open these are a yes to it. */
const proceed =
  "(?:(?:so|then) )?(?:(?:you )?(?:can|may) )?(?:please )?(?:proceed|go ahead)(?: (?:and )?(?:with (?:it|the order|engraving|production)|engrave(?: it)?))?(?:,? (?:please )?as (?:it (?:is|stands)|is|typed|written|submitted|shown|ordered|drawn|they (?:are|stand)))?";
/** Words that introduce answers and say nothing themselves. */
const found =
  "(?:below|inline|in ?line|above|between (?:the|your) lines|in (?:your|the) text|as follows|in (?:red|blue|green|caps|capitals|bold))";
const leadIn = new RegExp(
  `^(?:${[
    `(?:(?:please )?(?:see|find)|here (?:are|is))(?: (?:my|our|the|your))?(?: (?:answers?|replies|reply|responses?|comments))(?: (?:to|for|on) (?:your|the) (?:questions?|points))?(?: ${found})*`,
    `(?:please )?see ${found}`,
    `(?:my |our |the )?(?:answers?|replies|reply|responses?|comments)(?: are| is)?(?: ${found})+`,
    "answers between(?: the lines)?",
    "sure(?: thing)?|(?:from|by) me|here it is|here they are",
    "(?:my |our |the )?(?:answers?|replies|confirming|confirmation|here you go|here goes|as requested)",
    `(?:please )?find ${found} (?:my|our|the) (?:answers?|replies|reply|comments)`,
    `${somebody} (?:came back|got back|has answered|answered|replied)(?: to (?:me|us))?(?: as follows)?`,
    "with reference to your (?:answer|letter|(?:e-?)?mail|message)(?: of (?:today(?:'s date)?|yesterday))?,? we (?:answer|confirm)(?: as follows)?",
    "(?:meine|unsere) antworten (?:im text|unten)|(?:mes|nos) réponses (?:ci-dessous|dans le texte)",
    "\\W*(?:point|question|no\\.?|number|item)\\W+(?:answer|reply|yes/no)\\W*",
  ].join("|")}) ?:?$`,
  "iu",
);
const answer = new RegExp(`^(?:(?<yes>${yes}|${proceed})|${no})$`, "iu");

const isNo = new RegExp(`^(?:${no}|n)$`, "iu");
const counted = new Map([
  ["three", 3],
  ["four", 4],
  ["five", 5],
]);
const isPlain = /\b(?:yes|no)\b/i;
const again = /^(?:too|also|as well|likewise)$/i;

/** Words that stand before an answer in its sentence: "We confirm 3 yes", "I asked the client and 3 is a YES". */
const introduced = new RegExp(
  `^(?:${[
    "(?:yes|yep|yeah)(?:[,!]| -| (?=\\d)) ?(?=.*\\byes\\b)",
    "(?:(?:i|we)(?: can| hereby)? confirm(?: that)? )?(?:the )?(?:matters?|spellings?|wordings?|words?|legends?|texts?|names?) (?:(?:raised|asked about|in question) )?(?:in|under|at|of) (?=(?:(?:points?|questions?|items?|numbers?|no\\.) ?)?\\d)",
    "(?:i|we) (?=confirm)",
    "(?:(?:please )?(?:find|see)|here is) (?:my|our|the) (?:answer|reply)(?: to your questions?)?: ",
    `${vouched},? (?:so|and so|therefore|hence)[:,]? (?=(?:yes|no)\\b|\\D{0,12}\\d)`,
    `after (?:checking|speaking|talking) (?:with|to) ${somebody}[:,] `,
    `${somebody} (?:says?|confirms|confirmed)(?: that)?:? (?=(?:yes|no)\\b|\\D{0,12}\\d)`,
    "(?:(?:(?:i|we)(?: can| hereby| do)?|this is to|just to|to) confirm|confirm(?:ed|ing)?)(?: that)?(?:[:,]| -)? (?=\\D{0,12}\\d)",
    "(?:in (?:reply|response|answer) to|further to|to answer|answering)(?: your| the)? (?:questions?|e-?mail|message|letter|note|query|queries|answer)(?: of (?:today|this morning|yesterday))?[:,] ",
    `(?:(?:i|we)(?:'ve| have)?(?: just)? |just )(?:asked|checked with|spoke (?:to|with)|talked (?:to|with)|heard (?:back )?from|confirmed with) ${somebody}(?:,? and(?: (?:it is|it's))?|[:,]| -) `,
    "(?:(?:i|we)(?:'ve| have)? )?(?:just )?(?:checked|double[- ]checked)(?:,? and|[:,]| -) ",
    "(?:(?:i'm|i am|we're|we are) )?(?:answering|replying to) (?=(?:your |the )?(?:questions?|points?|quer(?:y|ies)|numbers?|items?|no\\.) ?#?\\d)",
    "(?:so|here you go|as requested|(?:my |our |the )?answers?)(?:[:,]| -) ",
    "(?:my|our|the) (?:reply|answer|response|answers|replies|responses) (?:is|are)(?: as follows)?:? ",
    "(?:i am|i'm|we are|we're) (?:pleased|glad|happy) to (?:answer|say|confirm) ",
    "(?:please )?(?:be advised|be informed|kindly note|note)(?: that)? ",
  ].join("|")})`,
  "iu",
);
/** "Neither 3 nor 4 is meant as it stands". */
const neither = new RegExp(`^neither (\\d{1,4}) nor (\\d{1,4}) (?:is|are) ${good}$`, "iu");

export interface Said {
  readonly number: number;
  readonly is: boolean;
}

/** Sentences end here, also in a line such as "4 is yes. Will fix the rest." */
const ends = /(?<=[\p{L})]{2}|\p{L} \d{1,3})(?!(?<=\bn[or])\.\s*(?:\d|answer))[.;!]+\s+/iu;

/** "Please confirm 3" asks. "Both 2" are a count. */
const asksUs =
  /\b(?:please|pls|kindly) (?:confirm|correct|check|approve)\b|\bboth \d{1,3}(?! ?(?:,|and|&|\+|\/|-|n) ?\d)/iu;

/**
 * What a line answers, sentence by sentence. Undefined if a sentence says anything else. `isIdle`: whether a sentence
 * beside an answer says nothing. `isBehind`: an answer stands before it in the line.
 */
export function saidIn(
  own: OwnLine,
  points: Points,
  isIdle: (sentence: string, isBehind: boolean) => boolean,
): Said[] | undefined {
  const line = own.line
    .replace(/\b(dr|mrs?|ms|st)\.(?= \p{Lu}|\s?\d)/giu, "$1")
    .replace(/(?<=\d)\. (?=(?:yes|no)\b(?! ?[-:–]? ?\d))/giu, ": ");
  if (line.length > longestLine || line.includes("?") || asksUs.test(line)) return undefined;
  const among = (sentences: readonly string[]): Said[] | undefined => {
    const said: Said[] = [];
    let [isAnswer, hasReason] = [false, false];
    for (const sentence of sentences) {
      const read = isCourtesy(sentence) ? [] : answersIn(bared(sentence), own, points);
      if (read === undefined && isIdle(sentence, said.length > 0)) continue;
      isAnswer = true;
      const owns = said.at(-1)?.is === false && isAmends(bared(sentence));
      const answers =
        read ?? promisedIn(sentence, own, points, said) ?? (owns ? [] : amongChatter(sentence, own, points));
      if (answers === undefined && !isReason(bared(sentence))) return undefined;
      hasReason ||= answers === undefined;
      said.push(...(answers ?? []));
    }
    // A reason stands beside a yes.
    return isAnswer && (!hasReason || said.some(({ is }) => is)) ? said : undefined;
  };
  // "3 yes Bob": a name, or a last word of thanks.
  const [, before, last] = /^(.+\p{L}{2}[.,!]?)(?: [–-])? (\p{L}+)[.!]?$/u.exec(line) ?? [];
  return (
    among(line.split(ends)) ??
    among(bared(line).split(ends)) ??
    (before !== undefined && last !== undefined && isIdle(last, true) ? among(before.split(ends)) : undefined)
  );
}

/** Where what surrounds an answer may begin or end. */
const joints =
  /(?:,| [–—-]+|[;:]| ?—|\.{2,}) (?=\S)| (?=\()|, ?\(| (?:because|since|as) (?=(?:it|that|this|they|the|he|she)\b)| (?=(?:(?:the |my |our )?(?:boss|client|customer|owner|architect) (?:says|said|confirmed|checked)|(?:ur|you're|you are) good to go)\b)| (?=(?:that'?s|it'?s|it is|that is|this is|is|we|i|my|our|sorry|will|new) )/gu;
const mostJoints = 12;

/** "2 YES - it's an old building", "Hey, on the ladder so short: 3 YES": an answer, and words that say nothing. */
function amongChatter(sentence: string, own: OwnLine, points: Points): Said[] | undefined {
  const at = [...sentence.matchAll(joints)];
  if (at.length > mostJoints) return undefined;
  const parts = at.map(({ index, 0: joint }) => [
    sentence.slice(0, index),
    sentence.slice(index + joint.length).replace(/^\((.*)\)[.!]*$/u, "$1"),
  ]);
  const answering = (words: string): Said[] | undefined => {
    const said = isCourtesy(words) ? undefined : answersIn(bared(words), own, points);
    return said === undefined || said.length === 0 ? undefined : said;
  };
  for (const [head = "", tail = ""] of parts.toReversed()) {
    const said =
      isChatter(tail) || isReason(bared(tail)) || isAmends(bared(tail)) ? answering(head) : undefined;
    // A reason stands beside a yes. Who owns a slip says no.
    const last = said?.at(-1)?.is;
    if (last !== undefined && (isChatter(tail) || (last ? isReason : isAmends)(bared(tail)))) return said;
  }
  for (const [head = "", tail = ""] of parts) {
    const said = isChatter(head) || isThanks(head) || isCourtesy(head) ? answering(tail) : undefined;
    if (said !== undefined) return said;
  }
  return undefined;
}

/**
 * A promised sheet is a no to the points that it names. If it names none it is for what must be mended anyway, as long
 * as there is such a thing.
 */
function promisedIn(
  sentence: string,
  { under }: OwnLine,
  { open, others }: Points,
  said: readonly Said[],
): Said[] | undefined {
  const named = sheetsPromisedIn(sentence);
  if (named === undefined) return undefined;
  const numbers = named.length > 0 || under === undefined ? named : [under];
  if (numbers.length === 0 && others === 0 && said.every(({ is }) => is)) return undefined;
  return numbers.filter((number) => open.includes(number)).map((number) => ({ number, is: false }));
}

function answersIn(bare: string, own: OwnLine, points: Points): Said[] | undefined {
  const { under, afterSeveral } = own;
  const { open, others } = points;
  const words = under === undefined ? withNumbers(bare, open, others) : bare;
  if (leadIn.test(words) || introducesAnswers(words)) return [];
  const all = everything.exec(
    words
      .replace(/^(?:i am|i'm|we are|we're) (?:pleased|glad|happy) to (?:answer|say) /iu, "")
      .replace(/^(?:yes|yep|yeah),? (?=(?:both|all)\b.* (?:are|is) )/iu, ""),
  )?.groups;
  if (all !== undefined) {
    const set = all["set"] ?? all["those"] ?? "";
    const is = !isNo.test(all["before"] ?? all["word"] ?? "");
    // Of points to fix nobody says yes. "Both are right" may mean two of them, and "all" may mean them too.
    const isBoth = /both|beides|beide/i.test(set);
    const count = Number(
      /\d+/.exec(set)?.[0] ??
        counted.get(/three|four|five/i.exec(set)?.[0].toLowerCase() ?? "") ??
        open.length,
    );
    if (count !== open.length) return undefined;
    const isWrongSet = isBoth
      ? open.length !== 2 || (others === 2 && !isPlain.test(words))
      : others > 0 && !/question/i.test(set);
    return isWrongSet || under !== undefined ? undefined : open.map((number) => ({ number, is }));
  }
  if (under === undefined && !afterSeveral && others === 0 && isOfEach(words, open))
    return open.map((number) => ({ number, is: !isNo.test(words.slice(0, words.search(/\P{L}/u))) }));
  const alone = answer.exec(words);
  if (alone !== null) {
    const [only, ...more] = open;
    const number = under ?? (more.length === 0 && others === 0 && !afterSeveral ? only : undefined);
    return number === undefined ? undefined : [{ number, is: alone.groups?.["yes"] !== undefined }];
  }
  const [, lead = "", rest = ""] = /^([^:]{8,}): (.+)$/u.exec(words) ?? [];
  return (
    listedIn(words, under) ??
    listedIn(words.replace(introduced, ""), under) ??
    onlyYes(
      listedIn(
        words.replace(
          /^(?:yes|yep|yeah|yup|aye)(?: please)?(?:(?:[,!]| -) | (?=(?:\d|leave|keep|engrave|cut) ))/iu,
          "",
        ),
        under,
      ),
    ) ??
    listedIn(words.replace(neither, "$1 and $2 no"), under) ??
    (everything.test(lead) ? both(answersIn(lead, own, points), listedIn(rest, under)) : undefined) ??
    plainly(words, own, open)
  );
}

function plainly(words: string, own: OwnLine, open: readonly number[]): Said[] | undefined {
  return plainlySaid(words, own, open)?.flatMap(({ numbers, is }) =>
    numbers.map((number) => ({ number, is })),
  );
}

/** "Yes, 3 is meant as it stands." */
function onlyYes(said: Said[] | undefined): Said[] | undefined {
  return said?.every(({ is }) => is) === true ? said : undefined;
}

/** "All three are meant so: 1 YES, 2 YES, 3 YES". */
function both(one: Said[] | undefined, other: Said[] | undefined): Said[] | undefined {
  return one === undefined || other === undefined ? undefined : [...one, ...other];
}

/** "3 yes, 4 no and yes to 5". */
function listedIn(words: string, under: number | undefined): Said[] | undefined {
  const said: Said[] = [];
  let rest = words;
  while (rest !== "") {
    const found = group.exec(rest);
    if (found?.groups === undefined) return undefined;
    const { list: first, word, left, put, as, before, after, also } = found.groups;
    const answer = left === undefined ? (word ?? as ?? before ?? "") : "yes";
    const is = again.test(answer) ? said.at(-1)?.is : !isNo.test(answer);
    if (is === undefined || (also !== undefined && isNo.test(also) === is)) return undefined;
    const numbers = numbersIn(first ?? left ?? put ?? after ?? "");
    // An answer that names one point and stands under another is not guessed at.
    if (under !== undefined && !numbers.every((number) => number === under)) return undefined;
    said.push(...numbers.map((number) => ({ number, is })));
    rest = rest.slice(found[0].length).replace(/^[\s,;.]+(?:and |und |et |y )?/iu, "");
  }
  return said;
}

function numbersIn(list: string): number[] {
  const found = [...list.matchAll(/(\d{1,4})(?:\s?(?:-|–|to|thru|through)\s?\D{0,12}?(\d{1,4}))?/giu)];
  return found.flatMap(([, from = "", to = from]) => {
    const count = Number(to) - Number(from) + 1;
    // A range that runs backwards, or too far, is none.
    return count < 1 || count > 50 ? [-1] : Array.from({ length: count }, (_, i) => Number(from) + i);
  });
}
