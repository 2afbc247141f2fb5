import { isAmends } from "./amends.ts";
import type { OwnLine } from "./own-lines.ts";
import { sheetsPromisedIn } from "./promises.ts";
import { isChatter, isThanks } from "./small-talk.ts";
import { numberOf, plain, type Token, tokensIn } from "./tokens.ts";
import { type Run, unitsOf } from "./units.ts";

/** The numbers that a line may answer: those that are open, and how many other points there are. */
export interface Points {
  readonly open: readonly number[];
  readonly others: number;
  /** What the sender is called. */
  readonly names: readonly string[];
}

export interface Said {
  readonly number: number;
  readonly is: boolean;
}

/** One way to read a line up to some word. */
interface Way {
  readonly said: readonly Said[];
  /** A yes or a no without a number, for which there is no single question. */
  readonly bare: readonly boolean[];
  /** It gives a reason, which has to stand beside a yes. */
  readonly reason: boolean;
}

/** In characters. Nobody answers in so long a line. */
const longestAnswer = 320;
const mostWays = 12;
/** It may be a joke, or the number a size. */
const unclear = /[;:]-?[(DPpO/]|;-?\)|(?<![“"'‘\d])\d{1,4}["″′'](?!\p{L})/u;
/** "Yes, I got your question" answers nothing, where no number stands beside it. */
const acknowledges =
  /\b(?:got|received|saw|seen|see|read|know|understand|asked|told|looked|(?<!\b(?:to|for|on) (?:the|your) )questions?)\b|^\W*(?:oh|ah|aha)\b/iu;
const plainly =
  /\d|\b(?:both|all|each|everything|right|correct|correctly|fine|intended|intentional|meant|stands|typed)\b/iu;
/** Who is sorry, and not for a delay, may agree that the word is wrong. */
const regrets =
  /\b(?:sorry|apolog\p{L}+|excuse|pardon|forgive)\b(?!.*\b(?:delay|late|wait|long|slow|missed|confusion|trouble|inconvenience|bother\p{L}*|short)\b)/iu;

/**
 * What a line answers. Undefined if a word of it may say anything else, or if it can be read in two ways. `isIdle`:
 * whether a sentence beside an answer says nothing.
 */
export function saidIn(
  own: OwnLine,
  points: Points,
  isIdle: (sentence: string) => boolean,
): readonly Said[] | undefined {
  if (own.line.length > longestAnswer || own.line.includes("?") || unclear.test(own.line)) return undefined;
  const line = withLetters(plain(own.line));
  const ways = waysIn(line, own, points, isIdle).filter(isWhole);
  const [way, ...more] = new Map(ways.map((one) => [keyOf(one.said), one])).values();
  if (way === undefined || more.length > 0 || way.said.length === 0) return undefined;
  if (
    own.under === undefined &&
    acknowledges.test(line) &&
    !plainly.test(line) &&
    !/\b(?:two|three|four|five|six|seven|eight|nine|ten)\b/iu.test(line)
  )
    return undefined;
  const isSorry = regrets.test(line) && !tokensIn(line, new Set()).some(({ kind }) => kind === "Yes");
  return isSorry && way.said.some(({ is }) => is) ? undefined : way.said;
}

/** Whether a line answers nothing and binds nothing. `isAnswered`: it stands below a yes, and may tell its reason. */
export function bindsNothing(line: string, names: readonly string[], isAnswered: boolean): boolean {
  if (line.length > longestAnswer || line.includes("?")) return false;
  const none = { open: [0], others: 0, names };
  const ways = waysIn(plain(line), { line, afterSeveral: false }, none, () => false);
  return ways.some(
    ({ said, bare, reason }) => said.length === 0 && bare.length === 0 && (isAnswered || !reason),
  );
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

function keyOf(said: readonly Said[]): string {
  return [...new Set(said.map(({ number, is }) => `${number}${is ? "+" : "-"}`))].toSorted().join();
}

function waysIn(line: string, own: OwnLine, points: Points, isIdle: (sentence: string) => boolean): Way[] {
  const names = new Set(points.names.flatMap((name) => name.toLowerCase().split(/[^\p{L}]+/u)));
  const tokens = withHeads(tokensIn(line, names));
  const reached = tokens.map(() => new Map<string, Way>());
  reached[0]?.set("", { said: [], bare: [], reason: false });
  const last = new Map<string, Way>();
  const reach = (at: number, way: Way): void => {
    const ways = reached[at] ?? last;
    if (ways.size <= mostWays) ways.set(`${keyOf(way.said)} ${way.bare.join()} ${way.reason}`, way);
  };
  const isEdge = (at: number, kinds: RegExp): boolean => kinds.test(tokens[at]?.kind ?? "Stop");
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
      const runs = unitsOf(words);
      for (const way of ways) {
        for (const run of runs) {
          const next = goOn(way, run, words, { ...own, isBetween, isAlone }, points);
          if (next !== undefined) reach(to, next);
        }
        const isNo = way.said.at(-1)?.is === false;
        if (
          (isNo && isAmends(text)) ||
          (isSentence && isIdle(text)) ||
          (isBetween && (isChatter(text) || isThanks(text)))
        )
          reach(to, way);
        const promised = isBetween ? promisedIn(text, own, points, way.said) : undefined;
        if (promised !== undefined) reach(to, { ...way, said: [...way.said, ...promised] });
      }
    }
  }
  return [...last.values()];
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
      const last = way.said.at(-1);
      return last === undefined ? undefined : answered(way, words, last.is, own, points);
    }
    case "confirms":
      return own.isBetween ? bare(way, words, run.is, own, points) : undefined;
    case "bare":
      return bare(way, words, run.is, own, points);
    case "set":
      return own.under === undefined && isSet(words, points) ? said(way, points.open, run.is) : undefined;
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
  const each = words.filter(({ kind }) => kind === "Yes" || kind === "No").length;
  const isOfEach = isAlone && each > 1 && words.every(({ kind }) => /^(?:Yes|No|And|AndN|Mark)$/u.test(kind));
  const areThey = words.some(({ text }) => /^(?:they|these|those)$/u.test(text));
  if (areThey && isSure && is && open.length > 1) return said(way, open, is);
  if (isOfEach && isSure && each === open.length) return said(way, open, is);
  return { ...way, bare: [...way.bare, is] };
}

