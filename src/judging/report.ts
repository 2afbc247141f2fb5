import type { Catalogue } from "../catalogue/catalogue.ts";
import { cutOf } from "../checks/fitted.ts";
import { checkFile, checkLetter, checkOrder, checkSheet } from "../checks/run.ts";
import { gatherOrders } from "../orders/gather.ts";
import { plainText } from "../orders/keys.ts";
import { withoutReplaced } from "../orders/replace.ts";
import { stillMissing } from "../orders/still-missing.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { CutLegend } from "../trade/cut.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Missing, Order } from "../trade/order.ts";
import { gravest, type Problem, type Verdict, verdictOf } from "../trade/problem.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";

/** What came in together: one letter, or the files named on the command line. */
export interface Submission {
  readonly files: readonly ReadFile[];
  readonly sheets: readonly Sheet[];
  /** Sheets of the same buyer that earlier letters brought: those that count until now, and others to judge again. */
  readonly earlier: readonly Sheet[];
  /** Something outside the sheets says that a person must look first. */
  readonly held?: boolean;
  /** The letter replies to an answer of ours. */
  readonly reply?: boolean;
  /** Words that the letter keeps as they stand, of those that we asked about. */
  readonly kept?: readonly KeptWord[];
  /** Numbers of orders to judge again although no sheet of them came. */
  readonly again?: readonly string[];
  /** Addresses in the letter's text behind which files seem to lie. */
  readonly links?: readonly string[];
  /** Nothing but the letter's header was read: opening it does harm. */
  readonly unsafe?: boolean;
}

export interface SheetReport {
  readonly sheet: Sheet;
  readonly verdict: Verdict;
  readonly problems: readonly Problem[];
  /** Its legends as they would be cut. */
  readonly cut: readonly CutLegend[];
}

export interface OrderReport {
  readonly order: Order;
  readonly verdict: Verdict;
  readonly missing: readonly Missing[];
  readonly problems: readonly Problem[];
}

export interface FileReport {
  readonly file: ReadFile;
  readonly problems: readonly Problem[];
}

/** All that there is to say about a submission; text, HTML and JSON are renderings of it. */
export interface Report {
  readonly verdict: Verdict;
  readonly files: readonly FileReport[];
  /** The sheets that came with this submission. */
  readonly sheets: readonly SheetReport[];
  /** The orders that these sheets belong to, or are taken from, or that are judged again, with the earlier sheets of each. */
  readonly orders: readonly OrderReport[];
  /** Problems of the submission as a whole. */
  readonly problems: readonly Problem[];
  /** Sheets of earlier letters that this submission does not replace. */
  readonly earlier: readonly Sheet[];
  /** Sheets of earlier letters whose place a sheet of this submission takes. */
  readonly replaced: readonly Sheet[];
}

/** Checks everything that came in together. */
export function makeReport(submission: Submission, catalogue: Catalogue): Report {
  const { files, sheets, held = false, reply = false, links = [], unsafe = false, kept = [] } = submission;
  const earlier = withoutReplaced(submission.earlier, sheets);
  const standing = new Set(earlier);
  const replaced = submission.earlier.filter((sheet) => !standing.has(sheet));
  const bySheet = new Map(
    [...sheets, ...earlier].map((sheet): [FileId, SheetReport] => {
      const problems = checkSheet(sheet, catalogue);
      return [sheet.id, { sheet, verdict: verdictOf(problems), problems, cut: cutOf(sheet, catalogue) }];
    }),
  );
  const reportsOf = (some: readonly Sheet[]): SheetReport[] =>
    some.flatMap(({ id }) => bySheet.get(id) ?? []);
  const came = new Set(sheets.map((sheet) => sheet.id));

  const all = gatherOrders([...earlier, ...sheets]);
  const anyway = new Set(
    [...replaced.map((sheet) => sheet.order ?? ""), ...(submission.again ?? [])].map(plainText),
  );
  const touched = all.filter(
    (order) => anyway.has(plainText(order.number)) || membersOf(order).some((sheet) => came.has(sheet.id)),
  );
  const orders = touched.map((order): OrderReport => {
    const members = reportsOf(membersOf(order));
    // A question about a sheet of an earlier letter stays open until it is answered.
    const open = members
      .filter(({ sheet }) => !came.has(sheet.id))
      .flatMap((member) => member.problems.filter((problem) => problem.verdict !== "pass"));
    const others = all.filter((other) => other !== order);
    const problems = [...checkOrder({ order, others }, catalogue), ...open];
    return {
      order,
      verdict: gravest([
        held ? "person" : "pass",
        verdictOf(problems),
        ...members.map(({ verdict }) => verdict),
      ]),
      missing: stillMissing(order, others),
      problems,
    };
  });
  const fileReports = files.map((file) => ({ file, problems: checkFile(file, catalogue) }));
  const problems = checkLetter({ files, orders: touched, held, reply, kept, links, unsafe }, catalogue);
  const report = { files: fileReports, sheets: reportsOf(sheets), orders, problems, earlier, replaced };
  return {
    ...report,
    verdict: gravest([...orders.map(({ verdict }) => verdict), verdictOf(everyProblem(report))]),
  };
}

/** The sheets that count from now on: earlier and new ones alike, unless a stopping problem points at them. */
export function countingAfter(report: Report): Sheet[] {
  const stopped = new Set(
    everyProblem(report)
      .filter((problem) => problem.severity === "stops")
      .flatMap((problem) => problem.spots.map((spot) => spot.file)),
  );
  return [...report.earlier, ...report.sheets.map(({ sheet }) => sheet)].filter(
    (sheet) => !stopped.has(sheet.id),
  );
}

/** Every problem of a report, from the files to the letter as a whole. */
export function everyProblem(report: Omit<Report, "verdict">): Problem[] {
  return [
    ...report.files.flatMap(({ problems }) => problems),
    ...report.sheets.flatMap(({ problems }) => problems),
    ...report.orders.flatMap(({ problems }) => problems),
    ...report.problems,
  ];
}

function membersOf(order: Order): readonly Sheet[] {
  return [...order.sheets, ...order.twice.map(({ again }) => again)];
}
