import { isBlank, isDoubtful } from "../checks/required.ts";
import { alikeOrders } from "../orders/alike-order.ts";
import { headerBlocks, sameSaid } from "../orders/expected.ts";
import { letterOf } from "../orders/ids.ts";
import { numberKey } from "../orders/keys.ts";
import { isNoNumber } from "../orders/no-number.ts";
import type { Order } from "../trade/order.ts";
import { type Entry, places } from "../trade/place.ts";
import type { Problem } from "../trade/problem.ts";
import { type Inherited, isFilled, type Sheet, saidAt } from "../trade/sheet.ts";

type ProblemsOf = (sheet: Sheet) => readonly Problem[];

/** What is inherited as one: the project, the contact, each address. */
const blocks = headerBlocks.filter((block) => !block.includes("order"));

/**
 * Sheets of one letter that leave out what their order says alike have it from another sheet of that order and letter.
 * All sheets that say anything of it must agree. It is taken from one that is right there, of an order that is not
 * asked about, and never from a sheet kept aside. What stops no sheet is left as it is. `orders` are all orders of the
 * buyer, the new sheets among them.
 */
export function withHeaders(
  sheets: readonly Sheet[],
  orders: () => readonly Order[],
  problemsOf: ProblemsOf,
): readonly Sheet[] {
  const lacking = new Map(sheets.map((sheet) => [sheet, lackedBy(sheet, problemsOf(sheet))]));
  if ([...lacking.values()].every((lacks) => lacks.length === 0)) return sheets;
  const sisters = sistersIn(sheets, orders());
  const sources = new Map(
    [...sisters].map(([key, some]) => [key, blocks.map((block) => sourceOf(block, some, problemsOf))]),
  );
  return sheets.map((sheet) =>
    (lacking.get(sheet) ?? []).reduce((made, block) => {
      const from = sources.get(keyOf(sheet))?.[blocks.indexOf(block)];
      return from !== undefined && agree(block, [sheet], from) ? inheriting(made, block, from) : made;
    }, sheet),
  );
}

/**
 * Sheets that leave the order number out have it from the sheets of their letter, where those that say one clearly all
 * say the same, and nobody is asked about it. The form tells buyers that once in a letter is enough. `orders` are all
 * orders of the buyer, the new sheets among them.
 */
export function withOrderNumber(sheets: readonly Sheet[], orders: () => readonly Order[]): readonly Sheet[] {
  const lacks = (sheet: Sheet): boolean =>
    !isBlank(sheet) && !isFilled(sheet, "order") && !isUnclear(sheet, "order");
  if (!sheets.some(lacks)) return sheets;
  const certain = new Set([...sistersIn(sheets, orders()).values()].flat());
  const sources = new Map(
    [...Map.groupBy(sheets, ({ id }) => letterOf(id))].map(([letter, sisters]) => [
      letter,
      numberedIn(sisters),
    ]),
  );
  return sheets.map((sheet) => {
    const from = sources.get(letterOf(sheet.id));
    return from !== undefined && certain.has(from) && lacks(sheet)
      ? inheriting(sheet, ["order"], from)
      : sheet;
  });
}

/** A sheet that says the one number that all say that say one. */
function numberedIn(sheets: readonly Sheet[]): Sheet | undefined {
  const saying = sheets.filter((sheet) => isFilled(sheet, "order"));
  const [first] = saying;
  const isSure =
    new Set(saying.map(({ order = "" }) => numberKey(order))).size === 1 &&
    !saying.some((sheet) => isUnclear(sheet, "order")) &&
    first?.order !== undefined &&
    !isNoNumber(first.order);
  return isSure ? first : undefined;
}

/** The sheet that says most in a block and is right there, if no sister says anything else. */
function sourceOf(
  block: readonly Entry[],
  sisters: readonly Sheet[],
  problemsOf: ProblemsOf,
): Sheet | undefined {
  const saidIn = (sheet: Sheet): number => block.filter((place) => isFilled(sheet, place)).length;
  const [from] = sisters
    .filter((sheet) => saidIn(sheet) > 0 && isSound(block, problemsOf(sheet)))
    .toSorted((one, other) => saidIn(other) - saidIn(one));
  return from !== undefined && agree(block, sisters, from) ? from : undefined;
}