/** Whether words such as "both" and "all three" mean the open questions, and nothing else that stood beside them. */
function isSet(words: readonly Token[], { open, others }: Points): boolean {
  const text = words.map((word) => word.text).join(" ");
  const isBoth = /\b(?:both|beides?|double|twice|two times|2 x|x 2|two x|times two)\b/u.test(text);
  const count = words.find(({ kind }) => kind === "Num" || kind === "Count");
  const isPlain = words.some(({ kind }) => kind === "Yes" || kind === "No");
  if (count?.kind === "Num" && isBoth) return false;
  if (count !== undefined && numberOf(count, open, others, false) !== open.length) return false;
  // Of points to fix nobody says yes. "Both are right" may mean two of them, and "all" may mean them too.
  return isBoth ? open.length === 2 && (others !== 2 || isPlain) : others === 0 || /question/u.test(text);
}

/** A range that runs backwards, or too far, is none. */
const longestRange = 50;

function numbersIn(words: readonly Token[], { open, others }: Points): number[] | undefined {
  const isQuestion = words.some(({ kind }) => kind === "Label");
  const numbers: number[] = [];
  let all: number | undefined;
  for (const [at, word] of words.entries()) {
    if (!/^(?:Num|Count|Nth)$/u.test(word.kind)) continue;
    const number = numberOf(word, open, others, isQuestion);
    if (number === undefined) return undefined;
    if (word.kind === "Count" && words[at - 1]?.kind === "Nth") continue;
    if (word.kind === "Count" && isAfterAll(words, at)) {
      all = number;
      continue;
    }
    const [first, tie] = [words[at - 2], words[at - 1]];
    const isRange =
      first?.kind === "Num" && word.kind === "Num" && /^(?:[-–]|to|thru|through|bis)$/u.test(tie?.text ?? "");
    const from = (isRange ? numbers.pop() : undefined) ?? number;
    const length = number - from + 1;
    if (length < 1 || length > longestRange) numbers.push(-1);
    else numbers.push(...Array.from({ length }, (_, i) => from + i));
  }
  const isBoth = words.some(({ kind, text }) => kind === "All" && /^both\b/u.test(text));
  const isAll = words.some(({ kind }, at) => kind === "All" && words[at + 1]?.kind === "Num");
  const isCounted =
    (!isBoth || numbers.length === 2) &&
    (!isAll || numbers.length > 1) &&
    (all === undefined || numbers.length === all);
  return isCounted && !isQuantity(words) ? numbers : undefined;
}

/** "All three". */
function isAfterAll(words: readonly Token[], at: number): boolean {
  const before = words.slice(0, at).findLast(({ kind }) => !/^(?:The|My|Of|It|Pron)$/u.test(kind));
  return before?.kind === "All";
}

/** "The 3 are right" counts three. */
function isQuantity(words: readonly Token[]): boolean {
  return words.some(
    ({ kind }, at) => kind === "The" && words[at + 1]?.kind === "Num" && words[at + 2]?.kind === "Are",
  );
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
  const named = sheetsPromisedIn(sentence);
  if (named === undefined) return undefined;
  const numbers = named.length > 0 || under === undefined ? named : [under];
  if (numbers.length === 0 && others === 0 && said.every(({ is }) => is)) return undefined;
  return numbers.filter((number) => open.includes(number)).map((number) => ({ number, is: false }));
}
