import type { Catalogue } from "../catalogue/catalogue.ts";
import { stillStays } from "../checks/asked.ts";
import { managerWord } from "../checks/order/manager-word.ts";
import { moreAnnounced } from "../checks/order/more-announced.ts";
import { checkOrder } from "../checks/run.ts";
import { type Expected, expectedOf } from "../orders/expected.ts";
import type { Standing } from "../orders/stand.ts";
import { stillMissing, withSisters } from "../orders/still-missing.ts";
import { isRight, tallyIn } from "../orders/tally.ts";
import type { Carried, Promised } from "../trade/carried.ts";
import type { Managing } from "../trade/manager.ts";
import type { Crossed, Missing, Order } from "../trade/order.ts";
import { gravest, type Problem, verdictOf } from "../trade/problem.ts";
import type { Released } from "../trade/released.ts";
import type { FileId } from "../trade/sheet.ts";
import type { Questioning } from "./answered.ts";
import type { OrderReport } from "./report.ts";
import type { SheetReport } from "./sheet-report.ts";

/** What an order is judged by. */
interface Beside {
  readonly others: readonly Order[];
  /** Reports on the order's sheets, without the questions that are answered. */
  readonly members: readonly SheetReport[];
  /** The sheets that this submission brought. */
  readonly came: ReadonlySet<FileId>;
  readonly part: Omit<Standing, "sheets">;
  readonly crossed: readonly Crossed[];
  /** What letters left open and this one does not settle. */
  readonly carried: readonly Carried[];
  readonly questions: Questioning;
  /** What of it was handed to engraving last. */
  readonly released?: Released | undefined;
  readonly managing?: Managing | undefined;
  readonly waitsForPerson: boolean;
  readonly catalogue: Catalogue;
}

/** What is asked about at once: more sheets, and a file or a sheet that was forgotten. */
const asksAtOnce: ReadonlySet<Promised["tells"]> = new Set([
  "more",
  "attached",
  "named",
  "whole",
  "numbered",
]);

/** Judges one order with all of its sheets. */
export function orderReport(order: Order, beside: Beside): OrderReport {
  const { others, members, came, part, carried, questions, waitsForPerson, released, catalogue } = beside;
  const { managing, crossed } = beside;
  const { isAnswered, asked, known } = questions;
  // Problems of sheets of earlier letters. A question stays open until it is answered, and a fault until it is mended.
  const open = members
    .filter(({ sheet }) => !came.has(sheet.id))
    .flatMap((member) => member.problems.filter((problem) => problem.verdict !== "pass"));
  const promised = carried.filter((one) => one.what === "promise");
  const found = checkOrder(
    {
      order,
      others,
      ...part,
      crossed,
      carried,
      promised: promised.filter(({ tells }) => asksAtOnce.has(tells)),
      ...(released === undefined ? {} : { released }),
    },
    catalogue,
  );
  const own = new Set(members.map(({ sheet }) => sheet.id));
  const stay = questions.staying.filter(
    (problem) => problem.spots.every(({ file }) => own.has(file)) && stillStays(problem, order),
  );
  const standing = [...[...found, ...stay].filter((problem) => !isAnswered(problem)), ...open];
  const missing = stillMissing(order, others);
  const brought = members.filter(({ sheet }) => came.has(sheet.id)).flatMap((member) => member.problems);
  const otherwise = gravest([
    waitsForPerson ? "person" : "pass",
    verdictOf(standing),
    ...members.map(({ verdict }) => verdict),
  ]);
  const subject = { order, others, ...(released === undefined ? {} : { released }) };
  const isOpen = (problem: Problem): boolean => !isAnswered(problem);
  // A sheet that is to come in the place of another is asked for when nothing else is.
  const mended = promised.filter(({ tells }) => !asksAtOnce.has(tells));
  const isRightSoFar = otherwise === "pass" && mended.length > 0;
  const last = isRightSoFar
    ? [...moreAnnounced.find({ ...subject, promised: mended }, catalogue)].filter(isOpen)
    : [];
  // Nobody is asked for his word before the rest is right.
  const awaits =
    otherwise === "pass" && last.length === 0 && managing?.waits === true ? managing.manager : undefined;
  const word = awaits === undefined ? [] : [...managerWord.find({ ...subject, awaits }, catalogue)];
  const problems = [...standing, ...last, ...word.filter(isOpen)];
  return {
    order,
    verdict: gravest([otherwise, verdictOf(problems)]),
    missing,
    expected: expectedIn(missing, { order, others }, [
      ...problems,
      ...members.flatMap((member) => member.problems),
    ]),
    problems,
    carried: missing.length > 0 ? carried : carried.filter((one) => !isReached(one, order)),
    asked: asked([...problems, ...brought]),
    lastNumber: Math.max(0, ...known.map(({ number }) => number)),
    ...(released === undefined ? {} : { released }),
    ...(managing === undefined ? {} : { managing }),
  };
}

/** The sheets that may still come, with what the others say and nobody questions. */
function expectedIn(
  missing: readonly Missing[],
  { order, others }: { readonly order: Order; readonly others: readonly Order[] },
  problems: readonly Problem[],
): Expected[] {
  const open = new Set(
    problems
      .filter(({ severity }) => severity !== "notes")
      .flatMap(({ spots }) => spots.map(({ file, place }) => `${file} ${place}`)),
  );
  return expectedOf(withSisters(missing, order, others), order, ({ id }, place) =>
    open.has(`${id} ${place}`),
  );
}

/** Whether an order has come to what somebody counted. */
function isReached(carried: Carried, order: Order): boolean {
  return carried.what === "count" && isRight(carried.count, tallyIn(carried.count, order), order.sheets);
}
