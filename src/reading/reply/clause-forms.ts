import {
  capital,
  capitals,
  type Form,
  form,
  isWritten,
  mark,
  numbersIn,
  ofIt,
  ofThem,
  saying,
  several,
  sheetFor,
  subject,
  wordIn,
} from "./clause.ts";
import {
  action,
  all,
  asIs,
  be,
  changed,
  comes,
  correction,
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
import { atCapitals, atFinish, atNear, atSame, atSeveral, atSpelling, hasLetters, ofFinish } from "./fits.ts";
import { whyForms } from "./why-forms.ts";

/** Names of sheets, and times, in which numbers are no points. */
const bare = (said: string): string =>
  said.replace(new RegExp(sheetName, "giu"), "sheet").replace(/in \d{1,2} (?:minutes?|hours?)/giu, "soon");

const please = "(?:(?:please|pls|kindly|just|so) )?";
const so = "(?:(?:so|and|hence) )?";
const them = "(?:it|them|these|those|this|that)";
const done = `(?:(?:is|are|was|were) )?(?:now )?(?:corrected|fixed|revised|shortened|amended|put right|sorted(?: out)?)(?: and (?:attached|enclosed|sent))?(?: too| as well| also)?(?: (?:on|in) (?:the )?(?:(?:(?:same|new|attached) )?(?:sheets?|one)|attached))?`;
const mended = `(?:fixed|fix|corrected|correct|shortened|shorten|redid|redone|redo|mended|sorted)`;

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

/** The capitals of a sheet, and the finish of a device. */
const mixed =
  "(?:the |a )?(?:mix(?:ed|ture)?(?: case| (?:of )?(?:capitals?|upper case|caps)(?: letters)? and (?:small(?: letters)?|lower ?case))?|capitals?(?: and small letters)?|upper and lower case|caps|capitali[sz]ation)";
const finish = "(?:the )?(?:different |two )?finish(?:es)?";
const alike = `${be} (?:all |both )?(?:meant|supposed|intended) to be`;
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
  // "All German and all correct".
  ...sayings(true, `(?:${be} )?${much}(?:in )?${tongue}(?: words?| names?| terms?)?,? and ${yes}`),
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
    `(?:${yesWord}|good to go|good|fine|ok) (?:to|on|for|with) (?<of>${all}|${rest})(?: ${asIs})?(?: please)?|${yesWord},? (?<both>both|all)(?: of (?:them|it))?`,
    ({ of, both }) => saying(wordIn(of ?? both), true),
  ),
  form(`${noWord} (?:to|on|for) (?<of>${numbers})`, ({ of }) => saying(numbersIn(of), false)),
  form(
    `(?:the |our |my )?answers? (?:to|for|on) (?<of>${numbers}) (?:is|are|=|:) (?:(?<yes>${yesWord})|${noWord})`,
    ({ of, yes: isYes }) => saying(numbersIn(of), isYes !== undefined),
  ),
  form(`${yesWord} and ${yesWord}`, () => saying(wordIn("both"), true)),
  form(`${yesWord} ?[x×] ?(?<count>[2-9])`, ({ count }) => saying(wordIn(`all ${count}`), true)),
  // "Both lamps buttons are meant to be the same", "LAMPS on both is right".
  form(
    `(?:the )?(?:two |both )?(?<of>${numbers})(?: buttons)?(?: (?:twice|on both(?: buttons)?|both times))? (?:${yes}|${alike} (?:the same|alike|identical))`,
    ({ of }) => saying(numbersIn(of), true),
    { fits: atSame },
  ),
  form(
    `${mixed} (?!as )${yes}|(?:mixed case|upper and lower case|capitals and small letters) as (?:typed|sent|written|on the sheet|submitted)(?: please)?`,
    () => saying(ofIt, true),
    { fits: atCapitals },
  ),
  form(
    `(?:${finish} ${yes}|(?:${finish}|it|they|that one) ${alike} (?:different|so)(?: there)?)`,
    () => saying(ofIt, true),
    { fits: atFinish },
  ),
  // "Snugg with two Gs is right".
  form(
    `(?<of>${numbers}) (?:with|has) (?<count>one|two|double|an?|a double|no second) (?<letter>\\p{L}) ?(?:'? ?s)? ${yes}`,
    ({ of }) => saying(numbersIn(of), true),
    { fits: hasLetters },
  ),
  // "As for 2, it is right".
  form(`(?:as for|regarding|re|concerning|about|as to) (?<of>${numbers})[,:]?`, ({ of }) => ({
    kind: "about",
    of: numbersIn(of),
    isSlip: true,
  })),
  // "MEZZ stands for mezzanine".
  form(`${subject} (?<what>(?:stands for|means) (?:the |an? )?\\p{L}+(?: \\p{L}+)?)`, ({ of, what }) =>
    explains(`it ${what}`) ? { kind: "about", of: numbersIn(of) } : undefined,
  ),
  form(`(?<count>[2-9]) ?[x×] ?${yesWord}`, ({ count }) => saying(wordIn(`all ${count}`), true)),
  // "The three room names are correct".
  form(
    `(?:(?:the|these|those|all|both) (?:(?:the|these|those) )?)?(?:(?<count>two|three|four|five|\\d) )?(?:(?:room|class|button|place) )?(?:words|names|legends|spellings|terms|abbreviations) ${yes}`,
    ({ count }) => saying({ ...wordIn(`all ${count ?? ""}`), word: "words" }, true),
  ),
  // "Leave 2 and 3 as they are", "keep them both like that".
  form(`${please}(?:leave|keep|let) (?<of>${numbers}) (?:${asIs}|stand|alone|be)`, ({ of }) =>
    saying(numbersIn(of), true),
  ),
  form(
    `${please}(?:leave|keep|make|cut|engrave) (?:${them} )?(?<of>both|all)(?: of (?:them|it))? (?:${asIs})(?: please)?`,
    ({ of }) => saying(wordIn(of), true),
  ),
  form(
    `${please}leave ${them}`,
    (_, whole) => saying(/ (?:it|this|that)$/iu.test(whole) ? ofIt : ofThem, true),
    {
      ends: true,
    },
  ),
  form(`${please}(?:leave|keep|make) ${them} (?:${asIs}|the way i sent (?:it|them))(?: please)?`, () =>
    saying(ofIt, true),
  ),
  form(
    `${so}${please}(?:(?:go ahead|proceed)(?: with (?:it|them|both|all|the order))?(?: (?:and|to) (?:cut|engrave|make|run) (?:it|them|both|all))?(?: ${asIs})?|get on with it(?: now)?|cut (?:them|it))`,
    () => ({ kind: "go" }),
  ),
  form(
    `${please}(?:go ahead|proceed) with (?<of>both|all)(?: of (?:them|it))? ${asIs}(?: please)?|(?:ok|okay|fine|good|correct|right)(?: ${asIs})?,? (?<also>both|all)(?: of (?:them|it))?`,
    ({ of, also }) => saying(wordIn(of ?? also), true),
    { ends: true },
  ),
  // "Leave as is", "no changes": all that was asked.
  form(
    `${please}(?:(?:leave|keep|cut|engrave|make|run) )?as (?:is|typed|shown|submitted|written|drawn|sent)(?: please)?|no (?:changes?|corrections?)(?: (?:(?:are|is) )?(?:needed|required|necessary|wanted))?`,
    () => ({ kind: "says", of: wordIn("all"), is: true, needsSheet: false, alone: true }),
    { ends: true },
  ),
  // "He wants it that way".
  form(
    `${person} (?:(?:really|just|also|does|do) )*(?:wants?|wanted|likes?) (?:(?:it|that|this)|(?<them>them|both|these|those)) (?:(?:spelled|spelt|written|cut|done) )?(?:that way|like that|like this|this way|so|${asIs})`,
    ({ them: many }) => saying(many === undefined ? ofIt : ofThem, true),
    { ends: true },
  ),
  // "Ok" without a number may only say that somebody has read it.
  form(`${so}(?:${it})? ?${yes}`, (_, whole) =>
    /^ok(?:ay)?$/iu.test(whole) ? undefined : saying(several.test(whole) ? ofThem : ofIt, true),
  ),
  form(`${so}${noWord}`, () => saying(ofIt, false)),
  form(`${so}(?:${it} )?${wrong}`, () => saying(ofIt, false, true)),
  form(
    `(?:except|apart from|other than|besides|but|save|aside from|all but)(?: (?:for|on|to))? (?<of>${numbers})`,
    ({ of }) => ({ kind: "except", of: numbersIn(of) }),
  ),
  // "All typos except 4, which is deliberate".
  form(
    `(?<all>${all})(?: (?:is|are))? (?:typos|mistakes|errors|typing (?:errors|mistakes)|wrong) (?:except|apart from|other than|besides|but)(?: for)? (?<of>${numbers})`,
    ({ all: others, of }) =>
      wordIn(others).word === "all"
        ? { kind: "except", of: numbersIn(of), wrong: wordIn(others) }
        : undefined,
  ),
  form(
    `which (?:is|are) ${much}(?:correct|right|fine|intended|intentional|deliberate|meant|on purpose)`,
    () => saying(ofIt, true),
    { ends: true },
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
  form(`${subject}${mark}(?:${owns})`, ({ of }) => ({ kind: "about", of: numbersIn(of), isSlip: true })),
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
  form(
    `(?:the |an? )?${subject} ${be} (?<what>(?:an?|the|our|his|her|their|parts? of) \\p{L}[\\p{L}' -]{2,60})`,
    ({ of, what }) =>
      explains(`it is ${what?.replace(/^parts? of/iu, "a bit of")}`)
        ? { kind: "about", of: numbersIn(of) }
        : undefined,
  ),
  // "It is comedor", of COMDOR.
  form(
    `(?:${it} )?(?:is|(?:should|must) (?:be|say|read)) (?<near>\\p{L}{3,20})`,
    () => ({ kind: "should" }),
    { fits: atNear, ends: true },
  ),
  form(changed, () => ({ kind: "words" }), { ends: true }),
  form(inCapitals, () => ({ kind: "should" }), { fits: atCapitals, ends: true }),
  form(inFinish, () => ({ kind: "should" }), { fits: ofFinish, ends: true }),
  // "Only one is wanted", of a mark that seems to ask for several.
  form(
    "(?:just|only) (?:the )?(?:one|1)(?: station| sheet| piece)? is (?:wanted|needed|required|meant|to be made)|(?:we|i|they) (?:just|only) (?:want|need|require) (?:the )?(?:one|1)",
    () => saying(ofIt, true),
    { fits: atSeveral, ends: true },
  ),
  form(onlyOne, () => ({ kind: "why" }), { fits: atSeveral }),
  form(twoOfThem, () => ({ kind: "why" }), { fits: atSame, any: true }),
  form(short, () => ({ kind: "why" }), { fits: atSpelling, any: true }),
  form(reason, () => ({ kind: "why" })),
  ...whyForms,
  form(idle, () => ({ kind: "idle" })),
];
