import { memoized } from "../../trade/memoized.ts";
import type { FileId } from "../../trade/sheet.ts";
import { type AtPoint, pointsApart, saidAtPoint } from "./at-point.ts";
import { withoutCameWords } from "./came-words.ts";
import { cancelledIn } from "./cancels.ts";
import type { Around } from "./clause-acts.ts";
import { clausesIn, tellsOfSheet } from "./clauses.ts";
import { isDangerous } from "./danger.ts";
import { speaksAgainst } from "./doubt.ts";
import { explains, writesOut } from "./explains.ts";
import { isBoilerplate, isGoodBye } from "./furniture.ts";
import {
  areFooter,
  beginsNamed,
  bindsAnswer,
  initialsOf,
  isIdle,
  isSignedOff,
  namesSender,
  type Replier,
  saysNothing,
  sentencesOf,
} from "./idle.ts";
import { introduces } from "./introduces.ts";
import { withoutPlaces } from "./named-places.ts";
import { isOther, namesIn, othersIn, pointIn, questionsIn } from "./named-points.ts";
import { takenBack } from "./nothing.ts";
import { beginsOthersWords } from "./others-words.ts";
import { type OwnLine, ownLines } from "./own-lines.ts";
import { takeApart } from "./own-text.ts";
import { isAmends, pointsDoneIn, sheetsPromisedIn } from "./promises.ts";
import { remarksIn } from "./remarks.ts";
import { bindsNothing, saidIn } from "./said.ts";
import { isSomebody } from "./somebody.ts";
import { isNearQuestion, namesNear } from "./talk.ts";
import { maySpeakOf, tellsMended } from "./tells-mended.ts";
import { withMarks } from "./unmarked.ts";
import type { Said } from "./ways.ts";
import { tokensOf } from "./word-bag.ts";

/** What a reply answers of the questions that it was asked, and what it takes back of its orders. */
export interface Answers {
  /** Numbers of the questions that it answers with yes: it is meant so. */
  readonly yes: ReadonlySet<number>;
  /** Numbers that it answers with no: a corrected sheet comes. */
  readonly no: ReadonlySet<number>;
  /** Numbers of words that wait for a person, and of which it says that they ask for nothing. */
  readonly nothing: ReadonlySet<number>;
  /** The sheets that it withdraws. */
  readonly withdraws: ReadonlySet<FileId>;
  /** The lines that say so, and the lines beside them that say nothing. Trimmed. */
  readonly lines: ReadonlySet<string>;
}

/** What a reply is read against. */
export interface Asked extends Replier {
  /** Numbers of the open questions that the answer it replies to has asked. */
  readonly open: readonly number[];
  /** Numbers of words that wait for a person. Their sender may say that they ask for nothing. */
  readonly words?: readonly number[];
  /** Numbers of all questions about its orders, whichever answer has asked them. */
  readonly questions?: readonly number[];
  /** How many other points of that answer the sender must do something about. */
  readonly others: number;
  /** The text of that answer, which may be quoted, and its subject. */
  readonly answer: string;
  readonly subject: string;
  /** The sheets that words name, of those that the reply may withdraw. Undefined if they name none, or may name others. */
  readonly sheetsNamed: (words: string) => readonly FileId[] | undefined;
  /** Whether words stand on one of the sheets that came with the reply. */
  readonly isOnSheets: (words: string) => boolean;
}

export const noAnswers: Answers = {
  yes: new Set(),
  no: new Set(),
  nothing: new Set(),
  withdraws: new Set(),
  lines: new Set(),
};

/**
 * Reads lines such as "3 YES", "3, 4: yes", "4 no, new sheet attached" or "all yes". They may stand above, below or
 * between the lines that the reply quotes. It is no answer if a number is answered twice and differently, if the
 * words beside it may be a condition, or if the number was not asked. Lines such as "CANCEL S-104" take sheets back.
 * Beside them stands nothing but answers to numbers and what says nothing.
 */
