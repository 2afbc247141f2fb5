import { bags } from "./clause-bags.ts";
import { type Act, type Fits, forms, type Of } from "./clause-forms.ts";
import { notes, promised, severalSheets } from "./clause-notes.ts";
import { says, shows } from "./clause-words.ts";
import { explains, spellsOut } from "./explains.ts";
import { contradicts, isUnclear, regrets } from "./said.ts";
import { isSomebody } from "./somebody.ts";
import { areWhys, isNearQuestion } from "./talk.ts";
import { plain } from "./tokens.ts";
import { keyOf, type Said } from "./ways.ts";

/*
 * Replies clause by clause: "all fine apart from 2, fixed sheet attached", "the rest are yes". A clause is put together
 * from closed lists: what it is about, what is said of that, and what may stand around. A line is read only if all of it
 * is such clauses, courtesies and reasons, and if there is one way to read it.
 */

/** What a line stands beside. */
export interface Around {
  /** Numbers of the open questions, and the words that they ask about. */
  readonly open: readonly number[];
  readonly inQuestion: readonly string[];
  /** What each open question says, by its number. */
  readonly questions: ReadonlyMap<number, string>;
  /** The points of the answer that the sender must mend. */
  readonly others: readonly number[];
  /** All numbers that the reply names anywhere, and those that lines above have answered. */
  readonly named: ReadonlySet<number>;
  readonly answered: ReadonlySet<number>;
  /** A line above has answered something with no. */
  readonly isDenied: boolean;
  /** The reply brings sheets, or says somewhere that they come. */
  readonly promises: boolean;
  /** What the line above answered at last. */
  readonly last: boolean | undefined;
  /** The point that is quoted right above the line. */
  readonly under: number | undefined;
  readonly afterSeveral: boolean;
  /** Whether words say nothing. */
  readonly isSilent: (words: string) => boolean;
}

/** What is known at some place of a line. */
interface State {
  readonly said: readonly Said[];
  /** What was spoken of last, and how. */
  readonly last: readonly number[];
  readonly is: boolean | undefined;
  /** The last clause was about all of several points. */
  readonly isAll: boolean;
  /** The sentence has said that something is meant so. */
  readonly isYesHere: boolean;
  /** A "yes" without a number was taken for a point that only its place tells. Beside it stands nothing else. */
  readonly isBare: boolean;
  /** The sentence has told of a sheet. */
  readonly isSheetHere: boolean;
  /** Words were passed over that only say nothing. */
  readonly isLoose: boolean;
  /** A point was answered, or a sheet told of. */
  readonly isSaid: boolean;
  /** A sheet was told of before any answer: one of these has to be a no. */
  readonly owesNo: boolean;
}

