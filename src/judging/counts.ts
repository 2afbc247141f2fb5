import type { Catalogue } from "../catalogue/catalogue.ts";
import { countInWords } from "../checks/noted-counts.ts";
import { isRight, tallyIn, tallyOf } from "../orders/tally.ts";
import { asSaid } from "../reading/reply/beside.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { CarriedCount } from "../trade/carried.ts";
import { type Count, countedBy } from "../trade/count.ts";
import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { ForPerson, Statement } from "../trade/statement.ts";

/** What a letter's counts come to. */
export interface Counted {
  /** Those that its order has not come to. */
  readonly open: readonly CarriedCount[];
  /** What a person has to read, other words among it: counts that are wrong and may be of several orders. */
  readonly forPerson: readonly ForPerson[];
  /** What it counts of the whole order. An earlier letter's count of the same no longer holds. */
  readonly anew: ReadonlySet<string>;
}

/** What came, and the orders that it is about. */
interface Came {
  readonly letter: string;
  readonly sheets: readonly Sheet[];
  readonly files: readonly ReadFile[];
  readonly orders: readonly Order[];
  readonly catalogue: Catalogue;
}

/**
 * Holds a letter's counts against what came. A count is right if it is that of the letter's own sheets or of all sheets
 * of an order.
 */
export function countedIn(statements: readonly Statement[], came: Came): Counted {
  const [order, ...more] = came.orders;
  const open: CarriedCount[] = [];
  const forPerson: ForPerson[] = [];
  const anew = new Set<string>();
  for (const statement of statements) {
    if (statement.kind !== "counts") {
      forPerson.push(statement);
      continue;
    }
    const wrong = statement.counts.filter(
      (count) => !isRightOfLetter(count, came, statement.file) && !isRightOfOrder(count, came.orders),
    );
    const isOfOrder =
      order !== undefined && more.length === 0 && wrong.every((count) => isTotal(count, order, came));
    if (wrong.length > 0 && !isOfOrder) {
      forPerson.push(asSaid(statement));
      continue;
    }
    if (more.length === 0)
      for (const count of statement.counts)
        if (wrong.includes(count) || isRightOfOrder(count, came.orders)) anew.add(countedBy(count));
    const { letter, catalogue } = came;
    const { file, by } = statement;
    open.push(
      ...wrong.map(
        (count): CarriedCount => ({
          letter,
          what: "count",
          text: countInWords(count, catalogue),
          count,
          ...(file === undefined ? {} : { file }),
          ...(by === undefined ? {} : { by }),
        }),
      ),
    );
  }
  return { open, forPerson, anew };
}

/** Whether a count is of the whole order, and not of a letter that brings a part of it. */
function isTotal(count: Count, order: Order, { sheets }: Came): boolean {
  const [own, whole] = [tallyOf(count, sheets), tallyIn(count, order)];
  return own.least === whole.least || count.number > whole.least;
}

function isRightOfOrder(count: Count, orders: readonly Order[]): boolean {
  return orders.some((order) => isRight(count, tallyIn(count, order), order.sheets));
}

/** A file that is no sheet may be the one that makes a count right, unless it is the one that counts. */
function isRightOfLetter(count: Count, { sheets, files, orders }: Came, by: string | undefined): boolean {
  const twice = new Set(orders.flatMap((order) => order.twice.map(({ again }) => again.id)));
  const own = sheets.filter(({ id }) => !twice.has(id));
  const attached = files.filter(({ kind, list }) => kind !== "decoration" && list === undefined);
  if (count.of === "file" && count.number === attached.length) return true;
  const unread = attached.filter(({ kind, file }) => !known.has(kind) && file !== by).length;
  return isRight(count, tallyOf(count, own, unread), own);
}

/** Kinds of files that hold no sheet that nobody has seen. */
const known = new Set<ReadFile["kind"]>(["sheet", "list", "text", "archive", "saved-blank"]);
