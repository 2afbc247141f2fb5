import { letterStillOpen } from "../checks/order/letter-still-open.ts";
import type { Note } from "../trade/note.ts";
import type { Replacement } from "../trade/order.ts";
import type { KnownQuestion, QuestionOf } from "../trade/question.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import type { OrderReport } from "./report.ts";
import { type OrderState, orderKey } from "./state.ts";

/** What has become of an order that we have answered for before. Numbers are those of its questions. */
export interface Changed {
  readonly came: readonly Sheet[];
  readonly replaced: readonly Replacement[];
  /** Settled by the sender. */
  readonly settled: readonly number[];
  /** Decided by one of our own people. */
  readonly decided: readonly number[];
  /** No longer asked, since a sheet was mended. */
  readonly mended: readonly number[];
  readonly open: readonly number[];
  readonly note?: Note;
  /** Who decided it, where it is no note. */
  readonly by?: string;
}

interface Now {
  readonly before: OrderState | undefined;
  readonly came: ReadonlySet<FileId>;
  readonly replaced: readonly Replacement[];
  readonly settles: readonly QuestionOf[];
  readonly decides: readonly QuestionOf[];
  readonly note?: Note | undefined;
  readonly decidedBy?: string | undefined;
}

/** Undefined for an order that is new, and for one of which nothing was known but its number. */
export function changedIn(
  { order, asked }: Pick<OrderReport, "order" | "asked">,
  now: Now,
): Changed | undefined {
  const { before, came, replaced, settles, decides, note, decidedBy: by } = now;
  if (before === undefined || before.sheets.length + before.questions.length === 0) return undefined;
  const key = orderKey(order.number);
  const keysOf = (some: readonly QuestionOf[]): ReadonlySet<string> =>
    new Set(some.filter((one) => orderKey(one.order) === key).map((one) => one.key));
  const [settled, decided] = [keysOf(settles), keysOf(decides)];
  const still = new Set(asked.map((question) => question.key));
  // What is left of a question has its number.
  const left = new Set(asked.map((question) => question.number));
  const wasOpen = before.questions.filter(({ state }) => state === "open");
  const numbers = (is: (question: KnownQuestion) => boolean): number[] =>
    [...new Set(wasOpen.filter(is).map(({ number }) => number))].toSorted((a, b) => a - b);
  const open = numbers(({ key: one, number }) => still.has(one) || left.has(number));
  const taken = new Set(replaced.map(({ now: sheet }) => sheet.id));
  return {
    came: order.sheets.filter(({ id }) => came.has(id) && !taken.has(id)),
    replaced: replaced.filter(({ now: sheet }) => came.has(sheet.id)),
    settled: numbers((question) => settled.has(question.key)),
    decided: numbers((question) => decided.has(question.key)),
    mended: numbers(
      ({ key: one, problem }) =>
        // What was done about words is told by itself.
        problem.check !== letterStillOpen.id && ![still, settled, decided].some((keys) => keys.has(one)),
    ).filter((number) => !open.includes(number)),
    open,
    ...(note === undefined ? {} : { note }),
    ...(by === undefined ? {} : { by }),
  };
}