/** Whether words tell of a sheet that comes. */
export function tellsOfSheet(words: string): boolean {
  return tellsSheet.test(spelledOut(plain(words)));
}
const tellsSheet = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:${shows}|${severalSheets}|${promised})(?![\\p{L}\\p{N}])`,
  "iu",
);

/** In characters. */
const longest = 400;
/** A line that can be read in very many ways is left. */
const mostStates = 10_000;

/** What a line answers, clause by clause. Undefined if any of it is no such clause, or if there are two ways to read it. */
export function clausesIn(line: string, around: Around): readonly Said[] | undefined {
  if (line.length > longest || /[?%$€£]/u.test(line) || isUnclear(line)) return undefined;
  const readings = readingsOf(spelledOut(plain(line.replace(/\n/gu, " "))), around);
  const [said, ...more] = new Map(readings.map((one) => [keyOf(one), one])).values();
  if (said === undefined || more.length > 0) return undefined;
  return contradicts(said) ? undefined : said;
}

/** What each way to read a line says. */
function readingsOf(text: string, around: Around): (readonly Said[])[] {
  const found: (readonly Said[])[] = [];
  const seen = new Set<string>();
  const start: State = {
    said: [],
    last: around.under === undefined || around.afterSeveral ? [] : [around.under],
    is: undefined,
    isAll: false,
    isYesHere: false,
    isBare: false,
    isSheetHere: false,
    isLoose: false,
    isSaid: false,
    owesNo: false,
  };
  const open: Step[] = [{ at: 0, state: start }];
  for (let step = open.pop(); step !== undefined && seen.size < mostStates; step = open.pop()) {
    gap.lastIndex = step.at;
    const [between = ""] = gap.exec(text) ?? [];
    const from = step.at + between.length;
    const state = /[.;!]/u.test(between)
      ? { ...step.state, isYesHere: false, isSheetHere: false }
      : step.state;
    const key = `${from} ${JSON.stringify(state)}`;
    if (seen.has(key)) continue;
    seen.add(key);
    if (from < text.length)
      open.push(...stepsFrom(text, from, state, around, from === 0 || between.trim() !== ""));
    else if (isWhole(state)) found.push(state.said);
  }
  return found;
}

/** Whether a line may end so. */
const isWhole = ({ said, isSaid, isBare, isLoose, owesNo }: State): boolean =>
  isSaid && !(isBare && isLoose) && (!owesNo || said.some(({ is }) => !is));

interface Step {
  readonly at: number;
  readonly state: State;
}

/** What stands between clauses. */
const gap = /(?:[\s,.;!:()\][–—>→-]|(?<=[\s,.;!:()])(?:and|so|also|because|since)(?= ))*/uy;
const isEdge = /^\s*(?:[,.;!:()–—-]|$)/u;
const lead = new RegExp(`(?:${says}) `, "iuy");
/** What says something and is nobody. */
const machine =
  /^(?:google|siri|alexa|wikipedia|chatgpt|copilot|gemini|word|excel|outlook|internet|autocorrect|spell\p{L}*|dictionary|computer)$/iu;

/** One more answer behind answers in turn, which begin a line. */
const goesOnAnswering = /^[\s,;/]*(?:and )?(?:yes|yep|yeah|no|nope)(?!\p{L})/iu;

/** Where a line can be read on from a place. `apart`: words before it are set off. */
function* stepsFrom(
  text: string,
  from: number,
  state: State,
  around: Around,
  apart: boolean,
): Generator<Step> {
  lead.lastIndex = from;
  const led = lead.exec(text);
  const who = led?.groups?.["who"];
  if (led !== null && (who === undefined || (isSomebody(who) && !machine.test(who))))
    yield { at: from + led[0].length, state };
  for (const { pattern, act, fits, any, ends } of [...forms, ...notes, ...bags])
    for (const match of matchesAt(pattern, text, from)) {
      const [does, at] = [act(match), from + match[0].length];
      if (fits !== undefined && !fitsHere(fits, any, match, state, around)) continue;
      if (does?.kind === "each" && (from > 0 || goesOnAnswering.test(text.slice(at)))) continue;
      if (does?.kind === "about" && isNearQuestion(match[0], around.inQuestion)) continue;
      const next = does === undefined ? undefined : after(state, does, around);
      if (next !== undefined && ((does?.kind !== "why" && ends !== true) || isEdge.test(text.slice(at))))
        yield { at, state: next };
    }
  // What is known already to say nothing, and other reasons beside a yes.
  for (const at of apart ? edgesFrom(text, from) : []) {
    const piece = text.slice(from, at);
    if (/\d/u.test(piece)) break;
    if (state.is === true && regrets.test(piece)) break;
    if (around.isSilent(piece)) yield { at, state: { ...state, isLoose: true } };
    else if (isMeant(state, around) && isReason(piece, around))
      yield { at, state: { ...state, isSaid: true } };
  }
}

/** Whether what was said last is a yes, in the line or at the end of the one above. */
const isMeant = ({ is, last }: State, around: Around): boolean =>
  (is ?? (last.length === 0 ? around.last : undefined)) === true;

/** Whether a form fits the questions that were spoken of last, or the open ones where none was. */
function fitsHere(
  fits: Fits,
  any: boolean | undefined,
  match: RegExpExecArray,
  { last }: State,
  { open, questions }: Around,
): boolean {
  const isFit = (one: number): boolean => {
    const question = questions.get(one);
    return question !== undefined && fits(question, match);
  };
  const of = last.length > 0 ? last : open;
  return any === true ? of.some(isFit) : of.every(isFit);
}

const isReason = (piece: string, around: Around): boolean =>
  spellsOut(piece, around.inQuestion) ||
  [piece, withoutLights(piece, around.inQuestion)].some(
    (one) => !isNearQuestion(one, around.inQuestion) && (explains(one) || areWhys(one, around)),
  );

/** "It is the lights" for "it is the cove lights", where COVES is in question. */
function withoutLights(piece: string, asked: readonly string[]): string {
  return piece.replace(
    /(?<= (?:the|our) )(\p{L}+) (?=(?:lights|lighting|lamps)$)/iu,
    (whole, word: string) => {
      const one = word.toLowerCase();
      return asked.some((other) => other === `${one}s` || `${other}s` === one) ? "" : whole;
    },
  );
}

/** A line without short forms and smiles. */
function spelledOut(line: string): string {
  return line
    .replace(/:-?\)/gu, "")
    .replace(/(?<=^|[.;!,)] )(\d{1,3})\. (?=\S)/gu, "$1: ")
    .replace(/ 's\b/gu, "'s")
    .replace(/\bthe word \((\d{1,3})\)/gu, "$1")
    .replace(/\b(everything|all|rest|sheet)'s\b/giu, "$1 is")
    .replace(/(?<=\d )[yn](?= ?(?:[,.;]|\d|$))/giu, (letter, _at: number, all: string) =>
      /\d n \d/iu.test(all) ? letter : /y/iu.test(letter) ? "yes" : "no",
    )
    .replace(
      /\b(it|that)s(?= (?:fine|ok|okay|right|correct|the|a|what|how|good|all|supposed|meant|wrong|not|my|our|as)\b)/giu,
      "$1 is",
    )
    .replace(/\b(i|we|you|they|he|she|it)'ll\b/giu, "$1 will")
    .replace(/^ill\b|(?<=[.,;] )ill\b/giu, "I will")
    .replace(/\b'?em\b/giu, "them")
    .trim();
}

/** A pattern at a place, as far as it reaches, and up to each word before that. */
function* matchesAt(pattern: RegExp, text: string, from: number): Generator<RegExpExecArray> {
  for (let end = text.length; end > from; ) {
    pattern.lastIndex = from;
    const match = pattern.exec(text.slice(0, end));
    if (match === null) return;
    yield match;
    const last = match[0].search(/[\s,.;!:()–—-]+[^\s,.;!:()–—-]*$/u);
    if (last <= 0) return;
    end = from + last;
  }
}

/** The ends of clauses behind a place. */
function edgesFrom(text: string, from: number): number[] {
  return [...text.slice(from).matchAll(/(?=[,.;!:()–—]|\s-\s|$)/gu)]
    .map(({ index }) => from + index)
    .filter((end) => end > from);
}

/** What is known behind a clause, or undefined if it cannot stand there. */
function after(state: State, act: Act, around: Around): State | undefined {
  switch (act.kind) {
    case "idle":
      return state;
    case "why":
      return isMeant(state, around) ? { ...state, isSaid: true } : undefined;
    case "words":
      return state.is === false && around.promises ? state : undefined;
    case "about":
      return afterAbout(state, act.of, around);
    case "owns":
      return afterOwning(state, act.of ?? [], around);
    case "carries":
      return afterCarrying(state, act, around);
    case "should":
      return afterShould(state, around);
    case "go":
      return afterGo(state, around);
    case "except":
      return afterExcept(state, act.of, around);
    case "each":
      return afterEach(state, act.each, around);
    case "sheet":
      return told(afterSheet(state, act, around));
    case "says":
      break;
  }
  return afterSaying(state, act, around);
}

const say = (state: State, of: readonly number[], is: boolean): State => ({
  ...state,
  said: [...state.said, ...of.map((number) => ({ number, is }))],
  last: of,
  is,
  isAll: false,
  isSaid: true,
});

/** "2 is French" opens what is said of a point, and follows nothing that was. */
function afterAbout(state: State, of: readonly number[], { open, others }: Around): State | undefined {
  const isPoint = (one: number): boolean => open.includes(one) || others.includes(one);
  const isNew = of.every((one) => isPoint(one) && !state.said.some(({ number }) => number === one));
  return isNew ? { ...state, last: of, is: undefined, isAll: false } : undefined;
}

/** "It should be LOBBY": at a point of which nothing was said it is a no. */
function afterShould(state: State, around: Around): State | undefined {
  if ((state.is ?? around.last) === true || !around.promises || state.last.length === 0) return undefined;
  return state.is === undefined ? say(state, state.last, false) : state;
}

const told = (state: State | undefined): State | undefined =>
  state === undefined ? undefined : { ...state, isSheetHere: true };

/** "My mistake" stands beside no yes. "Good catch on 2" is a no to that. */
function afterOwning(state: State, of: readonly number[], around: Around): State | undefined {
  if (!around.promises) return undefined;
  const opened = of.length === 0 ? undefined : afterAbout(state, of, around);
  const asked = of.filter((one) => around.open.includes(one));
  if (opened !== undefined)
    return asked.length === 0 ? opened : { ...say(opened, asked, false), isYesHere: false };
  return (state.is ?? around.last) === true ? undefined : { ...state, isSaid: true };
}

/**
 * "Sheet attached with COMEDOR": a no to the one question that asks about nearly that word. Other words in capitals
 * tell of what was denied before.
 */
function afterCarrying(
  state: State,
  { words, isBehind }: Extract<Act, { kind: "carries" }>,
  around: Around,
): State | undefined {
  if (!around.promises) return undefined;
  if (isBehind === true && !state.isSheetHere && state.is !== false) return undefined;
  if (words.length === 0) return afterSheet(state, { kind: "sheet", of: [], needsSheet: true }, around);
  const isWritten = (word: string): boolean => /^\p{Lu}[^\p{Ll}]*$/u.test(word);
  if (!words.every((word) => isWritten(word) || /^\p{L}+$/u.test(word))) return undefined;
  const near = words.map((word) => nearTo(word, around));
  if (near.every((one) => one !== undefined)) {
    const isKnown = near.every((one) => state.said.some(({ number, is }) => number === one && !is));
    return isKnown
      ? { ...state, isSaid: true }
      : { ...say(state, [...new Set(near)], false), isYesHere: false };
  }
  return words.every(isWritten) ? afterShould(state, around) : undefined;
}

/** "Barley", where a device is Plum and its plate is Barley. */
const isFinish = (question: string, said: string): boolean =>
  /^The (?:finish|device|plate) is /u.test(question) &&
  new RegExp(`(?: is |and )${RegExp.escape(said)}(?:[ ,.])`, "iu").test(question);

/** The one open question that asks about nearly a word. Undefined if there are several, or if it is the word in question. */
function nearTo(said: string, { questions }: Around): number | undefined {
  const word = said.toLowerCase();
  const near = [...questions].filter(([, question]) => {
    const [, asked = ""] = /^“([^”]+)”/u.exec(question) ?? [];
    return (
      isNearQuestion(word, [asked.toLowerCase()]) ||
      question.includes(` mean ${said.toUpperCase()},`) ||
      isFinish(question, said)
    );
  });
  const [one, ...more] = near;
  return one === undefined || more.length > 0 || one[1].toLowerCase().startsWith(`“${word}”`)
    ? undefined
    : one[0];
}

/** "Go ahead" goes with a yes to all, and is one where there is a single point. */
function afterGo(state: State, { open, others, under, answered }: Around): State | undefined {
  if (others.length > 0 || under !== undefined) return undefined;
  const isYes = (number: number): boolean =>
    answered.has(number) || state.said.some((one) => one.number === number && one.is);
  if (open.every(isYes)) return { ...state, isSaid: true };
  return open.length === 1 && state.said.length === 0 ? say(state, open, true) : undefined;
}

/** "All fine apart from 2". */
function afterExcept(state: State, of: readonly number[], { open, others }: Around): State | undefined {
  if (!state.isAll || !state.isYesHere) return undefined;
  if (!of.every((one) => open.includes(one) || others.includes(one))) return undefined;
  const said = state.said.filter(({ number }) => !of.includes(number));
  const wrong = of.filter((one) => open.includes(one));
  return { ...say({ ...state, said }, wrong, false), last: of, isYesHere: false };
}

/** A sheet for a question is a no to it. "2 yes, new sheet attached" says two things of one point. */
function afterSheet(
  state: State,
  { of, needsSheet }: Extract<Act, { kind: "sheet" }>,
  { open, others, under, promises, isDenied }: Around,
): State | undefined {
  const isOpen = (one: number): boolean => open.includes(one);
  const asked = of.filter(isOpen);
  if (!of.every((one) => isOpen(one) || others.includes(one))) return undefined;
  if (asked.length > 0)
    return needsSheet && !promises ? undefined : { ...say(state, asked, false), last: of, isYesHere: false };
  if (of.length > 0) return { ...state, last: of, is: undefined, isSaid: true };
  if (needsSheet && !promises) return undefined;
  const isNo = state.said.some(({ is }) => !is);
  const owesNo = !isNo && state.is !== false && others.length === 0 && under === undefined && !isDenied;
  if (owesNo && state.isSaid) return undefined;
  if (state.isYesHere && state.last.every(isOpen)) return undefined;
  return state.is === undefined && state.last.some(isOpen)
    ? say(state, state.last, false)
    : { ...state, isSaid: true, owesNo };
}

/** "Yes, yes and no" answers all questions in turn. */
function afterEach(
  state: State,
  each: readonly boolean[],
  { open, others, answered, under, afterSeveral }: Around,
): State | undefined {
  const isAlone = others.length === 0 && answered.size === 0 && under === undefined && !afterSeveral;
  if (!isAlone || state.said.length > 0 || each.length !== open.length) return undefined;
  return each.reduce((next, is, at) => say(next, open.slice(at, at + 1), is), state);
}

function afterSaying(state: State, act: Extract<Act, { kind: "says" }>, around: Around): State | undefined {
  const { of: named, is, needsSheet } = act;
  if (needsSheet && !around.promises) return undefined;
  // "All corrected" may tell of points to mend alone.
  if (act.alone === true && (around.others.length > 0 || around.answered.size > 0 || state.said.length > 0))
    return undefined;
  const of = meant(named, is, state, around);
  if (of === undefined || of.length === 0) return undefined;
  if (around.under !== undefined && of.some((one) => one !== around.under)) return undefined;
  if (of.every((one) => around.others.includes(one)))
    return is ? undefined : { ...state, last: of, is: false, isSaid: true };
  if (!of.every((one) => around.open.includes(one))) return undefined;
  const isIt = "word" in named && named.word === "it";
  return {
    ...say(state, of, is),
    isAll: "word" in named && !isIt,
    isYesHere: is,
    isBare: state.isBare || (isIt && !state.isSaid),
  };
}

/** The numbers that are meant. */
function meant(of: Of, is: boolean, state: State, around: Around): readonly number[] | undefined {
  if (!("word" in of)) return of;
  const { open, others, named, answered, under, afterSeveral } = around;
  const isNamed = others.every((one) => named.has(one));
  if (of.word === "it") {
    if (state.last.length > 0) return state.is === undefined || state.is === is ? state.last : undefined;
    return !afterSeveral && open.length === 1 && isNamed ? open : undefined;
  }
  const end = Math.max(...open, ...others);
  if (of.word === "last")
    return under === undefined && !afterSeveral && open.includes(end) ? [end] : undefined;
  // Below a quoted point, and of points to mend that nobody has named, "all" may mean others.
  const isCounted = of.word === "rest" && of.count !== undefined && !is;
  if ((!isNamed && !isCounted) || (under !== undefined && state.said.length === 0)) return undefined;
  const left = open.filter((one) => !answered.has(one) && !state.said.some(({ number }) => number === one));
  if (of.word === "rest" && left.length === open.length && others.length === 0) return undefined;
  // "The other two are corrected", of a question and a point to mend.
  const mended = others.filter((one) => !named.has(one));
  if (of.word === "rest" && !is && of.count !== undefined && mended.length > 0)
    return left.length > 0 && of.count === left.length + mended.length ? left : undefined;
  const all = of.word === "rest" ? left : open;
  return all.length === (of.word === "both" ? 2 : (of.count ?? all.length)) ? all : undefined;
}
