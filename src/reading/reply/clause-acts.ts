import type { Act, Of } from "./clause.ts";
import { isNearQuestion } from "./talk.ts";
import type { Said } from "./ways.ts";

/*
 * What clauses of a line do: what is known behind each, and which points it answers.
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
  /** Those of them that are meant so. */
  readonly granted: ReadonlySet<number>;
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
  /** Whether words only tell what was corrected. Beside what is meant so they may be about that. */
  readonly isMended?: (words: string) => boolean;
}

/** What is known at some place of a line. */
export interface State {
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
  /** It was told why, and not yet what is meant so. */
  readonly owesYes: boolean;
  /** Points of which it was told what they are, and not yet whether they are right. */
  readonly told: readonly number[];
}

/** Whether what was said last is a yes, in the line or at the end of the one above. */
export const isMeant = ({ is, last }: State, around: Around): boolean =>
  (is ?? (last.length === 0 ? around.last : undefined)) === true;

/** What is known behind a clause, or undefined if it cannot stand there. */
export function after(state: State, act: Act, around: Around): State | undefined {
  switch (act.kind) {
    case "idle":
      return state;
    case "why":
      return isMeant(state, around)
        ? { ...state, isSaid: true }
        : state.is === undefined && state.told.length > 0
          ? state
          : undefined;
    case "because":
      return isMeant(state, around) ? { ...state, isSaid: true } : { ...state, owesYes: true };
    case "words":
      return state.is === false && around.promises ? state : undefined;
    case "about":
      return afterAbout(state, act, around);
    case "owns":
      return afterOwning(state, act.of ?? [], around);
    case "carries":
      return afterCarrying(state, act, around);
    case "should":
      return afterShould(state, around);
    case "go":
      return afterGo(state, around);
    case "except":
      return act.wrong === undefined
        ? afterExcept(state, act.of, around)
        : afterAllBut(state, act.of, act.wrong, around);
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
  owesYes: state.owesYes && !is,
  told: state.told.filter((one) => !of.includes(one)),
});

/** "2 is French" opens what is said of a point, and follows nothing that was. */
function afterAbout(
  state: State,
  { of, isSlip }: Extract<Act, { kind: "about" }>,
  { open, others, granted }: Around,
): State | undefined {
  const isPoint = (one: number): boolean => open.includes(one) || others.includes(one);
  const isGiven = (one: number): boolean =>
    granted.has(one) || state.said.some(({ number, is }) => number === one && is);
  // Behind a yes it is a reason.
  if (of.every(isGiven) && isSlip !== true) return { ...state, last: of, is: true, isSaid: true };
  const isNew = of.every((one) => isPoint(one) && !state.said.some(({ number }) => number === one));
  return isNew
    ? {
        ...state,
        last: of,
        is: undefined,
        isAll: false,
        told: [...state.told, ...of.filter((one) => open.includes(one))],
      }
    : undefined;
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
  const opened = of.length === 0 ? undefined : afterAbout(state, { kind: "about", of }, around);
  const asked = of.filter((one) => around.open.includes(one));
  if (opened !== undefined)
    return asked.length === 0 ? opened : { ...say(opened, asked, false), isYesHere: false };
  // Behind a sheet that comes for what a line above has denied.
  const isOfSheet = state.is === undefined && state.isSaid && around.isDenied;
  return (state.is ?? around.last) === true && !isOfSheet ? undefined : { ...state, isSaid: true };
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
  if (!words.every((word) => isWritten(word) || /^\p{L}+(?: \d)?$/u.test(word))) return undefined;
  const near = words.map((word) => nearTo(word, around));
  if (near.every((one) => one !== undefined))
    return { ...say(state, [...new Set(near)], false), isYesHere: false };
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
      question.includes(`, and “${said.toUpperCase()}” on none.`) ||
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
  return open.length === 1 ? say(state, open, true) : undefined;
}

/** "All fine apart from 2". */
function afterExcept(state: State, of: readonly number[], { open, others }: Around): State | undefined {
  if (!state.isAll || !state.isYesHere) return undefined;
  if (!of.every((one) => open.includes(one) || others.includes(one))) return undefined;
  const said = state.said.filter(({ number }) => !of.includes(number));
  const wrong = of.filter((one) => open.includes(one));
  return { ...say({ ...state, said }, wrong, false), last: of, isYesHere: false };
}

