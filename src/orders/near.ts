import distance from "damerau-levenshtein";
import { numberKey, plainText } from "./keys.ts";

/** Longer texts are no names. The cost of comparing two texts is the product of their lengths. */
const longest = 200;

/**
 * Slips of the hand between two names or numbers, by their plain text. A character may be left out, added, mistaken,
 * or swapped with its neighbour (optimal string alignment distance). Infinity for texts too long to be names.
 */
export function slipsBetween(one: string, other: string): number {
  const [a, b] = [plainText(one), plainText(other)];
  if (a === b) return 0;
  return Math.max(a.length, b.length) > longest ? Number.POSITIVE_INFINITY : distance(a, b).steps;
}

/** Whether two texts are one slip apart, as `slipsBetween` counts. The cost is their length. */
export function oneSlipApart(one: string, other: string): boolean {
  const [short, long] = [plainText(one), plainText(other)].toSorted((a, b) => a.length - b.length);
  if (short === undefined || long === undefined || short === long) return false;
  if (long.length > longest) return false;
  // They differ somewhere, be it where the shorter ends.
  let at = 0;
  while (short[at] === long[at]) at++;
  if (long.length > short.length) return long.slice(at + 1) === short.slice(at);
  if (long.slice(at + 1) === short.slice(at + 1)) return true;
  const swapped = long[at] === short[at + 1] && long[at + 1] === short[at];
  return swapped && long.slice(at + 2) === short.slice(at + 2);
}

/**
 * Whether two different order numbers are one slip apart. Numbers of three characters or fewer are not compared: too
 * many are.
 */
export function nearNumbers(one: string, other: string): boolean {
  const [a, b] = [numberKey(one), numberKey(other)];
  return Math.min(a.length, b.length) > 3 && oneSlipApart(a, b);
}

/**
 * Whether two different project names are one name mistyped: by one slip, or by two in names of eight letters or
 * more. Their digits must be the same, since "Tower 1" and "Tower 2" are two projects.
 */
export function nearProjects(one: string, other: string): boolean {
  const [a, b] = [plainText(one), plainText(other)];
  const slips = slipsBetween(a, b);
  const most = Math.min(a.length, b.length) < 8 ? 1 : 2;
  return slips > 0 && slips <= most && digits(a) === digits(b);
}

function digits(text: string): string {
  return text.replace(/\P{N}/gu, "");
}
