import type { Order } from "../trade/order.ts";
import { byId, letterOf } from "./ids.ts";
import { plainText } from "./keys.ts";
import { missingOf } from "./missing.ts";
import { nearNumbers, nearProjects } from "./near.ts";

/** Another order of the same buyer that this one was probably meant to be: its number is one slip away. */
export function meantOrder(order: Order, others: readonly Order[]): Order | undefined {
  return others.find(
    (other) => nearNumbers(order.number, other.number) && seemOne(order, other) && isDoubtful(order, other),
  );
}

/**
 * Whether two orders of one buyer look like one order under two numbers: a station of the one lacks sheets
 * and the other has sheets for it, or a device of the one says of no plate and the projects are the same.
 * Orders of different projects may well use the same station marks.
 */
function seemOne(one: Order, other: Order): boolean {
  const named = one.project !== undefined && other.project !== undefined;
  const sameProject =
    named &&
    (plainText(one.project) === plainText(other.project) || nearProjects(one.project, other.project));
  if (named && !sameProject) return false;
  return (
    lacksWhereHas(one, other) ||
    lacksWhereHas(other, one) ||
    (sameProject && one.loose.length + other.loose.length > 0)
  );
}

/**
 * Whether the first of two orders is the one to ask about: the one that the newer letter brought, since that
 * is the letter being answered; of one letter the one with fewer sheets, then the later.
 */
function isDoubtful(order: Order, other: Order): boolean {
  const [first, otherFirst] = [order.sheets[0]?.id ?? "", other.sheets[0]?.id ?? ""];
  const [last, otherLast] = [order.sheets.at(-1)?.id ?? "", other.sheets.at(-1)?.id ?? ""];
  return (
    (byId(letterOf(last), letterOf(otherLast)) ||
      other.sheets.length - order.sheets.length ||
      byId(first, otherFirst)) > 0
  );
}

function lacksWhereHas(one: Order, other: Order): boolean {
  const marks = new Set(other.stations.map(({ mark }) => plainText(mark)));
  return missingOf(one).some(({ station }) => marks.has(plainText(station)));
}