/** "All typos except 4": the others are. */
function afterAllBut(state: State, of: readonly number[], wrong: Of, around: Around): State | undefined {
  const denied = afterSaying(state, { kind: "says", of: wrong, is: false, needsSheet: true }, around);
  if (denied === undefined || !of.every((one) => around.open.includes(one))) return undefined;
  return say({ ...denied, said: denied.said.filter(({ number }) => !of.includes(number)) }, of, true);
}

/** A sheet for a question is a no to it. "2 yes, new sheet attached" says two things of one point. */
function afterSheet(
  state: State,
  { of, needsSheet }: Extract<Act, { kind: "sheet" }>,
  { open, others, under, promises, isDenied, answered }: Around,
): State | undefined {
  const isOpen = (one: number): boolean => open.includes(one);
  const asked = of.filter(isOpen);
  if (!of.every((one) => isOpen(one) || others.includes(one))) return undefined;
  if (asked.length > 0)
    return needsSheet && !promises ? undefined : { ...say(state, asked, false), last: of, isYesHere: false };
  if (of.length > 0) return { ...state, last: of, is: undefined, isSaid: true };
  if (needsSheet && !promises) return undefined;
  const isNo = state.said.some(({ is }) => !is);
  const owesNo = !isNo && others.length === 0 && under === undefined && !isDenied;
  // "My bad, corrected sheet attached" says no to the only question.
  const isOwned = open.length === 1 && answered.size === 0 && state.is === undefined;
  if (owesNo && state.isSaid) return isOwned && state.said.length === 0 ? say(state, open, false) : undefined;
  // "1 no, 2 yes, sheet attached": it comes for what is denied.
  if (!isNo && state.isYesHere && state.last.every(isOpen)) return undefined;
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
  if (!isAlone || each.length !== open.length) return undefined;
  return each.reduce((next, is, at) => say(next, open.slice(at, at + 1), is), state);
}

function afterSaying(state: State, act: Extract<Act, { kind: "says" }>, around: Around): State | undefined {
  const { of: named, is, needsSheet } = act;
  if (needsSheet && !around.promises) return undefined;
  // "Both are right" behind what each of them is.
  const isOfAll =
    "word" in named && (named.word === "both" || (named.word === "it" && named.isSeveral === true));
  if (
    state.told.length > 1 &&
    (isOfAll || ("word" in named && named.word === "it" && (!is || state.last.length !== 1)))
  )
    return named.isSeveral === true && is && (named.word === "it" || state.told.length === 2)
      ? say(state, state.told, true)
      : undefined;
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
  // "All three" of three questions, beside one point to mend.
  const areAsked = is && of.word === "all" && (of.count ?? 0) > 2 && others.length === 1;
  if (of.word === "it") {
    if (state.last.length > 0) return state.is === undefined || state.is === is ? state.last : undefined;
    return !afterSeveral && open.length === 1 && isNamed ? open : undefined;
  }
  // "Yes, they got swapped" says one thing.
  if (of.count === 1 && state.is !== undefined && state.is !== is) return undefined;
  if (of.word === "words") return under === undefined ? wordsMeant(of.count, around) : undefined;
  const end = Math.max(...open, ...others);
  if (of.word === "last")
    return under === undefined && !afterSeveral && open.includes(end) ? [end] : undefined;
  // Below a quoted point, and of points to mend that nobody has named, "all" may mean others.
  const isCounted = of.word === "rest" && of.count !== undefined && !is;
  if ((!isNamed && !isCounted && !areAsked) || (under !== undefined && state.said.length === 0))
    return undefined;
  const left = open.filter((one) => !answered.has(one) && !state.said.some(({ number }) => number === one));
  if (of.word === "rest" && left.length === open.length && others.length === 0) return undefined;
  // "The other two are corrected", of a question and a point to mend.
  const mended = others.filter((one) => !named.has(one));
  if (of.word === "rest" && !is && of.count !== undefined)
    return left.length > 0 && of.count === left.length + mended.length ? left : undefined;
  const all = of.word === "rest" ? left : open;
  return all.length === (of.word === "both" ? 2 : (of.count ?? all.length)) ? all : undefined;
}

/** "The names are right": all words in question, if nothing else is or if they are as many as it says. */
function wordsMeant(count: number | undefined, { open, questions }: Around): readonly number[] | undefined {
  const isOfWord = (one: number): boolean => /^“[^”]+” /u.test(questions.get(one) ?? "");
  const words = open.filter(isOfWord);
  return words.length > 1 && words.length === (count ?? open.length) ? words : undefined;
}