export function readAnswers(
  text: string,
  given: Asked,
): Answers & {
  readonly unread: readonly string[];
  readonly answering: ReadonlySet<string>;
  /** Lines that only tell what was corrected on sheets that came. */
  readonly mended: ReadonlySet<string>;
} {
  const named = namesIn(given);
  const asked = { ...given, inQuestion: named.words };
  const questions = questionsIn(given);
  const plainOf = withoutPlaces(given);
  const { text: plain, found } = withMarks(text.replace(/\p{Cf}/gu, ""), given);
  const { quoted } = takeApart(plain, given.subject);
  const yes = new Set<number>();
  const no = new Set<number>();
  const withdraws = new Set<FileId>();
  const lines = new Set<string>();
  const unread: string[] = [];
  const idle: string[] = [...found];
  /** Whether the last answer is a yes. */
  let last: boolean | undefined;
  /** What is quoted with our answer, as far as it says something: it may be an earlier letter of the sender. */
  const isQuoted = (line: string): boolean =>
    isIdle(line.replace(/^[>\s]+/u, ""), false, { ...asked, bringsSheets: false }) ||
    sheetsPromisedIn(line.replace(/^[>\s]+/u, ""))?.length === 0;
  let [signed, isBound] = [
    false,
    remarksIn(
      quoted.filter((line) => !isQuoted(line) && !isHeader(line)),
      `${given.subject}\n${given.answer}`,
    ).length > 0,
  ];
  /** Something is answered or said that a person would hold against a withdrawal beside it. */
  let isUnclear = false;
  const own = joined([...ownLines(plain, given.subject, (point) => given.open.includes(point))]);
  const { nothing, lines: ofWords, left: all } = takenBack(own, given);
  for (const [line, rest] of ofWords) if (rest === "") lines.add(line);
  const inOrder = numbersInOrder(all, asked);
  // "1 YES, MEZZANINE" may want that in place of MEZZ.
  const isShouted = all.every(
    (own) => !/\p{Ll}/u.test(own.line) && !tokensOf(own.line).some((one) => writesOut(one, asked.inQuestion)),
  );
  const inAnswer = new Set(tokensOf(asked.answer));
  const atPoint: AtPoint = {
    open: asked.open,
    isOther: (number) => isOther(number, asked),
    says: (number) => pointIn(number, asked),
    promises:
      asked.bringsSheets || all.some(({ line }) => !/\d/u.test(line) && sheetsPromisedIn(line) !== undefined),
    inQuestion: asked.inQuestion,
    others: asked.others,
  };
  const namedIn = new Set(
    all.flatMap(({ line }) => [...line.matchAll(/\d{1,3}/gu)].map(([one]) => Number(one))),
  );
  /** Sentences that tell what was corrected. */
  const slips: string[] = [];
  /** What stands below is somebody else's. */
  let isOthers = false;
  const footer = all.findIndex(
    (_, i) => i > 0 && all.length - i < 9 && areFooter(all.slice(i).map(({ line }) => line)),
  );
  for (const [i, own] of all.entries()) {
    const { line } = own;
    signed ||= i === footer;
    isOthers ||= line.split("\n").some((one) => beginsOthersWords(one, asked));
    // A line below the answers is a name, unless it is a word that was asked about.
    const isLast = i > 0 && all.slice(i + 1).every((next) => isIdle(next.line, true, asked));
    const isSigned =
      isLast &&
      isSomebody(line) &&
      !tokensOf(line).some((token) => inAnswer.has(token)) &&
      !isNearQuestion(line, asked.inQuestion);
    const isNothing = (sentence: string): boolean =>
      saysNothing(sentence, asked) || (last === false && isAmends(sentence));
    const isQuiet = (sentence: string): boolean =>
      introduces(withoutOrder(sentence, asked.answer)) ||
      (last === true && explains(sentence) && !isNearQuestion(sentence, asked.inQuestion)) ||
      (asked.others + asked.open.length > 1 && owns.test(sentence)) ||
      isNothing(sentence) ||
      isNote(sentence, own, asked) ||
      bindsNothing(sentence, asked.names, last);
    const isSilent = memoized(
      (sentence: string): boolean => !namesNear(sentence, asked.inQuestion) && isQuiet(sentence),
    );
    // Below a yes it may tell of what is meant so.
    const isMended = (sentence: string): boolean => {
      const isOne = last !== true && asked.bringsSheets && tellsMended(sentence, asked);
      if (isOne) slips.push(sentence);
      return isOne;
    };
    const isPassed = (sentence: string): boolean => isSilent(sentence) || isMended(sentence);
    const typed = withoutInitials(plainOf(isShouted ? line.toLowerCase() : line), asked.names);
    const inTurn = inOrder.has(i)
      ? `${inOrder.get(i)} ${typed}`
      : inPair(withRest(typed, namedIn, asked), asked);
    const bare = named.withSheets(asked.bringsSheets ? withoutCameWords(inTurn, asked.isOnSheets) : inTurn);
    const words = named.withWords(bare);
    const cancels = cancelledIn(line);
    const isAsked = (some: readonly Said[] | undefined): boolean =>
      some?.every(({ number }) => asked.open.includes(number)) === true;
    const around: Around = {
      open: asked.open,
      inQuestion: asked.inQuestion,
      questions,
      others: asked.others === 0 ? [] : othersIn(asked),
      named: namedIn,
      answered: new Set([...yes, ...no]),
      granted: yes,
      isDenied: no.size > 0,
      promises: atPoint.promises || all.some(({ line }) => tellsOfSheet(named.withSheets(line))),
      last,
      under: own.under,
      afterSeveral: own.afterSeveral,
      isSilent,
    };
    const saidBy = memoized((one: string): readonly Said[] | undefined =>
      [
        () => saidIn({ ...own, line: one }, { ...asked, last }, isNothing),
        () => saidAtPoint({ ...own, line: one }, atPoint),
        // What a sheet bears out is passed over only where it is nothing else.
        () => clausesIn(one, around),
        () => (asked.bringsSheets ? clausesIn(one, { ...around, isMended }) : undefined),
      ]
        .values()
        .map((reads) => reads())
        .find(isAsked),
    );
    // "No contract is formed by email" below a name answers nothing.
    const isLegal =
      signed && !/\d/u.test(line) && sentencesOf(line).some(isBoilerplate) && isIdle(line, true, asked);
    const read =
      cancels === undefined && !isLegal && !isNeither.test(line) && !namesNear(line, asked.inQuestion)
        ? (saidBy(words) ??
          saidApart(words, saidBy, isSilent) ??
          saidBy(named.withNumbers(bare)) ??
          saidBy(named.withWords(named.withSheets(named.withPoints(inTurn)))))
        : undefined;
    const said = read !== undefined && named.areOthers(inTurn, read) ? undefined : read;
    const withdrawn = asked.sheetsNamed(cancels ?? "");
    if (isOthers && (withdrawn !== undefined || said !== undefined)) {
      unread.push(line);
      isBound = true;
    } else if (withdrawn !== undefined) {
      for (const sheet of withdrawn) withdraws.add(sheet);
      lines.add(line);
    } else if (said !== undefined) {
      for (const { number, is } of said) (is ? yes : no).add(number);
      last = said.at(-1)?.is ?? last;
      isUnclear ||= said.length > 0 && !/\d/.test(line);
      for (const one of line.split("\n")) lines.add(one);
    } else if (
      isSigned ||
      isIdle(line, signed, asked) ||
      introduces(withoutOrder(line, asked.answer)) ||
      (last === true && own.under === undefined && isThumb.test(line)) ||
      isClosing(line, all[i + 1]?.line ?? "", asked.names) ||
      (i === 0 && isGreeting(line, inAnswer))
    ) {
      idle.push(...line.split("\n"));
      isUnclear ||=
        asked.bringsSheets && !isSigned && !isIdle(line, signed, { ...asked, bringsSheets: false });
    } else if (
      asked.bringsSheets &&
      sentencesOf(line)
        .flatMap((one) => one.split(/,\s+/u))
        .every((one) => isPassed(one) || isOfSheets(named.withSheets(one), asked.open))
    ) {
      // It is read like the words of any letter with sheets.
      isUnclear = true;
      if (isPassed(line) || sentencesOf(line).every(isPassed)) idle.push(...line.split("\n"));
    } else {
      unread.push(line);
      isUnclear = true;
      if (isPassed(line) || sentencesOf(line).every(isPassed)) idle.push(...line.split("\n"));
      else isBound ||= otherPoint(line) === undefined;
    }
    signed ||=
      line === "--" ||
      isSigned ||
      isGoodBye(line) ||
      isSignedOff(line) ||
      namesSender(line, asked.names) ||
      beginsNamed(line, asked.names);
  }
  isBound ||= slips.some((slip) => maySpeakOf(slip, yes, no, questions));
  const isNone = isBound || lines.size === 0 || !yes.isDisjointFrom(no) || (withdraws.size > 0 && isUnclear);
  const mended = new Set(
    all
      .filter(({ line }) => asked.bringsSheets && sentencesOf(line).every((one) => tellsMended(one, asked)))
      .flatMap(({ line }) => line.split("\n")),
  );
  return isNone
    ? { ...noAnswers, unread, answering: lines, mended }
    : {
        yes,
        no,
        nothing,
        withdraws,
        lines: withWhole([...lines, ...idle], ofWords),
        unread,
        answering: lines,
        mended,
      };
}

