import { memoized } from "../../trade/memoized.ts";
import type { Act, Form } from "./clause.ts";
import { type Around, after, isMeant, type State } from "./clause-acts.ts";
import { bags } from "./clause-bags.ts";
import { forms } from "./clause-forms.ts";
import { notes, promised, severalSheets } from "./clause-notes.ts";
import { parted, spelledOut, withNumbers, withoutLights } from "./clause-text.ts";
import { says, shows } from "./clause-words.ts";
import { explains, namesMore, spellsOut } from "./explains.ts";
import type { Fits } from "./fits.ts";
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

/** Whether words tell of a sheet that comes. */
export const tellsOfSheet = memoized((words: string): boolean => {
  return tellsSheet.test(spelledOut(plain(words)));
});
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
  const readings = readingsOf(
    withNumbers(spelledOut(parted(plain(line.replace(/\n/gu, " ")))), around),
    around,
  );
  const [said, ...more] = new Map(readings.map((one) => [keyOf(one), one])).values();
  if (said === undefined || more.length > 0) return undefined;
  return contradicts(said) ? undefined : said;
}

/** What each way to read a line says. */
function readingsOf(text: string, around: Around): (readonly Said[])[] {
  const found: (readonly Said[])[] = [];
  // The same piece may stand in many readings.
  const here = { ...around, isReason: memoized((piece) => isReason(piece, around)) };
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
    owesYes: false,
    told: [],
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
      open.push(...stepsFrom(text, from, state, here, from === 0 || between.trim() !== ""));
    else if (isWhole(state)) found.push(withTold(state));
  }
  return found;
}

/** Whether a line may end so. */
const isWhole = ({ said, isSaid, isBare, isLoose, owesNo, owesYes, told }: State): boolean => {
  const hasNo = said.some(({ is }) => !is);
  return isSaid && !(isBare && isLoose) && !owesYes && (told.length === 0 || hasNo) && (!owesNo || hasNo);
};

/** "1 and 2 are German, 4 is a typo": beside what is wrong, what was only told of is right. */
const withTold = ({ said, told }: State): readonly Said[] => [
  ...said,
  ...told.map((number) => ({ number, is: true })),
];

interface Step {
  readonly at: number;
  readonly state: State;
}

/** What stands between clauses. */
const gap = /(?:[\s,.;!:()\][–—>→-]|(?<=[\s,.;!:()])(?:and|so|also|because|since)(?= ))*/uy;
const isEdge = /^\s*(?:[,.;!:()–—-]|$)/u;
const isJoined = /^\s*(?:[,.;!:()–—-]|$|(?:and|so|with|without) )/u;
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
  around: Around & { readonly isReason: (piece: string) => boolean },
  apart: boolean,
): Generator<Step> {
  lead.lastIndex = from;
  const led = lead.exec(text);
  const who = led?.groups?.["who"];
  if (led !== null && (who === undefined || (isSomebody(who) && !machine.test(who))))
    yield { at: from + led[0].length, state };
  for (const { form, match, does } of clausesAt(text, from)) {
    const { fits, any, ends, isOpen } = form;
    const at = from + match[0].length;
    const last = "of" in does && "length" in does.of ? does.of : state.last;
    if (fits !== undefined && !fitsHere(fits, any, match, last, around)) continue;
    if (does.kind === "each" && (from > 0 || goesOnAnswering.test(text.slice(at)))) continue;
    if ((does.kind === "about" || isOpen === true) && isNearQuestion(match[0], around.inQuestion)) continue;
    const next = after(state, does, around);
    const isFree = does.kind !== "why" && does.kind !== "because" && ends !== true;
    if (next !== undefined && (isFree || (ends === true ? isEdge : isJoined).test(text.slice(at))))
      yield { at, state: next };
  }
  // What is known already to say nothing, and other reasons beside a yes.
  for (const at of apart ? edgesFrom(text, from) : []) {
    const piece = text.slice(from, at);
    if (/\d/u.test(piece)) break;
    if (state.is === true && regrets.test(piece)) break;
    const isMended = !isMeant(state, around) && around.isMended?.(piece) === true;
    if (around.isSilent(piece) || isMended) yield { at, state: { ...state, isLoose: true } };
    else if (
      (isMeant(state, around) || (state.is === undefined && state.told.length > 0)) &&
      around.isReason(piece)
    )
      yield { at, state: { ...state, isSaid: true } };
  }
}

/** Whether a form fits the questions that were spoken of last, or the open ones where none was. */
function fitsHere(
  fits: Fits,
  any: boolean | undefined,
  match: RegExpExecArray,
  last: readonly number[],
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
  namesMore(piece, around.inQuestion) ||
  [piece, withoutLights(piece, around.inQuestion)].some(
    (one) => !isNearQuestion(one, around.inQuestion) && (explains(one) || areWhys(one, around)),
  );

/** A clause that may stand at some place of a line, and what it does there. */
interface Found {
  readonly form: Form;
  readonly match: RegExpExecArray;
  readonly does: Act;
}

/** The clauses that may begin at each place of a line. The same line is read in several ways. */
const known = memoized((_line) => new Map<number, readonly Found[]>());

function clausesAt(text: string, from: number): readonly Found[] {
  const places = known(text);
  const before = places.get(from);
  if (before !== undefined) return before;
  const all = allForms.flatMap((form) =>
    [...matchesAt(form.pattern, text, from)].flatMap((match) => {
      const does = form.act(match);
      return does === undefined ? [] : [{ form, match, does }];
    }),
  );
  places.set(from, all);
  return all;
}
const allForms = [...forms, ...notes, ...bags];

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
