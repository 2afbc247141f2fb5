import { isSet, isTie, numbersIn } from "./numbers.ts";
import type { OwnLine } from "./own-lines.ts";
import { plainAnswerIn } from "./plain-answer.ts";
import { isAmends, pointsDoneIn, sheetsPromisedIn } from "./promises.ts";
import { areWhys, isTalk, type Topic } from "./talk.ts";
import { type Token, tokensIn } from "./tokens.ts";
import { type Run, unitsOf } from "./units.ts";

/** The numbers that a line may answer: those that are open, and how many other points there are. */
export interface Points extends Topic {
  readonly others: number;
  /** What the sender is called. */
  readonly names: readonly string[];
  /** What the line before has answered at last. */
  readonly last?: boolean | undefined;
}

export interface Said {
  readonly number: number;
  readonly is: boolean;
}

/** One way to read a line up to some word. */
export interface Way {
  readonly said: readonly Said[];
  /** A yes or a no without a number, for which there is no single question. */
  readonly bare: readonly boolean[];
  /** It gives a reason, which has to stand beside a yes. */
  readonly reason: boolean;
}

const mostWays = 12;

/** What is said, as one word: two ways that say the same have the same. */
export function keyOf(said: readonly Said[]): string {
  return [...new Set(said.map(({ number, is }) => `${number}${is ? "+" : "-"}`))].toSorted().join();
}

