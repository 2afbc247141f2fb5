import { numberPart } from "./keys.ts";
import { oneSlipApart } from "./near.ts";

/** Numbers of a series differ by less than this: 4512 and 4521, although two digits look swapped. */
const countsOn = 10;

/** A number as typed, in runs of letters and of digits. */
function runsOf(typed: string): string[] {
  return (
    numberPart(typed)
      .toUpperCase()
      .match(/\p{L}+|\d+/gu) ?? []
  );
}

/**
 * Whether two order numbers differ by one slip of the hand, rather than as two orders do. Numbers of two orders count
 * on by ones, by hundreds or by letters of buildings, or one has a suffix. `together`: both came in one letter, where
 * numbers of a series are near each other.
 */
export function isSlip(one: string, other: string, together: boolean): boolean {
  if (!oneSlipApart(numberPart(one), numberPart(other))) return false;
  const [a, b] = [runsOf(one), runsOf(other)];
  if (a.length !== b.length) return false;
  const odd = a.flatMap((run, i) => (run === b[i] ? [] : [[run, b[i] ?? ""] as const]));
  const [[left, right] = ["", ""], ...more] = odd;
  if (more.length > 0 || a.join("").length < 4 || b.join("").length < 4) return false;
  const [short, long] = [left, right].toSorted((x, y) => x.length - y.length) as [string, string];
  if (/\d/.test(left) !== /\d/.test(right)) return false;
  if (!/\d/.test(left)) return isSlipOfLetters(short, long);
  return short.length === long.length ? isSlipOfDigits(short, long, together) : isDigitMore(short, long);
}

/**
 * Slips are EG and GE, EG and EQ. No slips are A and B, which name buildings, and NT and ST, the north tower and the
 * south one.
 */
function isSlipOfLetters(short: string, long: string): boolean {
  if (short.length < 2) return false;
  if (short.length !== long.length) return true;
  const odd = [...short].flatMap((letter, i) => (letter === long[i] ? [] : [letter + (long[i] ?? "")]));
  const [pair = "", ...more] = odd;
  if (more.length > 0) return true;
  const isNext =
    short.slice(0, -1) === long.slice(0, -1) && Math.abs(pair.charCodeAt(0) - pair.charCodeAt(1)) === 1;
  return !isNext && !/^[NSEW]{2}$/.test(pair);
}

/** A slip is 500 and 5000. No slip is 201 and 1201, which are numbers of floors. */
function isDigitMore(short: string, long: string): boolean {
  const isFloor = short.length === 3 && long.endsWith(short) && isOfSeries(short);
  return short.length > 2 && !isFloor;
}

/** Whether numbers count floors, as 101, 201 and 301 do. */
function isOfSeries(digits: string): boolean {
  return Number(digits) % 100 < 30;
}

function isSlipOfDigits(one: string, other: string, together: boolean): boolean {
  const apart = Math.abs(Number(one) - Number(other));
  if (apart < countsOn) return false;
  // A room, a unit or a floor has three digits as easily as an order.
  if (one.length < 4) return false;
  const isSwap = [...one].toSorted().join("") === [...other].toSorted().join("");
  if (isSwap) return true;
  const isSeries = apart % 100 === 0 && isOfSeries(one);
  return together && !isSeries;
}
