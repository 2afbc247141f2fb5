import type { Catalogue } from "../catalogue/catalogue.ts";
import { managerWord } from "../checks/order/manager-word.ts";
import { checkOrder } from "../checks/run.ts";
import { type Expected, expectedOf } from "../orders/expected.ts";
import type { Standing } from "../orders/stand.ts";
import { stillMissing, withSisters } from "../orders/still-missing.ts";
import { isRight, tallyIn } from "../orders/tally.ts";
import type { Carried } from "../trade/carried.ts";
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
  readonly part: Pick<Standing, "replaced" | "late">;
  readonly crossed: readonly Crossed[];
  /** What letters left open and this one does not settle. */
  readonly carried: readonly Carried[];
  readonly questions: Questioning;
  /** Words of the letter in hand, which tell of more sheets. */
  readonly announced?: string | undefined;
  /** What of it was handed to engraving last. */
  readonly released?: Released | undefined;
  readonly managing?: Managing | undefined;
  readonly waitsForPerson: boolean;
  readonly catalogue: Catalogue;
}

/** Judges one order with all of its sheets. */
export function orderReport(order: Order, beside: Beside): OrderReport {
  const { others, members, came, part, carried, questions, waitsForPerson, released, catalogue } = beside;
  const { managing, crossed, announced } = beside;
  const { isAnswered, asked, known } = questions;
  // Problems of sheets of earlier letters. A question stays open until it is answered, and a fault until it is mended.
  const open = members
    .filter(({ sheet }) => !came.has(sheet.id))
    .flatMap((member) => member.problems.filter((problem) => problem.verdict !== "pass"));
  const found = checkOrder(
    {
      order,
      others,
      ...part,
      crossed,
      carried,
      ...(announced === undefined ? {} : { announced }),
      ...(released === undefined ? {} : { released }),
    },
    catalogue,
  );
  const standing = [...found.filter((problem) => !isAnswered(problem)), ...open];
  const missing = stillMissing(order, others);
  const own = members.filter(({ sheet }) => came.has(sheet.id)).flatMap((member) => member.problems);
  const otherwise = gravest([
    waitsForPerson ? "person" : "pass",
    verdictOf(standing),
    ...members.map(({ verdict }) => verdict),
  ]);
  // Nobody is asked for his word before the rest is right.
  const awaits = otherwise === "pass" && managing?.waits === true ? managing.manager : undefined;
  const subject = { order, others, ...(released === undefined ? {} : { released }) };
  const word = awaits === undefined ? [] : [...managerWord.find({ ...subject, awaits }, catalogue)];
  const problems = [...standing, ...word.filter((problem) => !isAnswered(problem))];
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
    asked: asked([...problems, ...own]),
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