/** Some lines, and those of which they are what is left. */
function withWhole(read: readonly string[], ofWords: ReadonlyMap<string, string>): Set<string> {
  const all = new Set(read);
  return all.union(new Set([...ofWords].flatMap(([line, rest]) => (all.has(rest) ? [line] : []))));
}

/** "Yes and no" says neither. */
const isNeither = /^\W*(?:well,? )?yes and no\W*$/iu;
const bareAnswer = /^(?:yes|yep|yeah|yup)(?!\p{L})|^(?:no|nope)(?=\s*(?:$|[.,;:!–—-]))/iu;

/** The numbers of lines that answer all questions one after another, without any: "yes", "yes", "no, sheet attached". */
function numbersInOrder(
  lines: readonly OwnLine[],
  { open, others }: Asked,
): ReadonlyMap<number, number | undefined> {
  const bare = lines.flatMap(({ line }, at) => (bareAnswer.test(line) ? [at] : []));
  const isPlain =
    others === 0 &&
    open.length > 1 &&
    bare.length === open.length &&
    bare.every((at, i) => at === (bare[0] ?? 0) + i) &&
    lines
      .slice(0, (bare.at(-1) ?? 0) + 1)
      .every(({ line, under, afterSeveral }) => under === undefined && !afterSeveral && !/\d/u.test(line));
  return new Map(isPlain ? bare.map((at, i) => [at, open[i]]) : []);
}

