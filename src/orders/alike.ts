import { numberKey, numberPart } from "./keys.ts";

/**
 * A number or mark as it looks. Letters between digits that look like digits are read as digits. Zeros in front are
 * left out. Runs of letters and of digits are kept apart. Two of one look are alike, though typed otherwise.
 */
export function looksOf(typed: string): string {
  return runsOf(typed)
    .map((run) => run.replace(/^0+(?=\d)/, ""))
    .join(" ")
    .replace(/(?<=\D) | (?=\D)/g, "");
}

/**
 * A station mark as typed, without a word such as "Station" before it: "Station S-104" is "S-104". A digit has to
 * follow the word.
 */
export function markPart(typed: string): string {
  return typed.slice(0, longest).replace(/^\s*(?:station|stn|sta|plate|mark)\b[\s.:#-]*(?=.*\p{N})/isu, "");
}

/** Whether two of one look differ by zeros in front, and in no letter. */
export function differByZeros(one: string, other: string): boolean {
  return runsOf(one).join(" ") !== runsOf(other).join(" ");
}

function runsOf(typed: string): string[] {
  const runs =
    typed
      .slice(0, longest)
      .normalize("NFKC")
      .match(/[\p{L}\p{N}]+/gu) ?? [];
  return runs.map(asDigits).flatMap((run) => run.match(/\d+|\D+/g) ?? []);
}

/** Whether two order numbers look the same, whatever words announce them. */
export function lookSame(one: string, other: string): boolean {
  return looksOf(numberPart(one)) === looksOf(numberPart(other));
}

/** Longer texts are neither numbers nor marks. */
const longest = 200;

const digitFor: Readonly<Record<string, string>> = { O: "0", I: "1" };
const between: Readonly<Record<string, string>> = { S: "5", B: "8" };
const letterFor: Readonly<Record<string, string>> = { "0": "O", "1": "I", "5": "S", "8": "B" };

/**
 * One run of letters and digits: 1O4 is 104, 10l is 101 and 0G is OG. 10B, 10S and I1 stay as they are: letters behind
 * and before a number are usual.
 */
function asDigits(run: string): string {
  const typed = run.replace(/(?<=\d)[lL](?=\d)|(?<=\d)l$/g, "1").toUpperCase();
  return typed
    .replace(/(?<=\d)[OI]+(?!\p{L})/gu, (letters) => [...letters].map((one) => digitFor[one] ?? one).join(""))
    .replace(/(?<=\d)[SB](?=\d)/g, (letter) => between[letter] ?? letter)
    .replace(/^[0158](?=\p{L}{1,3}$)/u, (digit) => letterFor[digit] ?? digit);
}

/** Whether two different numbers are one but for letters in front: "WO 4512" and "4512". */
export function isPrefixed(one: string, other: string): boolean {
  const [short = "", long = ""] = [numberKey(one), numberKey(other)].toSorted((a, b) => a.length - b.length);
  const before = long.slice(0, long.length - short.length);
  return long.endsWith(short) && short.length > 3 && /\d{3}/.test(short) && /^\p{L}{1,8}$/u.test(before);
}
