import { type Count, countedBy } from "../../trade/count.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { type Goods, whatIsCounted } from "./counts.ts";
import { bareOf } from "./mark-series.ts";
import { shipsElsewhere } from "./order-address.ts";
import type { LetterFacts } from "./tallies.ts";

/** A line of a purchase order that the sheets do not bear out, or the counts of several. */
export interface Ordered {
  readonly words: string;
  readonly counts?: readonly Count[];
}

const title = /(?<!\p{L})(?:purchase order|p\.?o\.? ?(?:number|no\b|#))/iu;
/** "2 ea", "Qty: 3". */
const quantity =
  /(?<![\p{L}\p{N}.,$-])(?:(?:qty|quantity)\b[.:]? ?(\d{1,3})|(\d{1,3}) ?(?:ea|each|pcs?|pieces?|units?|nos)\b)(?![.,]\d)/giu;
const price = /(?<![\p{L}\p{N}])\d{1,3}(?:,\d{3})*\.\d\d(?![\p{N}])/u;
const mark = /(?<![\p{L}\p{N}-])(\p{L}{1,4})([-. ]?)(\d{1,4})(?![\p{L}\p{N}]|[-.]\d)/gu;

/**
 * What a purchase order says of stations, finishes, quantities and the place to ship to that the sheets of its order
 * say otherwise.
 */
export function orderedOtherwise(text: string, facts: OrderFacts, goods: Goods): Ordered[] {
  if (!title.test(text)) return [];
  const lines = text
    .split("\n")
    .map((line) => line.replace(/\s+/g, " ").trim())
    .filter((line) => line.length > 0 && line.length < longestLine);
  const items = lines.map((line) => ({ line, number: quantityIn(line), stations: stationsIn(line, facts) }));
  const against = items.filter(
    (item) =>
      isOfOtherOrder(item.line, facts) ||
      isOfOtherStation(item.line, facts) ||
      item.stations.some((all) => isOtherwise(item, all, goods)),
  );
  const totals = new Map<string, { words: string; count: Count }>();
  for (const { line, number, stations } of items) {
    if (number === undefined || stations.length > 0 || against.some((one) => one.line === line)) continue;
    const what = goodsIn(line, goods);
    if (what === undefined) continue;
    const key = countedBy({ ...what, number });
    const before = totals.get(key);
    const count = { ...what, number: number + (before?.count.number ?? 0) };
    totals.set(key, { words: before === undefined ? line : `${before.words} … ${line}`, count });
  }
  const address = shipsElsewhere(lines, facts.sheets);
  return [
    ...against.map(({ line }) => ({ words: line })),
    ...(address === undefined ? [] : [{ words: address }]),
    ...[...totals.values()].map(({ words, count }) => ({ words, counts: [count] })),
  ];
}

type OrderFacts = Pick<LetterFacts, "marks" | "numbers" | "sheets" | "earlier">;

/** In characters. A line of goods is shorter. */
const longestLine = 200;

/** The one quantity of a line. */
function quantityIn(line: string): number | undefined {
  const [first, ...more] = line.matchAll(quantity);
  return first === undefined || more.length > 0 ? undefined : Number(first[1] ?? first[2]);
}

/** The sheets of each station that a line names. */
function stationsIn(line: string, { sheets, earlier }: OrderFacts): (readonly Sheet[])[] {
  const named = new Set([...line.matchAll(mark)].map(([whole]) => bareOf(whole)));
  const numbers = new Set(sheets.map(({ order = "" }) => bareOf(order)));
  const all = [...sheets, ...earlier.filter(({ order = "" }) => numbers.has(bareOf(order)))];
  return [...Map.groupBy(all, (sheet) => bareOf(sheet.mark ?? ""))].flatMap(([key, members]) =>
    key !== "" && named.has(key) ? [members] : [],
  );
}

/** Whether a title has a number of the letters and the length of the order's, and not that: "Purchase order FM-73". */
function isOfOtherOrder(line: string, { sheets, numbers }: OrderFacts): boolean {
  const found = title.test(line) ? [...line.matchAll(orderNumber)] : [];
  const known = new Set(numbers.map(bareOf));
  const shapes = new Set(sheets.map(({ order = "" }) => shapeOf(order)));
  return found.length === 1 && found.every(([one]) => shapes.has(shapeOf(one)) && !known.has(bareOf(one)));
}

const orderNumber = /(?<![\p{L}\p{N}-])\p{L}{1,5}[- ]?\d{2,8}(?![\p{L}\p{N}]|[-.]\d)/gu;

function shapeOf(number: string): string {
  return bareOf(number).replace(/\d/g, "9");
}

/** Whether a line of goods is of a station of the sheets' own series of which no sheet came. */
function isOfOtherStation(line: string, { marks, numbers }: OrderFacts): boolean {
  if (quantityIn(line) === undefined && !price.test(line)) return false;
  const known = new Set([...marks, ...numbers].map(bareOf));
  const series = new Set(marks.flatMap((one) => [...one.matchAll(mark)].map(seriesOf)));
  const found = [...line.matchAll(mark)];
  return found.length === 1 && found.every((one) => series.has(seriesOf(one)) && !known.has(bareOf(one[0])));
}

/** The letters of a mark, how its number is joined to them, and how long that is: "S-104" and "S-110". */
function seriesOf([, letters = "", joint = "", digits = ""]: RegExpExecArray): string {
  return `${letters.toUpperCase()}${joint}${digits.length > 1 ? digits.length : 1}`;
}

/** Whether a line orders another number of a station than its sheets do, or in a finish that none of them has. */
function isOtherwise(
  { line, number = 1 }: { readonly line: string; readonly number: number | undefined },
  members: readonly Sheet[],
  { finishes }: Goods,
): boolean {
  const kinds = [...Map.groupBy(members, ({ kind }) => kind).values()];
  const isCount = [1, members.length, ...kinds.map(({ length }) => length)].includes(number);
  const words = ` ${
    line
      .toUpperCase()
      .match(/\p{L}+/gu)
      ?.join(" ") ?? ""
  } `;
  const told = finishes.filter(({ name }) => words.includes(` ${name.toUpperCase()} `));
  const said = members.flatMap(({ finish, lettering }) => [finish, lettering]);
  const isFinish =
    told.length !== 1 || said.includes(undefined) || told.every(({ code }) => said.includes(code));
  return !isCount || !isFinish;
}

/** What a line of goods counts, if it is of ours: devices by their layout, plates by their gangs, or whole stations. */
function goodsIn(line: string, goods: Goods): Omit<Count, "number"> | undefined {
  const words = line.replace(quantity, " ");
  if (/\bstations?\b/i.test(words)) return { of: "station" };
  const what = whatIsCounted(words, goods);
  return what?.of === "device" || (what?.of === "plate" && what.gangs !== undefined) ? what : undefined;
}
