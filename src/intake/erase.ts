import { counted } from "../answer/one-line.ts";
import type { By, Deleted, ErasePlan, EraseScope, InTheWay } from "../ports/store.ts";
import type { Desk, Rules } from "./desk.ts";
import { calendarName } from "./remind.ts";

/** Whose letters are erased. Orders that are not done with go only where they are given up. */
export interface Whom {
  readonly address: string;
  readonly givesUp: boolean;
}

/** What erasing a person came to. Nothing was erased if there is no stand-in. */
export interface ErasedPerson extends ErasePlan {
  readonly standIn?: string;
  readonly deleted: Deleted;
}

/** What erasing needs of a desk. */
type Erases = Pick<Desk, "store" | "clock"> & { readonly rules: Pick<Rules, "erasing"> };

/** What would be erased of a person. */
export function planErasing({ store, clock }: Erases, whom: Whom): Promise<ErasePlan> {
  return store.erasures.plan(whom, clock.now());
}

/** Erases a person's letters and orders; nothing, while something is in the way. What is counted stays. */
export async function erasePerson(desk: Erases, whom: Whom, by: By): Promise<ErasedPerson> {
  const erased = await desk.store.erasures.erase(whom, by, desk.clock.now());
  return { ...erased, deleted: await finishErasing(desk) };
}

/** What the calendar erases: of how many people, and what stays although it is old enough. */
export interface Due {
  readonly people: number;
  readonly inTheWay: readonly InTheWay[];
}

const day = 86_400_000;

/** What is older than the settings say. Nothing where they say nothing. */
export function planDue({ store, clock, rules }: Erases): Promise<Due> {
  return overDue({ store, clock, rules }, async (scope) => {
    const { letters, orders, inTheWay } = await store.erasures.plan(scope, clock.now());
    return { inTheWay, isAny: letters.length + orders.length > 0 };
  });
}

/** Erases what is older than the settings say. */
export async function eraseDue(desk: Erases): Promise<Due & { readonly deleted: Deleted }> {
  const { store, clock, rules } = desk;
  const by = { name: calendarName, why: `older than ${rules.erasing?.afterDays} days` };
  const due = await overDue(desk, async (scope) => {
    const { standIn, inTheWay } = await store.erasures.erase(scope, by, clock.now());
    return { inTheWay, isAny: standIn !== undefined };
  });
  return { ...due, deleted: await finishErasing(desk) };
}

async function overDue(
  { store, clock, rules }: Erases,
  each: (scope: EraseScope) => Promise<Pick<Due, "inTheWay"> & { readonly isAny: boolean }>,
): Promise<Due> {
  const days = rules.erasing?.afterDays;
  if (days === undefined) return { people: 0, inTheWay: [] };
  const before = new Date(clock.now().getTime() - days * day);
  const inTheWay: InTheWay[] = [];
  let people = 0;
  for (const address of await store.erasures.due(before)) {
    const one = await each({ address, before });
    if (one.isAny) people++;
    inTheWay.push(...one.inTheWay);
  }
  return { people, inTheWay };
}

/** Deletes what erasings have left to delete: those of now, and one that a death has cut short. */
export function finishErasing({ store, rules }: Erases): Promise<Deleted> {
  return store.erasures.finish(rules.erasing?.remove ?? (() => Promise.resolve(false)));
}

/** "12 letters, 2 orders"; notes of our own people count as letters. */
export function sizeOf({ letters, orders }: Pick<ErasePlan, "letters" | "orders">): string {
  return `${counted(letters.length, "letter")}, ${counted(orders.length, "order")}`;
}

/** What erasing has deleted, and what somebody has to look after, in sentences. */
export function deletedWords({ bytes, packages, notFound, isFree }: Deleted): string[] {
  return [
    ...(bytes === 0 ? [] : [`The bytes of ${bytes} letters, files and answers are deleted.`]),
    ...(packages.length === 0 ? [] : [`Deleted with them, of what was released: ${packages.join(", ")}.`]),
    ...(notFound.length === 0
      ? []
      : [`Not found in the folder of released orders; delete it where it lies: ${notFound.join(", ")}.`]),
    ...(isFree
      ? []
      : [
          "Somebody still reads the record, so its file is not free of it yet: the worker sees to that, or the next “burin erase”.",
        ]),
  ];
}

/** What Burin cannot delete. */
export const elsewhereWords = "Mailboxes, backups and what the engraving room has copied are yours to clear.";
