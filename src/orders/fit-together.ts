import type { Order } from "../trade/order.ts";
import { isPrefixed, lookSame } from "./alike.ts";
import { byId, letterOf } from "./ids.ts";
import { plainText } from "./keys.ts";
import { missingOf } from "./missing.ts";
import { nearNumbers, nearProjects } from "./near.ts";
import { isPlaceholder } from "./placeholder.ts";

/**
 * Whether two orders may be one. Their sheets fit, and their numbers are one slip apart, look the same, or differ
 * only by letters in front.
 */
export function fitTogether(one: Order, other: Order): boolean {
  const [a, b] = [one.number, other.number];
  return (nearNumbers(a, b) || lookSame(a, b) || isPrefixed(a, b)) && seemOne(one, other);
}

/**
 * Whether two orders of one buyer look like one order under two numbers. Either a station of the one lacks sheets
 * that the other has, or the projects are the same and a device of the one names no plate. Orders of different
 * projects may well use the same station marks.
 */
function seemOne(one: Order, other: Order): boolean {
  const sameProject = ofOneProject(one, other);
  if (sameProject === false) return false;
  return (
    lacksWhereHas(one, other) ||
    lacksWhereHas(other, one) ||
    (sameProject === true && one.loose.length + other.loose.length > 0)
  );
}

/** Whether two orders name one project, slips of the hand allowed. Undefined if one of them names none. */
export function ofOneProject({ project: one }: Order, { project: other }: Order): boolean | undefined {
  if (one === undefined || other === undefined || isPlaceholder(one) || isPlaceholder(other))
    return undefined;
  return plainText(one) === plainText(other) || nearProjects(one, other);
}

/** When an order was opened: its first sheet, and how many came with it. Later sheets do not change that. */
interface Opening {
  readonly letter: string;
  readonly sheets: number;
  readonly first: string;
}

export function firstIn({ sheets }: Order): Opening {
  const first = sheets[0]?.id ?? "";
  const letter = letterOf(first);
  return { letter, first, sheets: sheets.filter(({ id }) => letterOf(id) === letter).length };
}

/**
 * Whether the first of two orders is the one to ask about. That is the one that the newer letter brought. In one
 * letter it is the one with fewer sheets, then the later.
 */
export function isLater(one: Opening, other: Opening): boolean {
  return (byId(one.letter, other.letter) || other.sheets - one.sheets || byId(one.first, other.first)) > 0;
}

function lacksWhereHas(one: Order, other: Order): boolean {
  const marks = new Set(other.stations.map(({ mark }) => plainText(mark)));
  return missingOf(one).some(({ station }) => marks.has(plainText(station)));
}