/** All ways to read a line from its beginning to its end. None if there are too many. */
export function waysIn(
  line: string,
  own: OwnLine,
  points: Points,
  isIdle: (sentence: string) => boolean,
): Way[] {
  const names = new Set(points.names.flatMap((name) => name.toLowerCase().split(/[^\p{L}]+/u)));
  const tokens = withHeads(tokensIn(line, names));
  const reached = tokens.map(() => new Map<string, Way>());
  reached[0]?.set("", { said: [], bare: [], reason: false });
  const last = new Map<string, Way>();
  const isQuoting = /["“”«»„]/u.test(own.line);
  let isClear = true;
  const reach = (at: number, way: Way): void => {
    const ways = reached[at] ?? last;
    isClear &&= ways.size <= mostWays;
    if (isClear) ways.set(`${keyOf(way.said)} ${way.bare.join()} ${way.reason}`, way);
  };
  const isEdge = (at: number, kinds: RegExp): boolean => kinds.test(tokens[at]?.kind ?? "Stop");
  // "Y" and "e" may be letters.
  const isJoint = (at: number): boolean => /^(?:and|&|\+)/u.test(tokens[at]?.text ?? "");
  for (const [from, token] of tokens.entries()) {
    const ways = [...(reached[from]?.values() ?? [])];
    if (ways.length === 0) continue;
    if (/^(?:Mark|Stop|Smile|And)$/u.test(token.kind)) for (const way of ways) reach(from + 1, way);
    for (let to = from + 1; to <= tokens.length && tokens[to - 1]?.kind !== "Stop"; to++) {
      const words = tokens.slice(from, to);
      const text = line.slice(token.from, words.at(-1)?.to);
      const isBetween = isEdge(from - 1, /Stop|Mark|^And$/u) && isEdge(to, /Stop|Mark/u);
      const isSentence = isEdge(from - 1, /Stop/u) && isEdge(to, /Stop/u);
      const isAlone = isEdge(from - 1, /Stop|Polite|Sender/u) && isEdge(to, /Stop|Polite|Sender|Smile/u);
      // "1 to 3" is not taken apart.
      if (isTie(tokens[to - 1], tokens[to], tokens[to + 1])) continue;
      const isOpen =
        !isQuoting && isEdge(from - 1, /Stop|Mark|^And$/u) && (isEdge(to, /Stop|Mark|Smile/u) || isJoint(to));
      const loose = isOpen ? plainAnswerIn(words) : undefined;
      const runs = [...unitsOf(words), ...(loose === undefined ? [] : [loose])];
      for (const way of ways) {
        for (const run of runs) {
          const next = goOn(way, run, words, { ...own, isBetween, isAlone }, points);
          if (next !== undefined) reach(to, next);
        }
        const isNo = way.said.at(-1)?.is === false;
        if (
          (isNo && (isEdge(to, /Stop|Mark/u) || isJoint(to)) && isAmends(text)) ||
          (isSentence && isIdle(text)) ||
          (isOpen && isTalk(text, points))
        )
          reach(to, way);
        if (isOpen && areWhys(text, points)) reach(to, { ...way, reason: true });
        const promised = isOpen ? promisedIn(text, own, points, way.said) : undefined;
        if (promised !== undefined) reach(to, { ...way, said: [...way.said, ...promised] });
      }
    }
  }
  return isClear ? [...last.values()] : [];
}

/** Where a run of words stands: in its line, and between what separates words or sentences. */
interface Place extends OwnLine {
  readonly isBetween: boolean;
  readonly isAlone: boolean;
}

/** A way that goes on with a run of words, or undefined if it cannot. */
function goOn(way: Way, run: Run, words: readonly Token[], own: Place, points: Points): Way | undefined {
  switch (run.what) {
    case "nothing":
      return way;
    case "introduction":
      // Behind an answer it may introduce what binds it.
      return own.isBetween && way.said.length + way.bare.length === 0 ? way : undefined;
    case "echo":
      return own.isBetween || way.said.length > 0 ? { ...way, reason: true } : undefined;
    case "aside":
      return own.isBetween && way.said.length > 0 ? { ...way, reason: true } : undefined;
    case "reason":
      return { ...way, reason: true };
    case "same": {
      const isFirst = way.said.length + way.bare.length === 0;
      const last = way.said.at(-1)?.is ?? (isFirst ? points.last : undefined);
      return last === undefined ? undefined : answered(way, words, last, own, points);
    }
    case "confirms":
      return own.isBetween ? bare(way, words, run.is, own, points) : undefined;
    case "bare":
      return bare(way, words, run.is, own, points);
    case "set":
      return own.under === undefined && isSet(words, points) ? said(way, points.open, run.is) : undefined;
    case "named":
    default:
      return answered(way, words, run.is, own, points);
  }
}

function said(way: Way, numbers: readonly number[], is: boolean): Way {
  return { ...way, said: [...way.said, ...numbers.map((number) => ({ number, is }))] };
}

/** The way behind an answer to numbers. */
function answered(
  way: Way,
  words: readonly Token[],
  is: boolean,
  { under }: Place,
  points: Points,
): Way | undefined {
  const numbers = numbersIn(words, points);
  // An answer that names one point and stands under another is not guessed at.
  const isHere = under === undefined || numbers?.every((number) => number === under) === true;
  return numbers === undefined || numbers.length === 0 || !isHere ? undefined : said(way, numbers, is);
}

/** The way behind a yes or a no that names no number. */
function bare(
  way: Way,
  words: readonly Token[],
  is: boolean,
  { under, afterSeveral, isAlone }: Place,
  { open, others }: Points,
): Way {
  const isSure = others === 0 && !afterSeveral;
  const number = under ?? (isSure && open.length === 1 ? open[0] : undefined);
  if (number !== undefined) return said(way, [number], is);
  const each = words
    .filter(({ kind }) => kind === "Yes" || kind === "No")
    .reduce((sum, { text }) => sum + (text === "yes yes" || text === "no no" ? 2 : 1), 0);
  const isOfEach =
    isAlone &&
    each > 1 &&
    words.every(({ kind }) => /^(?:Yes|No|And|AndN|Mark|The|My|Answer|Are)$/u.test(kind));
  const areThey = words.some(({ text }) => /^(?:they|these|those)$/u.test(text));
  if (areThey && isSure && is && open.length > 1) return said(way, open, is);
  if (isOfEach && isSure && each === open.length) return said(way, open, is);
  return { ...way, bare: [...way.bare, is] };
}

/** "2. yes": the point belongs to the number before it. */
function withHeads(tokens: readonly Token[]): Token[] {
  return tokens.map((token, at) => {
    const isHead =
      token.kind === "Stop" &&
      token.text === "." &&
      /^(?:Num|Count)$/u.test(tokens[at - 1]?.kind ?? "") &&
      (/Stop|Mark|Label/u.test(tokens[at - 2]?.kind ?? "Stop")
        ? tokens[at + 1] !== undefined
        : /^(?:And|Are|Is)$/u.test(tokens[at - 2]?.kind ?? "") &&
          /^(?:Yes|No|Good|Bad)$/u.test(tokens[at + 1]?.kind ?? ""));
    return isHead ? { ...token, kind: "Mark" } : token;
  });
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
  const done = pointsDoneIn(sentence);
  if (done !== undefined)
    return others > 0 && done.every((number) => !open.includes(number)) ? [] : undefined;
  const named = sheetsPromisedIn(sentence);
  if (named === undefined) return undefined;
  const numbers = named.length > 0 || under === undefined ? named : [under];
  if (numbers.length === 0 && others === 0 && said.every(({ is }) => is)) return undefined;
  return numbers.filter((number) => open.includes(number)).map((number) => ({ number, is: false }));
}