/** "The other two" of three questions, where the reply has named the first. */
function withRest(line: string, named: ReadonlySet<number>, { open, others }: Asked): string {
  const rest = open.filter((number) => !named.has(number));
  if (others > 0 || rest.length !== 2 || open.length < 3) return line;
  return line.replace(
    /(?<!\p{L})the other (?:two|2)(?: (?:questions|points|words|ones))?(?!\p{L})/giu,
    rest.join(" and "),
  );
}

/** "Yes and yes" of two questions: each with its number. "Yes and no" says neither. */
function inPair(line: string, { open, others }: Asked): string {
  if (open.length !== 2 || others > 0) return line;
  return line.replace(
    /(?<=^|[.,;:] )(?:so |so that is |that is )?(yes|no) and \1(?=[.!]*$)/iu,
    (_, both: string) => `${open[0]} ${both}, ${open[1]} ${both}`,
  );
}

/** What is said of points that are mended, where there are several. */
const owns =
  /^(?:(?:many |so many )?(?:thanks|thank you)(?: so much| very much)? for (?:catching|spotting|noticing|flagging|pointing out) (?:those|these|that|them|it|this|the (?:mistakes?|errors?|typos?))|(?:we are |i am |i'm |we're )?(?:very |so )?(?:sorry|apologies) (?:for|about) (?:the|my|our|those|that) (?:mistakes?|errors?|typos?|slips?|mix[- ]?up))[.!]*$/iu;

/** What a line of several points says of each. Undefined if a piece of it says anything else. */
function saidApart(
  line: string,
  saidBy: (piece: string) => readonly Said[] | undefined,
  isSilent: (sentence: string) => boolean,
): readonly Said[] | undefined {
  const pieces = pointsApart(line.replace(/\n/gu, " "));
  if (pieces.length < 2) return undefined;
  const all = pieces.map(
    (piece) => saidBy(piece) ?? (sentencesOf(piece).every((one) => isSilent(one)) ? [] : undefined),
  );
  return all.every((one) => one !== undefined) ? all.flat() : undefined;
}

const ownsSlip =
  /\b(?:mistakes?|errors?|typos?|slips?|wrong|bad|fault|oops|sorry|that|this|it|misspel\p{L}*)\b/iu;

/** Whether a sentence is about a sheet for what must be mended anyway, and for no open question. */
function isNote(sentence: string, { under }: OwnLine, { open, others, answer }: Asked): boolean {
  const named = sheetsPromisedIn(sentence) ?? pointsDoneIn(sentence);
  if (named === undefined || others === 0) return false;
  // "That was my mistake, sending a new one" may be said of what stands beside it.
  if (named.length === 0 && under === undefined && ownsSlip.test(sentence)) return false;
  return [...named, ...(under === undefined ? [] : [under])].every((number) =>
    isOther(number, { open, answer }),
  );
}

