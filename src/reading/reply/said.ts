import type { OwnLine } from "./own-lines.ts";
import { plain, tokensIn } from "./tokens.ts";
import { keyOf, type Points, type Said, type Way, waysIn } from "./ways.ts";

/** In characters. Nobody answers in so long a line. */
const longestAnswer = 320;
/** It may be a joke, or the number a size. */
const unclear = /[;:]-?[(DPpO/]|;-?\)|(?<![“"'‘\d])\d{1,4}["″′'](?!\p{L})/u;
/** "Yes, I got your question" answers nothing, where no number stands beside it. */
const acknowledges =
  /\b(?:got|received|saw|seen|see|read|know|understand|asked|told|looked|(?<!\b(?:to|for|on) (?:the|your) )questions?)\b|^\W*(?:oh|ah|aha)\b/iu;
const plainly =
  /\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|first|second|third|fourth|fifth|last|both|all|each|everything|right|correct|correctly|fine|intended|intentional|meant|stands|typed)\b/iu;
/** Who is sorry, and not for a delay, may agree that the word is wrong. */
const regrets =
  /\b(?:sorry|apolog\p{L}+|excuse|pardon|forgive)\b(?!.*\b(?:delay|late|wait|long|slow|missed|confusion|trouble|inconvenience|bother\p{L}*|short)\b)/iu;

/** "2 correct please" may ask to have it corrected. "Yeah right" is said of what nobody believes. */
const eitherWay =
  /(?<!\b(?:is|are|'?s|both|all|yes|as|still|quite|just|absolutely|perfectly) )\b(?:correct|right),? (?:pls|plz|please)\b|\b(?:yeah|yea|ya|yep),? right\b/iu;

/**
 * What a line answers. Undefined if a word of it may say anything else, or if it can be read in two ways. `isIdle`:
 * whether a sentence beside an answer says nothing.
 */
export function saidIn(
  own: OwnLine,
  points: Points,
  isIdle: (sentence: string) => boolean,
): readonly Said[] | undefined {
  if (own.line.length > longestAnswer || own.line.includes("?")) return undefined;
  if (unclear.test(own.line) || eitherWay.test(own.line)) return undefined;
  const line = withLetters(plain(own.line));
  const ways = waysIn(line, own, points, isIdle).filter(isWhole);
  const [way, ...more] = new Map(ways.map((one) => [keyOf(one.said), one])).values();
  if (way === undefined || more.length > 0 || way.said.length === 0) return undefined;
  if (own.under === undefined && acknowledges.test(line) && !plainly.test(line)) return undefined;
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
