import type { Catalogue } from "../catalogue/catalogue.ts";
import { checkFile, checkLetter, checkOrder, checkSheet } from "../checks/run.ts";
import { gatherOrders } from "../orders/gather.ts";
import { missingOf } from "../orders/missing.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Missing, Order } from "../trade/order.ts";
import { gravest, type Problem, type Verdict, verdictOf } from "../trade/problem.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";

/** What came in together: one letter, or the files named on the command line. */
export interface Submission {
  readonly files: readonly ReadFile[];
  readonly sheets: readonly Sheet[];
  /** Sheets of the same buyer that earlier letters brought and that still count. */
  readonly earlier: readonly Sheet[];
}

export interface SheetReport {
  readonly sheet: Sheet;
  readonly verdict: Verdict;
  readonly problems: readonly Problem[];
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
  /** The orders that these sheets belong to, earlier sheets included. */
  readonly orders: readonly OrderReport[];
  /** Problems of the submission as a whole. */
  readonly problems: readonly Problem[];
  /** Sheets of earlier letters, for the names of files that problems point at. */
  readonly earlier: readonly Sheet[];
}

/** Checks everything that came in together. */
export function makeReport({ files, sheets, earlier }: Submission, catalogue: Catalogue): Report {
  const fileReports = files.map((file) => ({ file, problems: checkFile(file, catalogue) }));
  const sheetReports = sheets.map((sheet) => {
    const problems = checkSheet(sheet, catalogue);
    return { sheet, verdict: verdictOf(problems), problems };
  });
  const came = new Set<FileId>(sheets.map((sheet) => sheet.id));
  const all = gatherOrders([...earlier, ...sheets]);
  const orders = all
    .filter((order) => membersOf(order).some((sheet) => came.has(sheet.id)))
    .map((order): OrderReport => {
      const problems = checkOrder({ order, others: all.filter((other) => other !== order) }, catalogue);
      const sheetVerdicts = sheetReports
        .filter(({ sheet }) => membersOf(order).some((member) => member.id === sheet.id))
        .map(({ verdict }) => verdict);
      return {
        order,
        verdict: gravest([verdictOf(problems), ...sheetVerdicts]),
        missing: missingOf(order),
        problems,
      };
    });
  const problems = checkLetter({ files, orders: orders.map(({ order }) => order) }, catalogue);
  return {
    verdict: gravest([
      ...fileReports.map((file) => verdictOf(file.problems)),
      ...sheetReports.map(({ verdict }) => verdict),
      ...orders.map(({ verdict }) => verdict),
      verdictOf(problems),
    ]),
    files: fileReports,
    sheets: sheetReports,
    orders,
    problems,
    earlier,
  };
}

/** Sheets of this submission that count towards their order: nothing stops them. */
export function acceptedOf(report: Report): Sheet[] {
  const stopped = new Set(
    everyProblem(report)
      .filter((problem) => problem.severity === "stops")
      .flatMap((problem) => problem.spots.map((spot) => spot.file)),
  );
  return report.sheets.map(({ sheet }) => sheet).filter((sheet) => !stopped.has(sheet.id));
}

/** Every problem of a report, from the files to the letter as a whole. */
export function everyProblem(report: Report): Problem[] {
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
