import { counts, ordinals, type Token } from "./tokens.ts";
import type { Points } from "./ways.ts";

/** Whether words such as "both" and "all three" mean the open questions, and nothing else that stood beside them. */
export function isSet(words: readonly Token[], { open, others }: Points): boolean {
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

/** The numbers that a run of words names, or undefined if they may count something else. */
export function numbersIn(words: readonly Token[], { open, others }: Points): number[] | undefined {
  const isQuestion = words.some(({ kind }) => kind === "Label");
  const numbers: number[] = [];
  let all: number | undefined;
  for (const [at, word] of words.entries()) {
    if (!/^(?:Num|Count|Nth)$/u.test(word.kind)) continue;
    const number = numberOf(word, open, others, isQuestion);
    if (number === undefined) return undefined;
    // "The first 3" are three, as "the first three" are.
    if (word.kind !== "Nth" && words[at - 1]?.kind === "Nth") {
      const run = runOf(words[at - 1]?.text, number, open, others);
      if (run === undefined) return undefined;
      numbers.push(...run);
      continue;
    }
    if (word.kind === "Count" && isAfterAll(words, at)) {
      all = number;
      continue;
    }
    const [first, tie] = [words[at - 2], words[at - 1]];
    const isRange = isTie(first, tie, word);
    const from = (isRange ? numbers.pop() : undefined) ?? number;
    const length = number - from + 1;
    if (length < 1 || length > longestRange) numbers.push(-1);
    else numbers.push(...Array.from({ length }, (_, i) => from + i));
  }
  const isBoth = words.some(({ kind, text }) => kind === "All" && text.startsWith("both"));
  const isAll = words.some(({ kind }, at) => kind === "All" && words[at + 1]?.kind === "Num");
  const isCounted =
    (!isBoth || numbers.length === 2) &&
    (!isAll || numbers.length > 1) &&
    (all === undefined || numbers.length === all);
  return isCounted && !isQuantity(words) ? numbers : undefined;
}

/** "1 to 3", "one through three". */
export function isTie(first: Token | undefined, tie: Token | undefined, last: Token | undefined): boolean {
  const isNumber = (one: Token | undefined): boolean => one?.kind === "Num" || one?.kind === "Count";
  return isNumber(first) && isNumber(last) && /^(?:[-–]|to|thru|through|bis)$/u.test(tie?.text ?? "");
}

/** What a count behind "the first" adds to it: nothing if it is "one". */
function runOf(
  place: string | undefined,
  count: number,
  open: readonly number[],
  others: number,
): readonly number[] | undefined {
  if (count === 1) return [];
  if (others > 0 || count > open.length) return undefined;
  return place === "first" ? open.slice(1, count) : place === "last" ? open.slice(-count, -1) : undefined;
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

/** A number is a question's: "2", "three", "the second". Undefined if it may mean something else. */
function numberOf(
  token: Token,
  open: readonly number[],
  others: number,
  isQuestion: boolean,
): number | undefined {
  if (token.kind === "Num") return Number(token.text);
  if (token.kind === "Count") return counts.indexOf(token.text) + 1;
  const digit = /^\d/u.exec(token.text)?.[0];
  const place = digit === undefined ? ordinals.indexOf(token.text) : Number(digit) - 1;
  if (others > 0 || open.length < 2) {
    // "Your second question" is 2 where no other one can be the second.
    const number = place + 1;
    return isQuestion && open.includes(number) && (open[place] ?? number) === number ? number : undefined;
  }
  if (/former|latter/u.test(token.text))
    return open.length === 2 ? open[token.text === "former" ? 0 : 1] : undefined;
  return token.text === "last" ? open.at(-1) : open[place];
}
