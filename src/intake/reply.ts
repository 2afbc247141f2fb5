import type { Catalogue } from "../catalogue/catalogue.ts";
import { type AskedWord, areBuyersWords, askedWords, maySettle } from "../checks/asked.ts";
import { managerWord } from "../checks/order/manager-word.ts";
import { isDenied } from "../judging/denied.ts";
import { type BuyerState, type OrderState, orderKey } from "../judging/state.ts";
import type { Submission } from "../judging/submission.ts";
import { mayWithdraw, sheetsNamed } from "../judging/withdrawn.ts";
import { projectKey } from "../lettering/glossary.ts";
import { isReleasedPiece } from "../orders/piece.ts";
import type { Answered } from "../ports/store.ts";
import type { Answers, Asked } from "../reading/reply/answers.ts";
import { answersBeside } from "../reading/reply/answers-beside.ts";
import { approvalsIn } from "../reading/reply/approval.ts";
import { isRemembered, type LineKey } from "../reading/reply/furniture.ts";
import { finishNotThere, standOn, wordsNotThere } from "../reading/reply/promised-words.ts";
import { tokensOf } from "../reading/reply/word-bag.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Letter } from "../trade/letter.ts";
import type { Problem } from "../trade/problem.ts";
import type { KnownQuestion, QuestionOf } from "../trade/question.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Statement } from "../trade/statement.ts";
import type { Desk } from "./desk.ts";
import { type Party, partyOf } from "./party.ts";

/** A letter in the thread of answers of ours, with what has been found out about it. */
export interface Reply {
  readonly letter: Letter;
  /** The letters that those answers were made to. */
  readonly answered: readonly Answered[];
  readonly proof: SenderProof | "not asked";
  /** Whose orders its sheets touch. */
  readonly party: Party;
  readonly sheets: readonly Sheet[];
}

/** Whose orders a letter touches, and which answers it may go on with. */
export interface Said {
  readonly party: Party;
  /** The letters whose answers it replies to. Its sender may go on with their orders. */
  readonly goesOn: readonly Answered[];
}

/** An answer of ours in words. */
export interface Quoted {
  readonly text: string;
  readonly subject: string;
}

/** What a letter says as a reply. Only a party to the orders that were answered for may speak of them. */
export async function readReply(reply: Reply, desk: Desk): Promise<Said> {
  const { sheets } = reply;
  const nothing: Said = { party: reply.party, goesOn: [] };
  if (reply.answered.length === 0) return nothing;
  const party = sheets.length > 0 ? reply.party : await partyToAnswered(reply, desk);
  if (party.why !== undefined) return { ...nothing, party: sheets.length > 0 ? party : reply.party };
  // A letter that a person had to see first was asked nothing.
  return {
    party,
    goesOn: reply.answered.filter(({ buyer, why }) => buyer === party.buyer && why === undefined),
  };
}

/** What a reply answers of the questions that its orders were asked. */
export interface Answering {
  readonly answers: Answers;
  /** What else it says that a person has to read. */
  readonly statements: readonly Statement[];
  readonly settles: readonly QuestionOf[];
  /** Questions to which it gives a manager's word. */
  readonly decides: readonly QuestionOf[];
  /** Questions that it answers too late: their sheets are withdrawn. */
  readonly late: readonly number[];
  /** Questions to which it says YES and somebody else, or a newer letter, has said NO. */
  readonly denied: readonly number[];
  /** Words of legends that it says are right. */
  readonly kept: readonly KeptWord[];
}

/** The answers of ours that a reply may go on with, and the lines that stood in earlier letters of its sender. */
export interface Replied extends Pick<Said, "goesOn"> {
  readonly quoted?: Quoted;
  readonly furniture: ReadonlySet<LineKey>;
  /** The sheets that came with the reply. */
  readonly sheets: readonly Sheet[];
  /** Its number, and when it came. */
  readonly at: NonNullable<Submission["letter"]>;
  /** As whom its sender answers: as a party to the orders, as their manager, or both. */
  readonly as?: { readonly party: boolean; readonly manager: boolean };
  /** The manager who wrote it, or whose letter it was. */
  readonly manager?: { readonly name: string };
  readonly catalogue: Pick<Catalogue, "finishes" | "lettering">;
}

