import type { Arrivals, Came } from "../trade/letter.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { byId, letterOf } from "./ids.ts";

/** How old the letter of one file is beside that of another. */
export type Age = "newer" | "older" | "same letter" | "unclear";

/**
 * Whether the letter of the first file is newer than that of the other, both by its own date and by its arrival. If
 * the two disagree it is unclear. Letters without a time came in the order of their numbers.
 */
export function ageOf(one: FileId, other: FileId, arrivals: Arrivals): Age {
  const [a, b] = [letterOf(one), letterOf(other)];
  if (a === b) return "same letter";
  const [came, otherCame] = [arrivals.get(a), arrivals.get(b)];
  const numbers = byId(a, b);
  if (came === undefined || otherCame === undefined) return numbers > 0 ? "newer" : "older";
  const arrival = came.receivedAt.getTime() - otherCame.receivedAt.getTime();
  const dates =
    came.dated === undefined || otherCame.dated === undefined || isAhead(came) !== isAhead(otherCame)
      ? 0
      : came.dated.getTime() - otherCame.dated.getTime();
  if (arrival !== 0 && dates !== 0 && arrival > 0 !== dates > 0) return "unclear";
  return (arrival || dates || numbers) > 0 ? "newer" : "older";
}

/** How old one sheet is beside another. Sheets that were forwarded as one go by the letters that they stand in. */
export function ageOfSheets(one: Sheet, other: Sheet, arrivals: Arrivals): Age {
  const age = ageOf(one.id, other.id, arrivals);
  if (age !== "same letter" || one.written === undefined || other.written === undefined) return age;
  if (one.written === other.written) return age;
  return one.written > other.written ? "newer" : "older";
}

/** Mail servers give up after so many milliseconds: RFC 5321 §4.5.4.1 speaks of 4 to 5 days. */
const longestUnderWay = 5 * 24 * 60 * 60 * 1000;

/**
 * Whether the sender's clock was so far ahead that the letter is dated long after it arrived. Such a date says
 * nothing beside one of a right clock. Beside another clock that was ahead it may.
 */
function isAhead({ receivedAt, dated }: Came): boolean {
  return dated !== undefined && dated.getTime() - receivedAt.getTime() > longestUnderWay;
}

/** Sorts files by the arrival of their letters, then as they stand in them. */
export function byArrival(arrivals: Arrivals): (one: FileId, other: FileId) => number {
  const time = (id: FileId): number => arrivals.get(letterOf(id))?.receivedAt.getTime() ?? 0;
  return (one, other) => time(one) - time(other) || byId(one, other);
}