/** The letter and the order of a sheet. */
function keyOf({ id, order = "" }: Sheet): string {
  return `${letterOf(id)} ${numberKey(order)}`;
}

/** Blocks in which an empty place stops the sheet. */
function lackedBy(sheet: Sheet, problems: readonly Problem[]): (readonly Entry[])[] {
  const stopped = new Set(
    problems
      .filter(({ severity }) => severity === "stops")
      .flatMap(({ spots }) => spots.map(({ place }) => place)),
  );
  return blocks.filter((block) => block.some((place) => stopped.has(place) && !isFilled(sheet, place)));
}

/** The sheets that may be asked, by letter and order. */
function sistersIn(sheets: readonly Sheet[], orders: readonly Order[]): Map<string, Sheet[]> {
  const came = new Set(sheets.map(({ id }) => id));
  const certain = orders.filter(
    (order) =>
      order.sheets.some(({ id }) => came.has(id)) &&
      !isNoNumber(order.number) &&
      !alikeOrders(
        order,
        orders.filter((other) => other !== order),
      ).some(({ asked }) => asked),
  );
  return Map.groupBy(
    certain.flatMap((order) => order.sheets).filter(({ id, order }) => came.has(id) && order !== undefined),
    keyOf,
  );
}

/** Whether nothing stops or questions a sheet in a block, in its order number, or as a whole. */
function isSound(block: readonly Entry[], problems: readonly Problem[]): boolean {
  const doubted = problems
    .filter(({ severity }) => severity !== "notes")
    .flatMap(({ spots }) => spots.map(({ place }) => place));
  return doubted.every(
    (place) => place !== undefined && place !== "order" && !block.some((one) => one === place),
  );
}

/** Whether it is not certain what a sheet says at a place. */
function isUnclear(sheet: Sheet, place: Entry): boolean {
  return isDoubtful(sheet, place) || sheet.doubts.some((doubt) => doubt.place === place);
}

/**
 * Whether all sheets are clear in a block and none says anything else. An address beside "same as bill-to" is something
 * else.
 */
function agree(block: readonly Entry[], sheets: readonly Sheet[], from: Sheet): boolean {
  const filled = (sheet: Sheet): readonly Entry[] => block.filter((place) => isFilled(sheet, place));
  const isSame = (place: Entry, sheet: Sheet): boolean =>
    !isFilled(sheet, place) || sameSaid(place, saidAt(sheet, place), saidAt(from, place));
  const bill = blocks.find((one) => one.includes("bill.name")) ?? [];
  return sheets.every(
    (sheet) =>
      !block.some((place) => isUnclear(sheet, place)) &&
      filled(sheet).every((place) => isFilled(from, place) && isSame(place, sheet)) &&
      // "Same as bill-to" means another place where the bill-to address is another.
      (!block.includes("ship.same") || bill.every((place) => isSame(place, sheet))),
  );
}

function inheriting(sheet: Sheet, block: readonly Entry[], from: Sheet): Sheet {
  const taken = block.filter(
    (place) => isFilled(from, place) && !isFilled(sheet, place) && sheet.prints[place] !== undefined,
  );
  const one: Inherited = { places: taken, from: from.file };
  const filled = taken.reduce((made, place) => withPart(made, places[place].part, from), sheet);
  return taken.length === 0 ? sheet : { ...filled, inherited: [...(sheet.inherited ?? []), one] };
}

/** A sheet with one part as another sheet has it. */
function withPart(sheet: Sheet, part: string, from: Sheet): Sheet {
  const [whole = "", step] = part.split(".");
  const [own, other] = [sheet, from].map((one) => (one as unknown as Record<string, unknown>)[whole]);
  if (step === undefined) return { ...sheet, [whole]: other };
  return { ...sheet, [whole]: { ...(own as object), [step]: (other as Record<string, unknown>)[step] } };
}
