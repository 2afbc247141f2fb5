import {
  action,
  all,
  asIs,
  at,
  be,
  changed,
  comes,
  correction,
  counts,
  detail,
  idle,
  inCapitals,
  inFinish,
  it,
  much,
  noWord,
  numbers,
  onlyOne,
  owns,
  pair,
  person,
  reason,
  rest,
  sheet,
  sheetName,
  short,
  should,
  shows,
  tongue,
  twoOfThem,
  when,
  words,
  wrong,
  yes,
  yesWord,
} from "./clause-words.ts";
import { explains } from "./explains.ts";
import { isNearQuestion } from "./talk.ts";

/** The points that a clause is about: their numbers, or a word for some, with how many they are if it says so. */
export type Of =
  | readonly number[]
  | { readonly word: "all" | "both" | "rest" | "last" | "it"; readonly count: number | undefined };

/** What a clause of a reply says or does. */
export type Act =
  | {
      readonly kind: "says";
      readonly of: Of;
      readonly is: boolean;
      /** It is a no only where a sheet comes: "2 is a typo". */
      readonly needsSheet: boolean;
      /** It is said only where nothing else was answered, and there are no points to mend. */
      readonly alone?: boolean;
    }
  /** "Yes, yes and no": the answers to all questions in turn. */
  | { readonly kind: "each"; readonly each: readonly boolean[] }
  /** "Apart from 2", behind what is said of all. */
  | { readonly kind: "except"; readonly of: readonly number[] }
  /** A sheet comes, perhaps for these points. */
  | { readonly kind: "sheet"; readonly of: readonly number[]; readonly needsSheet: boolean }
  /** What stands on a sheet that comes: words of legends, beside what was mended there. */
  | {
      readonly kind: "carries";
      readonly words: readonly string[];
      /** It stands right behind what tells of the sheet: "with the city". */
      readonly isBehind?: boolean;
    }
  /** "My typo", "good catch on 2". */
  | { readonly kind: "owns"; readonly of?: readonly number[] }
  /** "It should be LOBBY", and the words alone. */
  | { readonly kind: "should" | "words" }
  /** "2 is French": the next clause tells whether it is right. */
  | { readonly kind: "about"; readonly of: readonly number[] }
  /** "Go ahead". */
  | { readonly kind: "go" }
  /** Why something is meant so. */
  | { readonly kind: "why" }
  | { readonly kind: "idle" };

/** A clause of one shape. The pattern is sticky. */
export interface Form {
  readonly pattern: RegExp;
  readonly act: (found: RegExpExecArray) => Act | undefined;
  readonly fits?: Fits;
  /** It fits as soon as it does one of the questions that were spoken of. */
  readonly any?: true;
  /** Behind it a clause has to end. */
  readonly ends?: true;
}

/** Whether words fit the question that they are said of. */
export type Fits = (question: string, found: RegExpExecArray) => boolean;

export type Groups = Record<string, string | undefined>;

export const form = (
  source: string,
  act: (groups: Groups, whole: string) => Act | undefined,
  more: Pick<Form, "fits" | "any" | "ends"> = {},
): Form => ({
  pattern: new RegExp(`(?:${source})(?![\\p{L}\\p{N}])`, "iuy"),
  act: ({ groups = {}, 0: whole }) => act(groups, whole),
  ...more,
});

const longestRange = 50;
const range = /(\d{1,3}) ?(?:[-–]|to|thru|through) ?(\d{1,3})/giu;

/** The numbers in words about points: "1 to 3", "number two". */
export function numbersIn(said = ""): number[] {
  const ranges = [...said.matchAll(range)].flatMap(([, first, last]) => {
    const length = Number(last) - Number(first) + 1;
    return length < 1 || length > longestRange ? [-1] : Array.from({ length }, (_, i) => Number(first) + i);
  });
  const single = [...said.replace(range, " ").matchAll(/\d{1,3}/gu)].map(([digits]) => Number(digits));
  const named = [...said.matchAll(/number ([a-z]+)/giu)].map(
    ([, word = ""]) => counts.indexOf(word.toLowerCase()) + 1,
  );
  return [...ranges, ...single, ...named.filter((one) => one > 0)];
}

const isRest = new RegExp(`^(?:${rest})$`, "iu");

/** "Both", "all three", "the other two". */
export function wordIn(said = ""): Of {
  const [one] = /(?<!\p{L})(?:two|three|four|five|six)(?!\p{L})|\d/iu.exec(said) ?? [];
  const count = one === undefined ? undefined : counts.indexOf(one.toLowerCase()) + 1 || Number(one);
  return { word: isRest.test(said) ? "rest" : /both/iu.test(said) ? "both" : "all", count };
}