/** Whether a line is about sheets that came with it, and about no open question. */
function isOfSheets(line: string, open: readonly number[]): boolean {
  return (
    ofSheets.test(line) &&
    !bindsAnswer(line) &&
    !open.some((number) =>
      new RegExp(`(?<!\\d|\\b(?:button|row|gang|position) )${number}(?!\\d)`, "u").test(line),
    )
  );
}
const ofSheets =
  /^(?=.*(?<!\p{L})(?:sheets?|forms?|pdfs?|files?|pages?|plates?|devices?|ones?|both|all|it|them|see)(?!\p{L})).*(?<!\p{L})(?:attach(?:ed|ing|ment)?|enclos(?:ed|ing)|herewith|(?:corrected|revised|new|fixed|updated|amended) (?:sheet|form|pdf|file)s?)(?!\p{L})/iu;

/** "In reply to your letter about order EL-100": the order that the answer is about has no digits to read. */
function withoutOrder(line: string, answer: string): string {
  const [, number] = /^Order (\S+), /mu.exec(answer) ?? [];
  return number === undefined ? line : line.replaceAll(number, "");
}

/** A thumb up below a yes. Below a quoted question it may be one. */
const isThumb = /^(?:👍\p{EMod}?\s*)+$/u;

/** "Onwards," above a name. */
function isClosing(line: string, next: string, names: readonly string[]): boolean {
  const isNext = namesSender(next, names) || isSomebody(next);
  return isNext && /^[^\d?"“”:]{2,40},$/u.test(line) && tokensOf(line).length < 5 && !isDangerous(line);
}

/** "Hello dear," at the top. */
function isGreeting(line: string, inAnswer: ReadonlySet<string>): boolean {
  const tokens = tokensOf(line);
  return (
    /^[\p{L} .'’-]{2,40},$/u.test(line) &&
    tokens.length < 5 &&
    !tokens.some((token) => inAnswer.has(token)) &&
    !isDangerous(line)
  );
}

/** "To: Plate Desk" */
function isHeader(line: string): boolean {
  return (
    /^[>\s]*(?:from|to|cc|sent|date|subject) ?:/iu.test(line) &&
    !speaksAgainst(line) &&
    !/\byes\b/iu.test(line)
  );
}

/** "FA: Yes" between quoted lines, by Felicity Amberley. */
function withoutInitials(line: string, names: readonly string[]): string {
  const [, who = "", rest = ""] =
    /^(?:\[(?=\p{L}{2,15}\] )|[[(])?(\p{L}{2,15})(?:\](?= )|[\])]?\s?[:>–—-]+)\s*(.+)$/u.exec(line) ?? [];
  const signs = names
    .map((name) => name.split(/\s+/u))
    .flatMap((words) => [initialsOf(words.join(" ")), words[0]]);
  // "[Sam]" is Samantha.
  const isSign = (sign = ""): boolean =>
    sign.toLowerCase() === who.toLowerCase() ||
    (who.length > 2 && sign.toLowerCase().startsWith(who.toLowerCase()));
  return who !== "" && signs.some(isSign) ? rest : line;
}

/** "3:", "Re: your question 12". */
const headsNext =
  /^(?:#?\d{1,4} ?[:.)=–-]|(?:(?:re|regarding|concerning|about|to|for|on|as for):? )?(?:your |the )?(?:question|point|item|no\.?|number) ?#?\d{1,4} ?[:.)=–-]?)$/iu;

/** A program has broken lines of this length. In characters. */
const full = 50;
/** Whether a sentence that a program has broken goes on in the next line. */
const goesOn = (line: string, next: string): boolean =>
  line.length >= full &&
  !/[.!?:;]["”’)]*$/u.test(line) &&
  (/^[\p{Ll}(]/u.test(next) ||
    (/(?:questions?|points?|items?|numbers?|and|both|to|for|on|with|,)$/iu.test(line) && /^\d/u.test(next)));

/** A line such as "3:" goes on in the next one: "YES". */
function joined(lines: readonly OwnLine[]): OwnLine[] {
  const all: OwnLine[] = [];
  for (const own of lines) {
    const before = all.at(-1);
    const goes =
      before !== undefined &&
      (headsNext.test(before.line) || goesOn(before.line.split("\n").at(-1) ?? "", own.line));
    if (before !== undefined && goes && own.under === undefined && !own.afterSeveral)
      all[all.length - 1] = { ...before, line: `${before.line}\n${own.line}` };
    else all.push(own);
  }
  return all;
}

/** The number that a line begins with. */
export function otherPoint(line: string): number | undefined {
  const [, number] = /^(?:[#q(]|no\. ?|question |point |item )?(\d{1,4})(?![\p{L}\p{N}])/iu.exec(line) ?? [];
  return number === undefined ? undefined : Number(number);
}
