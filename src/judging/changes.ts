import { stillOpen } from "../checks/order/letter-still-open.ts";
import { isBlank } from "../checks/required.ts";
import { wallPlaceOf } from "../orders/wall-place.ts";
import { type Carried, isUntold } from "../trade/carried.ts";
import type { Missing, Order } from "../trade/order.ts";
import { gravest, type Problem, type Verdict } from "../trade/problem.ts";
import type { Question } from "../trade/question.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { saidAs } from "./carried.ts";
import { carriedBy, wordsIn } from "./carries.ts";
import { questionsOf } from "./questions.ts";
import type { OrderReport, Report } from "./report.ts";
import { type BuyerState, orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";

/** What an order consists of after a letter, a person or a release, and what that makes of it. */
export interface Revision {
  /** As first typed; "" for what the buyer has sent without a number. */
  readonly number: string;
  readonly project?: string;
  /** Absent when nothing is left of the order. */
  readonly verdict?: Verdict;
  readonly missing: readonly Missing[];
  /** Sheets that stand. */
  readonly sheets: readonly FileId[];
  /** Sheets that the letter has withdrawn from it. */
  readonly withdrawn: readonly FileId[];
  readonly carried: readonly Carried[];
  /** The reasons for the verdict: all that is not merely worth knowing. */
  readonly problems: readonly Problem[];
  readonly questions: readonly Question[];
}

/**
 * What a letter changes in its buyer's state. A held letter changes nothing. `about` are the orders that it is about,
 * `dealtWith` the letters of which a note says that all they said is dealt with.
 */
export function changesOf(
  report: Report,
  state: BuyerState,
  numberOf: (problem: Problem) => number,
  { about = [], dealtWith = [] }: Pick<Submission, "about" | "dealtWith"> = {},
): readonly Revision[] {
  if (report.held) return [];
  const carries = carriedBy(report);
  const sheets = new Map<FileId, Sheet>(
    [...report.earlier, ...report.sheets.map(({ sheet }) => sheet)].map((sheet) => [sheet.id, sheet]),
  );
  const after = Map.groupBy(report.orders, ({ order }) => orderKey(order.number));
  const judged = { report, sheets, numberOf };
  const revisions = [...after].map(([key, orders]) => revisionOf(key, orders, carries, judged));
  const named = new Set(about.map(orderKey));
  // A sheet without a number may have joined an order since. It stands there then.
  const joined = new Set<FileId>([
    ...revisions.flatMap((revision) => (revision.number === "" ? [] : revision.sheets)),
    ...state.orders.flatMap(({ number, sheets: had }) =>
      orderKey(number) === "" ? [] : had.map(({ id }) => id),
    ),
  ]);
  const left = state.orders.flatMap((order): Revision[] => {
    const { number, sheets: had, carried: all } = order;
    const isGone = ({ id }: Sheet): boolean => !sheets.has(id) || (orderKey(number) === "" && joined.has(id));
    const isEmpty = !after.has(orderKey(number)) && had.every(isGone);
    if (!isEmpty || (had.length === 0 && !named.has(orderKey(number)))) return [];
    const stays = all.filter(
      ({ what, letter }) => (what === "file" || what === "words") && !dealtWith.includes(letter),
    );
    // What a letter leaves open stays with what is left of its orders, if nothing else of them stands.
    const carried = onceEach([...stays, ...(revisions.length === 0 ? carries : [])]);
    const isAsBefore = carried.length === all.length && carried.every((one) => all.includes(one));
    if (had.length === 0 && isAsBefore) return [];
    return [
      {
        number,
        ...(carried.length === 0 ? {} : { verdict: "person" }),
        missing: [],
        sheets: [],
        withdrawn: withdrawnOf(orderKey(number), report),
        carried,
        problems: [],
        questions: [],
      },
    ];
  });
  return [...revisions, ...left];
}

interface Judged {
  readonly report: Report;
  readonly sheets: ReadonlyMap<FileId, Sheet>;
  readonly numberOf: (problem: Problem) => number;
}

function revisionOf(
  key: string,
  orders: readonly OrderReport[],
  carries: readonly Carried[],
  { report, sheets, numberOf }: Judged,
): Revision {
  const standing = orders.flatMap(({ order }) => standingIn(order));
  const members = new Set(standing.map(({ id }) => id));
  const aside = new Set(orders.flatMap(({ order }) => order.aside.map(({ sheet }) => sheet.id)));
  const own = report.sheets
    .filter(({ sheet }) => members.has(sheet.id) && !aside.has(sheet.id))
    .flatMap(({ problems }) => problems);
  // Words that wait for a person are asked about under the number that their letter's answer gave them.
  const words = new Map(wordsIn(report).map((one) => [stillOpen(one), numberOf(one.problem)]));
  const problems = [...orders.flatMap((order) => order.problems), ...own, ...words.keys()].filter(
    ({ verdict }) => verdict !== "pass",
  );
  const carried = [...orders.flatMap((order) => order.carried), ...carries];
  const project = orders[0]?.order.project;
  return {
    number: key === "" ? "" : (orders[0]?.order.number ?? ""),
    ...(project === undefined ? {} : { project }),
    verdict: gravest([
      ...orders.map(({ verdict }) => verdict),
      ...carries.map(({ what }) => (what === "words" ? "person" : "confirm")),
    ]),
    missing: orders.flatMap(({ missing }) => missing),
    sheets: [...members],
    withdrawn: withdrawnOf(key, report),
    carried: onceEach(carried),
    problems,
    questions: questionsOf(problems, sheets).map((question) => ({
      ...question,
      number: words.get(question.problem) ?? numberOf(question.problem),
    })),
  };
}

function withdrawnOf(key: string, { withdrawn }: Report): FileId[] {
  return withdrawn.flatMap(({ order, sheets }) =>
    orderKey(order) === key ? sheets.map(({ id }) => id) : [],
  );
}

/** The sheets that an order consists of from now on. A blank sheet does not count, and a copy counts once. */
function standingIn({ sheets, aside, twice }: Order): Sheet[] {
  const copies = twice.map(({ again }) => again).filter((again) => wallPlaceOf(again) === undefined);
  return [...sheets, ...aside.map(({ sheet }) => sheet), ...copies].filter((sheet) => !isBlank(sheet));
}

/** The same words of two letters are one thing. What is not told is another thing in each. */
function onceEach(carried: readonly Carried[]): Carried[] {
  const keyOf = (one: Carried): string =>
    one.what === "words" && isUntold(one.text) ? `${one.letter} ${one.text}` : saidAs(one);
  return [...new Map(carried.map((one) => [keyOf(one), one])).values()];
}