export const ofIt: Of = { word: "it", count: undefined };
export const saying = (of: Of, is: boolean, needsSheet = false): Act => ({
  kind: "says",
  of,
  is,
  needsSheet,
});
export const sheetFor = (of: readonly number[], needsSheet = false): Act => ({
  kind: "sheet",
  of,
  needsSheet,
});

/** No words of a legend, even in capitals. */
const shouted =
  /^(?:yes|no|not|never|stop|hold|wait|cancel|asap|urgent|rush|call|phone|please|pls|don'?t|capitals|caps|bold|order)$/iu;
/** Words in capitals, or a name: what shall stand on a sheet. */
export const isWritten = ({ words: said = "" }: Groups, each: RegExp): boolean =>
  said
    .replace(/ (?:with(?:out)? (?:an? )?\p{Lu}{1,6}|(?:as|in) (?:one|two) words?|now|\d)$/u, "")
    .replace(
      /(?<=\p{Lu} )the word|the word(?= (?:\p{Lu}(?!\p{Ll})|and \p{Lu}))|(?<=\p{Lu} and )the word$/gu,
      "W",
    )
    .split(/ (?:and )?/u)
    .every((word) => each.test(word) && !shouted.test(word));
export const capital = /^["“]?\p{Lu}/u;
export const capitals = /^["“]?\p{Lu}[^\p{Ll}]*$/u;

/** Names of sheets, and times, in which numbers are no points. */
const bare = (said: string): string =>
  said.replace(new RegExp(sheetName, "giu"), "sheet").replace(/in \d{1,2} (?:minutes?|hours?)/giu, "soon");

const subject = `(?:(?:the )?(?:words?|wordings?|spellings?|names?|legends?) (?:in|of|for|on) )?(?:${at}:? )?(?<of>${numbers})`;
export const mark = String.raw`(?: ?[:=)\]–—-]+ ?|, | )`;
const please = "(?:(?:please|pls|kindly|just|so) )?";
const so = "(?:(?:so|and|hence) )?";
const them = "(?:it|them|these|those|this|that)";
const done = `(?:(?:is|are|was|were) )?(?:now )?(?:corrected|fixed|revised|shortened|amended)(?: and (?:attached|enclosed|sent))?(?: too| as well| also)?(?: (?:on|in) (?:the )?(?:(?:(?:same|new|attached) )?(?:sheets?|one)|attached))?`;
const mended = `(?:fixed|fix|corrected|correct|shortened|shorten|redid|redone|redo|mended|sorted)`;

/** Words that fit questions of one kind, known by what these say. */
export const atCapitals: Fits = (question) => /are in capitals, such as/u.test(question);
export const atSeveral: Fits = (question) => /asks? for several\. A sheet orders one/u.test(question);
export const atSame: Fits = (question) => /^“[^”]+” stands (?:on|twice)/u.test(question);
/** A word that does not fit is the one that we took it for. */
const atSpelling: Fits = (question, { groups }) =>
  /^“[^”]+” .*looks misspelt/u.test(question) &&
  question.includes(` ${(groups?.["full"] ?? "").toUpperCase()}`);
export const atFinish: Fits = (question, { groups }) =>
  /^The (?:finish|device|plate) is /u.test(question) &&
  new RegExp(`(?: is |and )${RegExp.escape(groups?.["finish"] ?? "?")}(?:[ ,.])`, "u").test(question);

export const atNear: Fits = (question, { groups }) => {
  const [, word = ""] = /^“([^”]+)” .*looks misspelt/u.exec(question) ?? [];
  return isNearQuestion(groups?.["near"] ?? "", [word.toLowerCase()]);
};

const isNo = new RegExp(`^${noWord}$`, "iu");
const yesOrNo = new RegExp(`(?<!\\p{L})(?:${yesWord}|${noWord})(?!\\p{L})`, "giu");
/** "Yes, yes and no": not all the same, and at least three. "Yes and no" is a saying. */
const each = `(?<each>(?:${yesWord}|${noWord})(?:(?: ?[,/;]| and|, and)? (?:${yesWord}|${noWord})){2,9})`;
const eachIn = (said = ""): boolean[] => [...said.matchAll(yesOrNo)].map(([one]) => !isNo.test(one));

const few = String.raw`(?:the|our) \p{L}+(?: \p{L}+){0,2}`;

/** "2 is right", "both, 2 and 3, are right", "the rest are right". */
const sayings = (is: boolean, what: string, needsSheet = false): Form[] => [
  form(`${subject}${mark}${what}`, ({ of }) => saying(numbersIn(of), is, needsSheet)),
  form(
    `(?:${all}|${rest})(?: ?\\((?<of>${numbers})\\)${mark}|[:,] (?<also>${numbers})${mark})${what}`,
    ({ of, also }) => saying(numbersIn(of ?? also), is, needsSheet),
  ),
  form(`(?<of>${all}|${rest})(?: |, |: )${what}`, ({ of }) => saying(wordIn(of), is, needsSheet)),
];

export const forms: readonly Form[] = [
  form(
    each,
    ({ each: said }) => {
      const all = eachIn(said);
      return new Set(all).size > 1 ? { kind: "each", each: all } : undefined;
    },
    { ends: true },
  ),
  ...sayings(true, yes),
  ...sayings(false, noWord),
  ...sayings(false, wrong, true),
  form(`${subject}${mark}(?:${should}|${correction}|${action})`, ({ of, words: said }) =>
    said === undefined || isWritten({ words: said }, capital)
      ? saying(numbersIn(of), false, true)
      : undefined,
  ),
  form(`${subject} ${be} not`, ({ of }) => saying(numbersIn(of), false, true), { ends: true }),
  // "No, it is not a typo": what is denied is the slip.
  form(
    `no,? ${it} ${be} (?:not (?:a |an )?(?:mistakes?|typos?|errors?|misspell?ings?|misspelt|misspelled|misprints?|spelling (?:mistake|error))|(?:just |exactly )?how (?:it is|they are|you do it) (?:spelled|spelt|written))`,
    () => saying(ofIt, true),
    { ends: true },
  ),
  // "All four corrected".
  form(`(?<of>${all})(?: (?:is|are|were|have been))?(?: now)? (?:${done}|${action})`, ({ of }) => ({
    kind: "says",
    of: wordIn(of),
    is: false,
    needsSheet: true,
    alone: true,
  })),
  // "Yes to 1, 3 and 4", "it is good for 1", "no on 2".
  form(
    `(?:(?:it|that) is )?(?:(?:${yesWord}|good to go|no (?:worries|problems?|mistakes?|typos?|changes?))(?: (?:to|on|for|with|in))?|(?:good|fine|right|correct|ok|okay) (?:to|on|for|with|in)) (?<of>${numbers})`,
    ({ of }) => saying(numbersIn(of), true),
  ),
  form(
    `(?:${yesWord}|good to go|good|fine|ok) (?:to|on|for|with) (?<of>${all}|${rest})(?: ${asIs})?|${yesWord},? (?<both>both|all)(?: of (?:them|it))?`,
    ({ of, both }) => saying(wordIn(of ?? both), true),
  ),
  form(`${noWord} (?:to|on|for) (?<of>${numbers})`, ({ of }) => saying(numbersIn(of), false)),
  form(
    `(?:the |our |my )?answers? (?:to|for|on) (?<of>${numbers}) (?:is|are|=|:) (?:(?<yes>${yesWord})|${noWord})`,
    ({ of, yes: isYes }) => saying(numbersIn(of), isYes !== undefined),
  ),
  form(`${yesWord} and ${yesWord}`, () => saying(wordIn("both"), true)),
  // "Leave 2 and 3 as they are", "keep them both like that".
  form(`${please}(?:leave|keep|let) (?<of>${numbers}) (?:${asIs}|stand|alone|be)`, ({ of }) =>
    saying(numbersIn(of), true),
  ),
  form(
    `${please}(?:leave|keep|make|cut|engrave) (?:${them} )?(?<of>both|all)(?: of (?:them|it))? (?:${asIs})(?: please)?`,
    ({ of }) => saying(wordIn(of), true),
  ),
  form(`${please}(?:leave|keep|make) ${them} (?:${asIs}|the way i sent (?:it|them))(?: please)?`, () =>
    saying(ofIt, true),
  ),
  form(
    `${so}${please}(?:(?:go ahead|proceed)(?: with (?:it|them|both|all|the order))?(?: (?:and|to) (?:cut|engrave|make|run) (?:it|them|both|all))?(?: ${asIs})?|get on with it(?: now)?|cut (?:them|it))`,
    () => ({ kind: "go" }),
  ),
  // "Ok" without a number may only say that somebody has read it.
  form(`${so}(?:${it})? ?${yes}`, (_, whole) =>
    /^ok(?:ay)?$/iu.test(whole) ? undefined : saying(ofIt, true),
  ),
  form(`${so}${noWord}`, () => saying(ofIt, false)),
  form(`${so}(?:${it} )?${wrong}`, () => saying(ofIt, false, true)),
  form(
    `(?:except|apart from|other than|besides|but|save|aside from|all but)(?: (?:for|on|to))? (?<of>${numbers})`,
    ({ of }) => ({ kind: "except", of: numbersIn(of) }),
  ),
  form(shows, (_, whole) => sheetFor(numbersIn(bare(whole)))),
  form(detail, () => sheetFor([], true), { ends: true }),
  form(`${subject}(?: ?[:.)=–—-]+ ?| )${detail}`, ({ of }) => sheetFor(numbersIn(of), true), { ends: true }),
  // "We will send one sheet for each".
  form(
    `(?:(?:i|we)(?: will| have)? (?:send|sending|sent|attach|attached) )?(?:a|one|1) (?:(?:new|separate|own) )?sheet for each(?: (?:one|station|mark|of them))?(?: (?:${comes}|${when}))*`,
    () => sheetFor([]),
    { fits: atSeveral, ends: true },
  ),
  // "1: new sheet attached", "1 shortened".
  form(
    `${subject}(?: ?[:.)=–—-]+ ?| |, )(?:(?<sheet>${shows}|${comes}(?: ${when})*|${action}(?: and|,) (?:${comes})(?: ${when})*|see att)|(?:${action}|done)(?: ${when})*|${sheet}? ?${done})`,
    ({ of = "", sheet: tells }, whole) =>
      sheetFor([...numbersIn(of), ...numbersIn(bare(whole.slice(of.length)))], tells === undefined),
  ),
  form(
    `(?:(?:i|we)(?: have| will| also)? )?${mended}(?: also)? (?<of>${numbers})(?: (?:on the (?:other|same|new) (?:one|sheet)|too|also|as well|and send (?:it|them)(?: over| again| back)?|${when}))*`,
    ({ of }) => sheetFor(numbersIn(of), true),
  ),
  form(`${subject}${mark}(?:${owns})`, ({ of }) => ({ kind: "about", of: numbersIn(of) })),
  form(owns, (_, whole) => ({ kind: "owns", of: numbersIn(whole) })),
  form(`${should}|${correction}`, (groups) => (isWritten(groups, capital) ? { kind: "should" } : undefined)),
  form(
    `now ${words}(?: (?:on|over|in) (?:two|both) rows)?|(?:${person}) (?:want|wants|wanted|need|needs) ${words}(?: (?:as|in) one word)?|${words}(?: (?:is|would be) (?:correct|right|the right (?:word|spelling)))?(?: (?:with|without) (?:an? )?\\p{L}{1,6})?`,
    (groups) => (isWritten(groups, capitals) ? { kind: "words" } : undefined),
  ),
  form(
    pair,
    (groups) =>
      groups["stem"] === "the word" || isWritten(groups, capitals) ? { kind: "words" } : undefined,
    { ends: true },
  ),
  // "One is the north aisle and the other the south".
  form(
    `one (?:is|for) (?<one>${few}) and (?:the other|the second|one)(?: (?:is|for))? (?<other>${few})`,
    ({ one, other }) =>
      [one, other].every((what) => explains(`it is ${what}`)) ? { kind: "should" } : undefined,
    { fits: atSame, ends: true },
  ),
  form(`${subject} ${be} ${much}(?:in )?${tongue}(?: words?| names?)?`, ({ of }) => ({
    kind: "about",
    of: numbersIn(of),
  })),
  form(`${subject} ${be} (?<what>(?:an?|the|our|his|her|their) \\p{L}[\\p{L}' -]{2,60})`, ({ of, what }) =>
    explains(`it is ${what}`) ? { kind: "about", of: numbersIn(of) } : undefined,
  ),
  // "It is comedor", of COMDOR.
  form(
    `(?:${it} )?(?:is|(?:should|must) (?:be|say|read)) (?<near>\\p{L}{3,20})`,
    () => ({ kind: "should" }),
    { fits: atNear, ends: true },
  ),
  form(changed, () => ({ kind: "words" }), { ends: true }),
  form(inCapitals, () => ({ kind: "should" }), { fits: atCapitals, ends: true }),
  form(inFinish, () => ({ kind: "should" }), { fits: atFinish, ends: true }),
  form(onlyOne, () => ({ kind: "why" }), { fits: atSeveral }),
  form(twoOfThem, () => ({ kind: "why" }), { fits: atSame, any: true }),
  form(short, () => ({ kind: "why" }), { fits: atSpelling, any: true }),
  form(reason, () => ({ kind: "why" })),
  form(idle, () => ({ kind: "idle" })),
];