/** Reads the answers among a reply's words, and what else it says. `quoted` is the answer of ours that it replies to. */
export function answeringIn(
  { text, from, fromName = "" }: Letter,
  { goesOn, sheets: brought, at, furniture, catalogue, ...replied }: Replied,
  state: BuyerState,
  saidBesides: (understood: ReadonlySet<string>) => readonly Statement[],
): Answering {
  // Where nothing was asked and nothing was wrong, a yes changes nothing.
  const approvals = isAllRight(goesOn) ? approvalsIn(text) : [];
  const besides: typeof saidBesides = (lines) => saidBesides(new Set([...lines, ...approvals]));
  const { quoted = { text: "", subject: "" }, as = { party: true, manager: false } } = replied;
  const asked = askedIn(
    goesOn,
    state,
    (problem) => (as.party && maySettle(problem)) || (as.manager && isForManager(problem)),
  );
  const words: ReadonlyMap<number, readonly AskedHere[]> = as.party ? wordsIn(goesOn, state) : new Map();
  const settled = [...asked]
    .filter(([, those]) => those.every(({ state }) => state === "settled"))
    .map(([number]) => number);
  const answeredFor = ordersOf(goesOn, state);
  const given = {
    // Whoever says YES once more says nothing new.
    open: [...asked.keys()],
    words: [...words.keys()],
    questions: answeredFor.flatMap((order) => order.questions.map(({ number }) => number)),
    others: (goesOn.at(-1)?.problems ?? []).filter(({ verdict }) => verdict === "fail").length,
    answer: quoted.text,
    subject: quoted.subject,
    isFurniture: (line: string, signed: boolean) => isRemembered(line, furniture, signed),
    names: [fromName, from?.split("@")[0] ?? ""],
    bringsSheets: brought.length > 0,
    isOnSheets: (words: string) => brought.some((sheet) => standOn(words, sheet) || isMark(words, sheet)),
    sheetsNamed: (words: string) => {
      const named = as.party ? sheetsNamed(words, answeredFor) : undefined;
      // What is released may be under the cutter. Nobody but one of our own people takes it back, nor all that is left.
      const isReleased = answeredFor.some(({ sheets, released }) => {
        const gone = sheets.filter(({ id }) => named?.includes(id));
        if (released === undefined || gone.length === 0) return false;
        return gone.length === sheets.length || gone.some((sheet) => isReleasedPiece(sheet, released));
      });
      return named !== undefined && !isReleased && mayWithdraw(named, state, at, brought) ? named : undefined;
    },
  };
  const first =
    goesOn.length > 0 && given.open.length === 0
      ? whetherAllRight(text, given, besides, isAllRight(goesOn))
      : answersBeside(text, given, besides);
  const takesBack = settled.some((number) => first.answers.no.has(number));
  const open = given.open.filter((number) => !settled.includes(number));
  const { answers: all, statements } = takesBack ? answersBeside(text, { ...given, open }, besides) : first;
  const isManagers = (number: number): boolean => isForManager(asked.get(number)?.[0]?.problem);
  const word = [...all.yes].filter(isManagers).flatMap((number) => asked.get(number) ?? []);
  const sheets = state.orders.flatMap((order) => order.sheets);
  const denied = [...all.no].flatMap((number) => (asked.get(number) ?? []).map(({ problem }) => problem));
  // Who says what should stand there and sends a sheet with something else is asked which of them holds.
  const areWordsAsked = askedWords(denied, sheets).length > 0;
  const isOtherwise = (line: string): boolean =>
    (areWordsAsked && wordsNotThere(line, brought) !== undefined) ||
    finishNotThere(line, brought, catalogue) !== undefined;
  const others =
    brought.length > 0 && denied.length > 0
      ? [...all.lines]
          .filter(isOtherwise)
          .map((line): Statement => ({ kind: "said", where: "text", words: line.slice(0, longestShown) }))
      : [];
  const isUnanswered =
    brought.length === 0 &&
    all.yes.size + all.no.size + all.withdraws.size === 0 &&
    [...asked.values()].flat().some(({ state }) => state === "open");
  const saidBy = (statement: Statement): Statement => {
    if (statement.kind !== "said") return statement;
    // Nobody but one of us is done with what a manager says.
    if (as.manager && replied.manager !== undefined)
      return { kind: "said", where: "manager", by: replied.manager.name, words: statement.words };
    return statement.where === "text" && isUnanswered ? { ...statement, where: "reply" } : statement;
  };
  // What a manager does not want cut is for one of us.
  const refused = [...all.no].filter(isManagers).map(
    (number): Statement => ({
      kind: "said",
      where: "text",
      words: `${number} NO`,
    }),
  );
  const replies = { ...at, from, repliesTo: lastOf(goesOn) };
  const againstNo = [...all.yes].filter(
    (number) =>
      !isManagers(number) &&
      asked.get(number)?.some((one) => one.state === "open" && isDenied(one, replies, state)),
  );
  const answers = {
    ...all,
    yes: new Set([...all.yes].filter((number) => !isManagers(number) && !againstNo.includes(number))),
    no: new Set([...all.no].filter((number) => !isManagers(number))),
  };
  const isWithdrawn = ({ state }: AskedHere): boolean => state === "withdrawn";
  const isLate = (number: number): boolean => asked.get(number)?.every(isWithdrawn) === true;
  const late = [...answers.yes, ...answers.no].filter(isLate);
  const yes = [...answers.yes].flatMap((number) =>
    (asked.get(number) ?? []).filter((one) => !isWithdrawn(one)),
  );
  const kept = askedWords(
    yes.map(({ problem }) => problem),
    sheets,
  );
  return {
    answers,
    statements: [...statements, ...others, ...refused].map(saidBy),
    decides: word.map(({ order, key }) => ({ order, key })),
    settles: [...yes, ...[...all.nothing].flatMap((number) => words.get(number) ?? [])].map(
      ({ order, key }) => ({ order, key }),
    ),
    late,
    denied: againstNo,
    kept: onceEach(kept),
  };
}

/** Whether words are a sheet's station mark. */
const isMark = (words: string, { mark = "" }: Sheet): boolean =>
  mark !== "" && tokensOf(words).join() === tokensOf(mark).join();

/** In characters. */
const longestShown = 160;

function isAllRight(goesOn: readonly Answered[]): boolean {
  return (
    goesOn.length > 0 && goesOn.every(({ problems }) => problems.every(({ verdict }) => verdict === "pass"))
  );
}

/** What no question has for a number. */
const none = 999;

/**
 * A reply to an answer in which nothing was asked, read as if it had asked whether all is right. A yes needs nobody
 * where all `isRight`, and what only tells of the sheets that came never does. A no without a sheet is for a person,
 * even if it is no more than a sign.
 */
function whetherAllRight(
  text: string,
  given: Asked,
  besides: Parameters<typeof answersBeside>[2],
  isRight: boolean,
): ReturnType<typeof answersBeside> {
  const read = answersBeside(text, given, besides);
  const { answers, statements } = answersBeside(text, { ...given, open: [none] }, besides);
  if (answers.no.has(none)) {
    const [words = ""] = answers.lines;
    return given.bringsSheets || read.statements.length > 0
      ? read
      : { ...read, statements: [{ kind: "said", where: "text", words: words.slice(0, longestShown) }] };
  }
  const isIdle = answers.yes.has(none) ? isRight : given.bringsSheets;
  return isIdle && statements.length === 0 ? { ...read, statements } : read;
}

type AskedHere = KnownQuestion & QuestionOf;

/**
 * The questions of those answers by their numbers: those that a sender alone may settle, or has settled. Several share
 * a number where they read the same. A number that two orders share is left out.
 */
function askedIn(
  goesOn: readonly Answered[],
  state: BuyerState,
  mayAnswer: (problem: Problem) => boolean,
): Map<number, readonly AskedHere[]> {
  return new Map(
    [...toldIn(goesOn, state)].filter(([, those]) => {
      const [first] = those;
      return those.every(({ order, problem }) => order === first?.order && mayAnswer(problem));
    }),
  );
}

/**
 * Words in those answers that still wait for a person, by their numbers. Several orders may keep the same ones. What is
 * said of a released order has stopped the engraving room, so one of our own people reads it.
 */
function wordsIn(goesOn: readonly Answered[], state: BuyerState): Map<number, readonly AskedHere[]> {
  if (ordersOf(goesOn, state).some(({ released }) => released !== undefined)) return new Map();
  return new Map(
    [...toldIn(goesOn, state)].filter(([, those]) =>
      those.every((one) => one.state === "open" && areBuyersWords(one.problem)),
    ),
  );
}

/** The questions of those answers by their numbers. */
function toldIn(goesOn: readonly Answered[], state: BuyerState): Map<number, AskedHere[]> {
  const last = lastOf(goesOn);
  const questions = ordersOf(goesOn, state)
    .flatMap(({ number, questions: all }) => all.map((one): AskedHere => ({ ...one, order: number })))
    .filter((one) => one.state !== "gone" && one.letter <= last);
  return Map.groupBy(questions, ({ number }) => number);
}

/** The latest letter whose answer a reply goes on with. */
function lastOf(goesOn: readonly Answered[]): number {
  return Math.max(0, ...goesOn.map(({ letter }) => letter));
}

/** Whether a question is for the manager of its order alone. */
function isForManager(problem: Problem | undefined): boolean {
  return problem?.check === managerWord.id;
}

/** The orders that were answered for. */
function ordersOf(goesOn: readonly Answered[], { orders }: BuyerState): OrderState[] {
  const keys = new Set(goesOn.flatMap((one) => one.orders.map(orderKey)));
  return orders.filter(({ number }) => keys.has(orderKey(number)));
}

/** Who the sender is to the orders that were answered for. A reply without sheets names no number itself. */
function partyToAnswered({ letter, answered, proof }: Reply, desk: Desk): Promise<Party> {
  const numbers = [...new Set(answered.flatMap(({ orders }) => orders))];
  return partyOf({ from: letter.from, proof, numbers }, desk);
}

/** What the answer says that the letter replies to. */
export async function answerWords(
  { letter, answered }: Pick<Reply, "letter" | "answered">,
  { store, reader }: Pick<Desk, "store" | "reader">,
): Promise<Quoted> {
  const nearest = answered.find(({ answer }) => answer?.messageId === letter.inReplyTo) ?? answered.at(-1);
  const answer = nearest === undefined ? undefined : await store.answers.of(nearest.letter);
  const opened = answer === undefined ? undefined : await reader.letter(answer.bytes);
  if (opened?.ok !== true) return { text: "", subject: "" };
  const { text, subject } = opened.value;
  return { text, subject };
}

function onceEach(words: readonly AskedWord[]): KeptWord[] {
  return [...new Map(words.map((kept) => [`${kept.word} ${projectKey(kept.project)}`, kept])).values()].map(
    ({ word, project }) => ({ word, project }),
  );
}
